import { Refusal, refuse, refuseAll, unlessRefused } from '../../refusal.js';
import { ranges } from '../../spec/ranges.js';
import { gearBodyProblems } from '../../spec/rules/trains.js';
import type { PairSpec } from '../../spec/types.js';
import { generatedFormRadius } from '../../tooth/externalProfile.js';
import type { Gear } from '../../tooth/gear.js';
import { toothProfile } from '../../tooth/profile.js';
import { tipThickness } from '../../tooth/thickness.js';
import { leastProfileShift, straightDepth } from '../../tooth/undercut.js';
import { overlapRatio, transverseContactRatio } from '../../train/contactRatio.js';
import { leastRingTipRadius, trochoidMargin } from '../../train/interference.js';
import { centreDistance, pairSizes, shiftSum } from '../../train/pair.js';
import { specificSliding } from '../../train/specificSliding.js';
import { type MadeRadii, madeRadii } from '../madeRadii.js';

/** Both gears of a pair. */
export interface PairGears {
  pinion: Gear;
  wheel: Gear;
}

/** Centre distances that differ by less are equal, mm: rounding of doubles and of shifts given to six places. */
const EQUAL = 1e-4;
const RANGE = { external: ranges.shift, internal: ranges.ringShift } as const;
/** Least tip thickness that shifts are found for, in modules, relief taken off. */
const LEAST_TIP = 0.1;

/**
 * The gears that a pair's file describes, before any relief. Shifts that are to be found are those that the centre
 * distance asks for, or the standard one where the file gives none, shared as `shiftBalance` says.
 * @throws Refusal where given shifts make another centre distance than the file's, where no shifts in range make it,
 * or where shifts that were found leave too little body inside the teeth or around a bore
 * Source: ISO 21771 for the sum of shifts that a centre distance asks for.
 */
export function pairGears(spec: PairSpec): PairGears {
  const { pinion, wheel } = spec;
  const asked = spec.centreDistance;
  if (pinion.profileShift !== undefined && wheel.profileShift !== undefined) {
    const gears = gearsOf(spec, pinion.profileShift, wheel.profileShift);
    const made = madeDistance(spec, gears);
    if (asked !== undefined && Math.abs(made - asked) > EQUAL) refuseDistance(spec, gears, asked, made);
    return gears;
  }
  const distance = asked ?? centreDistance(...bare(spec));
  const sum = sumAt(spec, distance);
  const found = pinionShift(spec, sum);
  if (found === null) {
    const parameter = asked === undefined ? 'profileShift' : 'centreDistance';
    const value = asked ?? spec.profileShift;
    const rule = `asks for a sum of profile shifts of ${signed(sum)}, which no two gears in range can share and run`;
    const nearest = asked === undefined ? ['none'] : nearestDistance(spec, asked);
    refuse('no-shifts', parameter, value, rule, nearest);
  }
  const solved = gearsOf(spec, found, wheelShift(spec, sum, found));
  refuseThinBodies(spec, solved);
  return solved;
}

/** In thousandths; never a negative nothing. */
function signed(shift: number): string {
  return (Math.round(shift * 1000) / 1000 + 0).toFixed(3);
}

/** The wheel's shift that goes with the pinion's: the shifts add up outside and differ inside. */
function wheelShift({ wheel }: PairSpec, sum: number, pinion: number): number {
  return wheel.profileShift ?? (wheel.internal ? sum + pinion : sum - pinion);
}

/** The pinion's shift, or null where none serves. */
function pinionShift(spec: PairSpec, sum: number): number | null {
  const { pinion, wheel } = spec;
  const given = pinion.profileShift ?? (wheel.profileShift !== undefined ? fromWheel(spec, sum) : undefined);
  if (given !== undefined) return serves(spec, sum, given) ? given : null;
  const [low, high] = wanted(spec, sum);
  if (low <= high) {
    const aim = aimed(spec, sum, low, high);
    if (serves(spec, sum, aim)) return aim;
  }
  return firstThatServes(spec, sum);
}

function fromWheel({ wheel }: PairSpec, sum: number): number {
  return wheel.internal ? wheel.profileShift! - sum : sum - wheel.profileShift!;
}

/** Where no gear with teeth outside is undercut and both shifts are in range. */
function wanted(spec: PairSpec, sum: number): [number, number] {
  const [pinion, wheel] = bare(spec);
  const least = (gear: Gear) =>
    Math.max(RANGE.external[0], leastProfileShift(gear, Math.max(gear.rack.addendum, straightDepth(gear))));
  if (spec.wheel.internal)
    return [
      Math.max(least(pinion), RANGE.internal[0] - sum),
      Math.min(RANGE.external[1], RANGE.internal[1] - sum),
    ];
  return [Math.max(least(pinion), sum - RANGE.external[1]), Math.min(RANGE.external[1], sum - least(wheel))];
}

/** The share that the file asks for, between two limits. */
function aimed(spec: PairSpec, sum: number, low: number, high: number): number {
  const within = (shift: number) => Math.min(high, Math.max(low, shift));
  if (spec.wheel.internal) return within(spec.shiftBalance === 'none' ? -sum : 0);
  if (spec.shiftBalance === 'none') return within(sum);
  // The more shift the pinion has, the less its flanks slide and the more its mate's do.
  let [less, more] = [low, high];
  for (let step = 0; step < 40; step++) {
    const middle = (less + more) / 2;
    if (pinionSlidesMore(spec, sum, middle)) less = middle;
    else more = middle;
  }
  return within((less + more) / 2);
}

function pinionSlidesMore(spec: PairSpec, sum: number, shift: number): boolean {
  const gears = gearsOf(spec, shift, wheelShift(spec, sum, shift));
  const { radii } = madeRadii(spec, gears, MESHES, NO_RELIEF);
  const pair = pairSizes(gears.pinion, gears.wheel, {
    tipRadius1: radii.pinion.tip,
    tipRadius2: radii.wheel.tip,
    formRadius1: generatedFormRadius(gears.pinion, 0, radii.pinion.root),
    formRadius2: generatedFormRadius(gears.wheel, 0, radii.wheel.root),
  });
  const { first, second } = specificSliding(pair);
  return first < second;
}

const MESHES = [['pinion', 'wheel']] as const;
const NO_RELIEF = { pinion: 0, wheel: 0 };
/** Pinion shifts tried where the share that was aimed at leaves no tip. */
const TRIED = 40;

/** The shift nearest to the middle of the range that serves, or null. */
function firstThatServes(spec: PairSpec, sum: number): number | null {
  const [low, high] = RANGE.external;
  const tried = Array.from({ length: TRIED + 1 }, (_, i) => low + ((high - low) * i) / TRIED);
  const middle = spec.wheel.internal ? 0 : sum / 2;
  tried.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return tried.find((shift) => serves(spec, sum, shift)) ?? null;
}

/** Whether both shifts are in range, both gears keep a body and both keep a tip. */
function serves(spec: PairSpec, sum: number, shift: number): boolean {
  const other = wheelShift(spec, sum, shift);
  const [low, high] = spec.wheel.internal ? RANGE.internal : RANGE.external;
  if (shift < RANGE.external[0] || shift > RANGE.external[1] || other < low || other > high) return false;
  return unlessRefused(() => {
    const gears = gearsOf(spec, shift, other);
    if (thinBodies(spec, gears).length) return false;
    const { gap, gapShare } = spec.fit;
    const relief = { pinion: gap * gapShare, wheel: gap * (1 - gapShare) };
    const { radii } = madeRadii(spec, gears, MESHES, relief);
    const tips = (['pinion', 'wheel'] as const).every(
      (part) => tipThickness(gears[part], radii[part].tip, relief[part]) > LEAST_TIP * spec.module,
    );
    return tips && runs(spec, gears, radii, relief);
  }, false);
}

/** Whether teeth as made stay in contact and keep clear of each other's roots, as the checks will ask. */
function runs(
  spec: PairSpec,
  gears: PairGears,
  radii: Record<keyof PairGears, MadeRadii>,
  relief: Record<keyof PairGears, number>,
): boolean {
  const profileOf = (part: keyof PairGears) => {
    const { tip, root, active } = radii[part];
    const cuts = { relief: relief[part], tipRadius: tip, rootRadius: root, activeRadius: active };
    return toothProfile(gears[part], cuts);
  };
  const [one, two] = [profileOf('pinion'), profileOf('wheel')];
  // A shift that is found leaves no root undercut; one that is given is its giver's own affair.
  const undercut = (part: keyof PairGears, by: boolean) => by && spec[part].profileShift === undefined;
  if (undercut('pinion', one.undercut) || undercut('wheel', two.undercut)) return false;
  const pair = pairSizes(gears.pinion, gears.wheel, {
    tipRadius1: one.tipRadius,
    tipRadius2: two.tipRadius,
    formRadius1: one.formRadius,
    formRadius2: two.formRadius,
  });
  const { form, angle } = spec.helix;
  const oneWay = form === 'herringbone' ? spec.faceWidth / 2 : spec.faceWidth;
  const overlap = angle === 0 ? 0 : overlapRatio(gears.pinion, oneWay);
  if (transverseContactRatio(pair) + overlap < 1) return false;
  if (pair.internal) return pair.tipRadius2 >= leastRingTipRadius(pair) - EQUAL && trochoidMargin(pair) >= 0;
  const line = pair.centreDistance * Math.sin(pair.workingPressureAngle);
  const reach = (radius: number, base: number) => Math.sqrt(Math.max(0, radius ** 2 - base ** 2));
  const clear = (form: number, base: number, tip: number, mateBase: number) =>
    reach(form, base) + reach(tip, mateBase) <= line + EQUAL;
  return (
    (one.undercut || clear(one.formRadius, pair.baseRadius1, pair.tipRadius2, pair.baseRadius2)) &&
    (two.undercut || clear(two.formRadius, pair.baseRadius2, pair.tipRadius1, pair.baseRadius1))
  );
}

/** Centre distances that are tried beside the standard one, as shares of it. */
const AROUND = [0.98, 0.99, 1.01, 1.02, 1.03, 1.04, 1.06, 1.08];

/** The centre distance nearest to the one asked for that shifts can be found for, towards the standard one. */
function nearestDistance(spec: PairSpec, asked: number): number[] {
  const standard = centreDistance(...bare(spec));
  const works = (distance: number) =>
    unlessRefused(() => pinionShift(spec, shiftSum(...bare(spec), distance)) !== null, false);
  const starts = [standard, ...AROUND.map((share) => share * standard)].filter(works);
  if (!starts.length) return [];
  let [fits, misses] = [starts.reduce((a, b) => (Math.abs(b - asked) < Math.abs(a - asked) ? b : a)), asked];
  for (let step = 0; step < 30; step++) {
    const middle = (fits + misses) / 2;
    if (works(middle)) fits = middle;
    else misses = middle;
  }
  const towards = asked > fits ? Math.floor : Math.ceil;
  const rounded = towards(fits * 1000) / 1000;
  return [works(rounded) ? rounded : fits];
}

/** @throws Refusal for the centre distance where base circles leave no room for it */
function sumAt(spec: PairSpec, distance: number): number {
  try {
    return shiftSum(...bare(spec), distance);
  } catch (error) {
    if (!(error instanceof Refusal) || distance !== spec.centreDistance) throw error;
    refuse(error.code, 'centreDistance', distance, error.rule, nearestDistance(spec, distance));
  }
}

function bare(spec: PairSpec): [Gear, Gear] {
  const { pinion, wheel } = gearsOf(spec, 0, 0);
  return [pinion, wheel];
}

function gearsOf(spec: PairSpec, pinion: number, wheel: number): PairGears {
  const { module, pressureAngle, rack, helix } = spec;
  const common = { module, pressureAngle, helixAngle: helix.angle, rack };
  return {
    pinion: { ...common, teeth: spec.pinion.teeth, profileShift: pinion, internal: false },
    wheel: { ...common, teeth: spec.wheel.teeth, profileShift: wheel, internal: spec.wheel.internal },
  };
}

/** The centre distance that given shifts make; where there is none, shifts that make the standard one are offered. */
function madeDistance(spec: PairSpec, { pinion, wheel }: PairGears): number {
  try {
    return centreDistance(pinion, wheel);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const standard = wheelShift(
      { ...spec, wheel: { ...spec.wheel, profileShift: undefined } },
      0,
      pinion.profileShift,
    );
    refuse(error.code, 'wheel.profileShift', wheel.profileShift, error.rule, [standard]);
  }
}

/** Given shifts and a given centre distance must say the same. */
function refuseDistance(spec: PairSpec, { pinion, wheel }: PairGears, asked: number, made: number): never {
  const help = spec.profileShift === 'none' ? '; profileShift: solve finds shifts that are not given' : '';
  const rule = `must be what the profile shifts ${pinion.profileShift} and ${wheel.profileShift} give, ${made.toFixed(4)} mm${help}`;
  refuse('no-common-centre-distance', 'centreDistance', asked, rule, [Math.round(made * 1e4) / 1e4]);
}

function withShifts(spec: PairSpec, { pinion, wheel }: PairGears): PairSpec {
  return {
    ...spec,
    pinion: { ...spec.pinion, profileShift: pinion.profileShift },
    wheel: { ...spec.wheel, profileShift: wheel.profileShift },
  };
}

function thinBodies(spec: PairSpec, gears: PairGears) {
  const { pinion, wheel } = withShifts(spec, gears);
  return [
    ...gearBodyProblems(spec, 'pinion', pinion),
    ...(wheel.internal ? [] : gearBodyProblems(spec, 'wheel', wheel)),
  ];
}

/** Shifts are found for the teeth and the bodies within them. */
function refuseThinBodies(spec: PairSpec, gears: PairGears): void {
  refuseAll(thinBodies(spec, gears));
}
