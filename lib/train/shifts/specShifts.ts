import { refuse } from '../../refusal.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { leastAngle, planetPlaces } from '../assembly.js';
import { type RefusedShifts, type ShiftOptions, type SolvedShifts, shiftsFor } from '../solveShifts.js';
import { distanceAt, distanceFor } from './distance.js';
import { type ShiftCounts, type ShiftForm, shiftFrame } from './frame.js';

/** The profile shifts of a parameter file's gears. */
export interface SpecShifts {
  sun: number;
  planet: number;
  ring: number;
  /** What was found where the file asks to solve, and leaves something to find; null elsewhere. */
  outcome: SolvedShifts | RefusedShifts | null;
}

/** Centre distances of sun and ring mesh that differ by less are one, mm: shifts given to six places. */
const ONE_DISTANCE = 1e-4;

/**
 * The shifts that the file gives, and those it asks to be found. Where nothing can be found, gears without a shift of
 * their own are left unshifted, and the checks say why.
 * @throws Refusal when all three are given with `profileShift: solve` and contradict each other
 */
export function specShifts(spec: PlanetarySpec): SpecShifts {
  const given = {
    sun: spec.sun.profileShift,
    planet: spec.planets.profileShift,
    ring: spec.ring.profileShift,
  };
  const plain = { sun: given.sun ?? 0, planet: given.planet ?? 0, ring: given.ring ?? unshiftedRing(spec) };
  if (spec.profileShift === 'none') return { ...plain, outcome: null };
  if (given.sun !== undefined && given.planet !== undefined && given.ring !== undefined) {
    agree(spec, plain);
    return { ...plain, outcome: null };
  }
  const outcome = solveFor(spec);
  if ('refused' in outcome) return { ...plain, outcome };
  const { sun, planet, ring } = outcome;
  return { sun: given.sun ?? sun, planet: given.planet ?? planet, ring: given.ring ?? ring, outcome };
}

/** What a file asks of shifts beyond one centre distance. */
export function shiftWishes({ shiftBalance, limits, module }: PlanetarySpec) {
  return {
    balance: shiftBalance,
    tipThickness: limits.toothFeature / module,
    toothThickness: limits.wall / module,
    contactRatio: limits.contactRatio,
  };
}

/** Solves a file's shifts whether it asks for it or not, its own given ones kept [those of its gears]. */
export function solveFor(
  spec: PlanetarySpec,
  given: ShiftOptions['given'] = givenShifts(spec),
): SolvedShifts | RefusedShifts {
  const { sun, ring, planets } = spec;
  const places = planetPlaces(sun.teeth, ring.teeth, planets.count);
  return shiftsFor(countsOf(spec), shiftForm(spec), {
    ...shiftWishes(spec),
    given,
    neighbourAngle: leastAngle(places),
  });
}

/** The tooth form of a file in normal modules. */
export function shiftForm({ rack, pressureAngle, helix, fit, module }: PlanetarySpec): ShiftForm {
  const { gap, gapShare } = fit;
  return { rack, pressureAngle, helixAngle: helix.angle, gap: gap / module, gapShare };
}

function countsOf({ sun, planets, ring }: PlanetarySpec): ShiftCounts {
  return { sunTeeth: sun.teeth, planetTeeth: planets.teeth, ringTeeth: ring.teeth };
}

function givenShifts({ sun, planets, ring }: PlanetarySpec): ShiftOptions['given'] {
  return { sun: sun.profileShift, planet: planets.profileShift, ring: ring.profileShift };
}

/** As a parameter file without `ring.profileShift` has it; see `complete`. */
function unshiftedRing({ sun, planets, ring }: PlanetarySpec): number {
  if (ring.teeth !== sun.teeth + 2 * planets.teeth) return 0;
  return (sun.profileShift ?? 0) + 2 * (planets.profileShift ?? 0);
}

function agree(
  spec: PlanetarySpec,
  { sun, planet, ring }: { sun: number; planet: number; ring: number },
): void {
  const frame = shiftFrame(countsOf(spec), shiftForm(spec));
  const toSun = distanceFor(frame, 'inner', sun + planet) * spec.module;
  const toRing = distanceFor(frame, 'outer', ring - planet) * spec.module;
  if (Math.abs(toSun - toRing) <= ONE_DISTANCE) return;
  const fits = distanceAt(frame, toSun / spec.module).outer.shifts + planet;
  const nearest = Number.isFinite(fits) ? [Math.round(fits * 1e6) / 1e6] : [];
  const rule =
    'puts the planets at another centre distance than the shifts of sun and planets do; give another one, or leave it out to be found';
  refuse('no-common-centre-distance', 'ring.profileShift', ring, rule, nearest);
}
