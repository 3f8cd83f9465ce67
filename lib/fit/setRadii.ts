import type { PlanetarySpec } from '../spec/types.js';
import { generatedFormRadius } from '../tooth/externalProfile.js';
import { gearSizes } from '../tooth/gear.js';
import { leastRingTipRadius } from '../train/interference.js';
import { type PairSizes, pairSizes } from '../train/pair.js';
import type { SetGears } from '../train/setGears.js';
import { reliefs } from './reliefs.js';

/** Radii of one kind of gear as made, mm. */
export interface MadeRadii {
  tip: number;
  root: number;
  /** From which on (up to which, for the ring) its mates need a true involute. */
  active: number;
}

/** Radii of each kind of gear, and what was changed to get them. */
export interface SetRadii {
  sun: MadeRadii;
  planet: MadeRadii;
  ring: MadeRadii;
  /** Each change against the standard tooth, in one sentence. */
  adjustments: string[];
}

/** Differences below this are rounding, mm. */
const ROUNDING = 1e-9;

/**
 * Tip and root radii that let the set run:
 * tips are shortened where a changed centre distance eats into the rack's bottom clearance; roots are deepened
 * where that clearance is less than the gap; ring tips are cut back to where the planet's involute begins. The
 * active radii make root roundings give way where a mate's tip would come nearer to them than the gap.
 * @throws Refusal when a pair has no working pressure angle
 */
export function setRadii(spec: PlanetarySpec, gears: SetGears): SetRadii {
  const gap = spec.fit.gap;
  // A tip that stands off its mate by the gap has its nearest point that much farther along the line of action.
  const off = gap / Math.cos(gearSizes(gears.planet).baseHelixAngle);
  const clearance = (spec.rack.dedendum - spec.rack.addendum) * spec.module;
  const inner = pairSizes(gears.sun, gears.planet);
  const outer = pairSizes(gears.planet, gears.ring);
  const [toSun, toRing] = [inner.centreDistance, outer.centreDistance];
  const radii = {
    sun: standard(gears.sun),
    planet: standard(gears.planet),
    ring: standard(gears.ring),
  };
  const adjustments: string[] = [];
  const { sun, planet, ring } = radii;

  const shorten = (part: 'sun' | 'planet' | 'ring', room: number) => {
    const missing = clearance - room;
    if (missing <= ROUNDING) return;
    radii[part].tip += part === 'ring' ? missing : -missing;
    adjustments.push(`tips of the ${part} shortened by ${mm(missing)} to keep the rack's bottom clearance`);
  };
  shorten('sun', toSun - sun.tip - planet.root);
  shorten('planet', Math.min(toSun - planet.tip - sun.root, ring.root - toRing - planet.tip));
  shorten('ring', ring.tip - toRing - planet.root);

  const deepen = (part: 'sun' | 'planet' | 'ring', room: number) => {
    const missing = gap - room;
    if (missing <= ROUNDING) return;
    radii[part].root += part === 'ring' ? missing : -missing;
    adjustments.push(`roots of the ${part} deepened by ${mm(missing)} so that its mates' tips keep the gap`);
  };
  deepen('sun', toSun - planet.tip - sun.root);
  deepen('planet', Math.min(toSun - sun.tip - planet.root, ring.tip - toRing - planet.root));
  deepen('ring', ring.root - toRing - planet.tip);

  sun.active = activeRadius(inner.baseRadius1, onLine(inner) - reach(inner.baseRadius2, planet.tip) - off);
  planet.active = activeRadius(inner.baseRadius2, onLine(inner) - reach(inner.baseRadius1, sun.tip) - off);
  ring.active = activeRadius(outer.baseRadius2, onLine(outer) + reach(outer.baseRadius1, planet.tip) + off);

  const form = generatedFormRadius(gears.planet, reliefs(spec.fit).planet, planet.root, planet.active);
  const formRadius1 = activeRadius(outer.baseRadius1, reach(outer.baseRadius1, form) + off);
  const least = Math.max(leastRingTipRadius({ ...outer, formRadius1 }), gearSizes(gears.ring).baseRadius);
  if (least - ring.tip > ROUNDING) {
    adjustments.push(
      `tips of the ring cut back by ${mm(least - ring.tip)} to where the planet's involute begins (involute interference)`,
    );
    ring.tip = least;
  }
  return { ...radii, adjustments };
}

/** Length of the line of action between the base circles' points of contact, mm. */
function onLine({ centreDistance, workingPressureAngle }: PairSizes): number {
  return centreDistance * Math.sin(workingPressureAngle);
}

/** Tangent from a circle of `radius` to the base circle, mm: how far along the line of action its points meet. */
function reach(baseRadius: number, radius: number): number {
  return Math.sqrt(Math.max(0, radius ** 2 - baseRadius ** 2));
}

/** The radius that has the tangent length `along`, mm; the base radius where that is negative. */
function activeRadius(baseRadius: number, along: number): number {
  return Math.hypot(baseRadius, Math.max(0, along));
}

function standard(gear: SetGears['sun']): MadeRadii {
  const { tipRadius, rootRadius, referenceRadius } = gearSizes(gear);
  return { tip: tipRadius, root: rootRadius, active: referenceRadius };
}

function mm(length: number): string {
  return `${length.toFixed(3)} mm`;
}
