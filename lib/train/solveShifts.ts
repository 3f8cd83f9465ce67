import { usual } from '../spec/usual.js';
import { radians } from '../tooth/gear.js';
import { type Frame, type ShiftCounts, type ShiftForm, shiftFrame } from './shifts/frame.js';
import { checkShiftInput } from './shifts/input.js';
import { type Bounds, type GivenShifts, type ShiftLimit, tightest, type Wanted } from './shifts/limits.js';
import { distanceRange, type Found, searchShifts } from './shifts/search.js';
import { rounded, settledTrial } from './shifts/settled.js';
import type { Balance } from './shifts/split.js';
import { rootThicknessOf, slidingOf, type Trial } from './shifts/trial.js';

export type { ShiftCounts, ShiftForm } from './shifts/frame.js';
export type { ShiftLimit } from './shifts/limits.js';
export type { Balance } from './shifts/split.js';

/** What may be asked of the shifts beyond one centre distance. */
export interface ShiftOptions {
  /** How sun and planet share: equal largest specific sliding, equal root thickness, or none for the planet [sliding]. */
  balance?: Balance;
  /** Shifts that are already settled. */
  given?: GivenShifts;
  /** Least angle between neighbouring planets, degrees: their tips keep the gap there [not asked]. */
  neighbourAngle?: number;
  /** Normal tip thickness to aim for, in normal modules; less is taken, down to 0.2, where nothing else works [0.2]. */
  tipThickness?: number;
  /** Normal tooth thickness on the reference circle to aim for, in normal modules; less where nothing else works [0]. */
  toothThickness?: number;
  /** Transverse contact ratio to aim for; less is taken, down to 1, where nothing else works [1.2]. */
  contactRatio?: number;
}

/** Profile shifts that give both meshes one centre distance. */
export interface SolvedShifts {
  sun: number;
  planet: number;
  ring: number;
  /** In normal modules. */
  centreDistance: number;
  /** Largest specific sliding in the mesh of sun and planet, negative. */
  specificSliding: { sun: number; planet: number };
  /** Transverse thickness where the true involute begins, relief taken off, in normal modules. */
  rootThickness: { sun: number; planet: number };
}

/** Why there are none: a clause, and the limit that was most nearly kept. */
export interface RefusedShifts {
  refused: string;
  limit: ShiftLimit;
}

/** Least tip thickness in normal modules. Source: DIN 3960 / ISO 21771 practice, from memory. */
const LEAST_TIP = 0.2;
/** Usual and least transverse contact ratio. Common practice, no source; below 1 teeth let go of each other. */
const USUAL_CONTACT = usual.contactRatio;
const LEAST_CONTACT = 1;

/** The limits that no set may pass. */
const LAST: Wanted = {
  tipThickness: LEAST_TIP,
  // A ring of large shift has no teeth left on its reference circle, and sound ones where they are.
  toothThickness: Number.NEGATIVE_INFINITY,
  contactRatio: LEAST_CONTACT,
};

/**
 * Profile shifts of sun, planet and ring for one common centre distance, so that z_ring need not be
 * z_sun + 2 z_planet, and none of them undercut.
 *
 * Limits, all kept: no undercut of sun and planet; tip thickness at least 0.2 m_n after relief; contact ratio at least
 * 1.2 where possible, else 1; no involute or trochoid interference, ring tips cut back as the set is made; room for
 * the ring's roots. Among what they leave, sun and planet are balanced by the criterion and the shifts are the least
 * (sum of squares) that balance allows; where the limits forbid balance, sun and planet are left least unequal.
 * @param counts teeth, as a parameter file may have them
 * @param form angles and rack, as a parameter file may have them; a gap of 0 too
 * @returns shifts in normal modules, or why there are none
 * @throws Refusal with every count and size that is out of range
 * Source: ISO 21771 for all sizes; the search is our own. A solve costs a fraction of a millisecond.
 * @example solveShifts({ sunTeeth: 15, planetTeeth: 14, ringTeeth: 45 }, { rack, pressureAngle: 20, helixAngle: 0 })
 */
export function solveShifts(
  counts: ShiftCounts,
  form: ShiftForm,
  options: ShiftOptions = {},
): SolvedShifts | RefusedShifts {
  checkShiftInput(counts, form);
  return shiftsFor(counts, form, options);
}

/** As `solveShifts`, for counts and form that have been checked already. */
export function shiftsFor(
  counts: ShiftCounts,
  form: ShiftForm,
  options: ShiftOptions = {},
): SolvedShifts | RefusedShifts {
  const found = findShifts(counts, form, options);
  if ('refused' in found) return { refused: found.refused, limit: found.limit };
  const { frame, trial } = found;
  return {
    sun: trial.sun,
    planet: trial.planet,
    ring: trial.ring,
    centreDistance: trial.at.centreDistance,
    specificSliding: slidingOf(frame, trial),
    rootThickness: {
      sun: rootThicknessOf(frame, trial, 'sun'),
      planet: rootThicknessOf(frame, trial, 'planet'),
    },
  };
}

/**
 * As `solveShifts`, with all sizes of the set found; or with the shifts that most nearly work, and the room that they
 * leave before the limit they pass, about in normal modules.
 * @param frame that of counts and form, where it is known
 */
export function findShifts(
  counts: ShiftCounts,
  form: ShiftForm,
  options: ShiftOptions = {},
  frame: Frame = shiftFrame(counts, form),
): { frame: Frame; trial: Trial } | (RefusedShifts & { room: number; nearest?: Trial }) {
  const { balance = 'sliding', given = {}, neighbourAngle } = options;
  if (!(counts.ringTeeth > counts.planetTeeth)) {
    const refused = 'the ring must have more teeth than a planet';
    return { refused, limit: 'range', room: Number.NEGATIVE_INFINITY };
  }
  const bounds: Bounds = {
    given,
    ...(neighbourAngle === undefined ? {} : { neighbourAngle: radians(neighbourAngle) }),
  };
  const settled = settledTrial(frame, given);
  const search = (wanted: Wanted): Found =>
    settled ? kept(frame, settled, wanted, bounds) : searchShifts(frame, balance, wanted, bounds);
  const [all, ...fewer] = wishesOf(options);
  let found = search(all);
  if (!('trial' in found)) {
    // What fails with every wish given up fails for good; else the wishes are given up one by one.
    const last = search(LAST);
    if (!('trial' in last)) return { refused: REASONS[last.limit], ...last };
    for (const wanted of fewer) if (!('trial' in found)) found = search(wanted);
    if (!('trial' in found)) found = last;
  }
  const trial = settled ?? rounded(frame, found.trial, given);
  const { sun = trial.sun, planet = trial.planet, ring = trial.ring } = given;
  return { frame, trial: { ...trial, sun, planet, ring } };
}

/**
 * Quick look whether shifts can exist at all: a common centre distance whose shift sums are within reach and clear of
 * undercut. Far cheaper than `solveShifts`; what it lets through may still be refused there.
 */
export function mayBeSolved(counts: ShiftCounts, form: ShiftForm): boolean {
  if (!(counts.ringTeeth > counts.planetTeeth)) return false;
  const { low, high } = distanceRange(shiftFrame(counts, form), {});
  return low <= high;
}

/** Every wish; then thinner tips; then thinner teeth too. */
function wishesOf({
  tipThickness = 0,
  toothThickness = 0,
  contactRatio = USUAL_CONTACT,
}: ShiftOptions): Wanted[] {
  const tips = Math.max(LEAST_TIP, tipThickness);
  const contact = Math.max(LEAST_CONTACT, contactRatio);
  return [
    { tipThickness: tips, toothThickness, contactRatio: contact },
    { tipThickness: LEAST_TIP, toothThickness, contactRatio: contact },
    { ...LAST, contactRatio: Math.min(contact, USUAL_CONTACT) },
  ];
}

function kept(frame: Frame, trial: Trial, wanted: Wanted, bounds: Bounds): Found {
  const found = tightest(frame, trial, wanted, bounds);
  return found.room < 0 ? { ...found, nearest: trial } : { trial };
}

const REASONS: Record<ShiftLimit, string> = {
  undercut: 'no common centre distance leaves sun and planets free of undercut',
  range: 'the shifts would leave the range of a parameter file',
  'tip-thickness': `a tooth tip would be thinner than ${LEAST_TIP} of the module`,
  'tooth-thickness': 'a tooth would be thinner than asked',
  'contact-ratio': `the transverse contact ratio of a mesh would be less than ${LEAST_CONTACT}`,
  'involute-interference': 'a tip would reach below the involute of its mate',
  'trochoid-interference': 'the tips of planets and ring would collide',
  'root-space': 'the tooth spaces of the ring would come to a point',
  neighbours: 'the tips of neighbouring planets would touch',
};
