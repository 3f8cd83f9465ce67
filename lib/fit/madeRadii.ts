import type { CommonSpec } from '../spec/types.js';
import { generatedFormRadius } from '../tooth/externalProfile.js';
import { type Gear, gearSizes } from '../tooth/gear.js';
import { leastRingTipRadius } from '../train/interference.js';
import { type PairSizes, pairSizes } from '../train/pair.js';
import type { Adjustment } from './adjustment.js';

/** Radii of one kind of gear as made, mm. */
export interface MadeRadii {
  tip: number;
  root: number;
  /** From which on (up to which, for a ring) its mates need a true involute; infinite where the rack leaves enough. */
  active: number;
  /** Down to which depth below the reference circle a bar asks the generating rack to stay straight [no bar does]. */
  straight?: number;
}

/** Differences below this are rounding, mm. */
const ROUNDING = 1e-9;

/**
 * Tip and root radii that let gears run together:
 * tips are shortened where a changed centre distance eats into the rack's bottom clearance; roots are deepened
 * where that clearance is less than the gap; ring tips are cut back to where their mate's involute begins. The
 * active radii make root roundings give way where a mate's tip would come nearer to them than the gap.
 * @param gears each kind of gear by its name
 * @param meshes which of them mesh, the ring second
 * @param reliefs of each, mm
 * @returns radii by name, and each change against the standard tooth
 * @throws Refusal when a pair has no working pressure angle
 */
export function madeRadii<Name extends string>(
  { fit: { gap }, rack, module }: Pick<CommonSpec, 'fit' | 'rack' | 'module'>,
  gears: Record<Name, Gear>,
  meshes: readonly (readonly [Name, Name])[],
  reliefs: Record<Name, number>,
): { radii: Record<Name, MadeRadii>; adjustments: Adjustment[] } {
  const names = Object.keys(gears) as Name[];
  // A tip that stands off its mate by the gap has its nearest point that much farther along the line of action.
  const off = gap / Math.cos(gearSizes(gears[names[0]]).baseHelixAngle);
  const clearance = (rack.dedendum - rack.addendum) * module;
  const pairs = meshes.map(([one, two]) => ({ one, two, pair: pairSizes(gears[one], gears[two]) }));
  const radii = Object.fromEntries(names.map((name) => [name, standard(gears[name])])) as Record<
    Name,
    MadeRadii
  >;
  const adjustments: Adjustment[] = [];

  const tipRoom = (name: Name) =>
    Math.min(...pairs.map(({ one, two, pair }) => roomOfTip(name, one, two, pair, radii)));
  for (const name of names) {
    const missing = clearance - tipRoom(name);
    if (missing <= ROUNDING) continue;
    radii[name].tip += gears[name].internal ? missing : -missing;
    adjustments.push({ part: name, what: 'tips-shortened', by: missing });
  }
  const rootRoom = (name: Name) =>
    Math.min(...pairs.map(({ one, two, pair }) => roomOfRoot(name, one, two, pair, radii)));
  for (const name of names) {
    const missing = gap - rootRoom(name);
    if (missing <= ROUNDING) continue;
    radii[name].root += gears[name].internal ? missing : -missing;
    adjustments.push({ part: name, what: 'roots-deepened', by: missing });
  }

  for (const { one, two, pair } of pairs) {
    const tips = [reach(pair.baseRadius1, radii[one].tip), reach(pair.baseRadius2, radii[two].tip)];
    if (pair.internal) radii[two].active = activeRadius(pair.baseRadius2, onLine(pair) + tips[0] + off);
    else {
      radii[one].active = activeRadius(pair.baseRadius1, onLine(pair) - tips[1] - off);
      radii[two].active = activeRadius(pair.baseRadius2, onLine(pair) - tips[0] - off);
    }
  }

  for (const { one, two, pair } of pairs) {
    if (!pair.internal) continue;
    const form = generatedFormRadius(gears[one], reliefs[one], radii[one].root, radii[one].active);
    const formRadius1 = activeRadius(pair.baseRadius1, reach(pair.baseRadius1, form) + off);
    const begins = leastRingTipRadius({ ...pair, formRadius1 });
    const { baseRadius } = gearSizes(gears[two]);
    const least = Math.max(begins, baseRadius);
    const missing = least - radii[two].tip;
    if (missing <= ROUNDING) continue;
    const involuteOf = begins < baseRadius ? two : one;
    adjustments.push({ part: two, what: 'tips-cut-back', by: missing, involuteOf });
    radii[two].tip = least;
  }
  return { radii, adjustments };
}

/** Room between a gear's tips and its mate's roots on the line of centres, mm; infinite in a mesh that it is not in. */
function roomOfTip<Name extends string>(
  name: Name,
  one: Name,
  two: Name,
  { internal, centreDistance: a }: PairSizes,
  radii: Record<Name, MadeRadii>,
): number {
  const [first, second] = [radii[one], radii[two]];
  if (name === one) return internal ? second.root - a - first.tip : a - first.tip - second.root;
  if (name === two) return internal ? second.tip - a - first.root : a - second.tip - first.root;
  return Number.POSITIVE_INFINITY;
}

/** Room between a gear's roots and its mate's tips on the line of centres, mm; infinite in a mesh that it is not in. */
function roomOfRoot<Name extends string>(
  name: Name,
  one: Name,
  two: Name,
  pair: PairSizes,
  radii: Record<Name, MadeRadii>,
): number {
  if (name === one) return roomOfTip(two, one, two, pair, radii);
  if (name === two) return roomOfTip(one, one, two, pair, radii);
  return Number.POSITIVE_INFINITY;
}

/** Distance between the points where the line of action touches the base circles, mm. */
function onLine({ centreDistance, workingPressureAngle }: PairSizes): number {
  return centreDistance * Math.sin(workingPressureAngle);
}

/** Tangent length to the base circle from a point at `radius`, mm. */
function reach(baseRadius: number, radius: number): number {
  return Math.sqrt(Math.max(0, radius ** 2 - baseRadius ** 2));
}

/** The radius that has the tangent length `along`, mm; the base radius where that is negative. */
function activeRadius(baseRadius: number, along: number): number {
  return Math.hypot(baseRadius, Math.max(0, along));
}

/** A ring's rounding stays outside its reference circle until its mate is known; the rack rounds all other roots. */
function standard(gear: Gear): MadeRadii {
  const { tipRadius, rootRadius, referenceRadius } = gearSizes(gear);
  const active = gear.internal ? referenceRadius : Number.POSITIVE_INFINITY;
  return { tip: tipRadius, root: rootRadius, active };
}
