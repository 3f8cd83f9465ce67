import { unlessRefused } from '../refusal.js';
import { MOST_TOLERANCE_PER_GAP } from '../spec/measuredGaps.js';
import { ranges } from '../spec/ranges.js';
import { resolveSpec } from '../spec/resolveSpec.js';
import { leastAngle, leastClearance, planetPlaces } from './assembly.js';
import { type Judged, type Miss, type Missed, NEAR } from './nearMiss.js';
import { type PlainTwin, plainTwins } from './plainTwin.js';
import { planParameters } from './planParameters.js';
import type { ResolvedWanted } from './planWanted.js';
import { assemblyMissed, judgeSizes, ratioMissed, rimOf } from './searchSets.js';
import { shiftedSet } from './shiftedSet.js';
import { distanceAt } from './shifts/distance.js';
import { type Frame, type ShiftCounts, type ShiftForm, shiftFrame } from './shifts/frame.js';
import { leastShiftOf } from './shifts/limits.js';
import { distanceRange } from './shifts/search.js';
import { shiftForm, shiftWishes } from './shifts/specShifts.js';
import { findShifts, type ShiftOptions } from './solveShifts.js';
import type { PlannedSet } from './unshiftedSet.js';

/** How far the ring's teeth may be from z_sun + 2 z_planet. */
const MOST_OFF = 2;
/** Shifts below this are none, in modules. */
const NONE = 1e-5;

/** Teeth of one module, and what their shifts have to keep. */
interface Teeth {
  module: number;
  form: ShiftForm;
  wishes: ShiftOptions;
  twinOf: (frame: Frame) => PlainTwin;
}

/** Tooth counts with the shifts that were found for one module, or those that most nearly work. */
interface Solved {
  frame: Frame;
  set: PlannedSet;
  /** Null where the shifts keep every limit. */
  miss: Miss | null;
  /** The same counts without shift, for the checks of `make` to decide which of the two is shown. */
  plain?: PlannedSet;
  /** Least and most of what shifts can come to. */
  reach: Reach;
}

/** Bounds on sizes over all shifts within reach, in normal modules. */
interface Reach {
  most: number;
  leastPlanetTip: number;
  leastRingRoot: number;
}

/** Counts that miss one rule, whose shifts are looked for only where a near miss is wanted. */
interface Later {
  counts: ShiftCounts;
  planets: number;
  miss: Miss;
}

/**
 * Hands every set in the spans of `wanted` that needs profile shifts, and for which they are found, to `take`, as
 * `searchSets` does: rings with one or two teeth more or fewer than z_sun + 2 z_planet, and rings of just that where
 * unshifted teeth are undercut or do not run.
 * @returns looks for near misses too that cost a solve each: at least as many as asked for, those nearest
 * Source: `solveShifts`, with what `make` would ask of it.
 */
export function searchShifted(
  wanted: ResolvedWanted,
  take: (found: Judged) => void,
): (atLeast: number, take: (found: Judged) => void) => void {
  const teeth = wanted.module.flatMap((module) => teethOf(module, wanted));
  const later: Later[] = [];
  for (const counts of countsOf(wanted)) {
    const ratio = ratioMissed(counts.sunTeeth, counts.ringTeeth, wanted);
    const now: number[] = [];
    for (let planets = wanted.planets.least; planets <= wanted.planets.most; planets++) {
      const missed = assemblyMissed(ratio, counts.sunTeeth + counts.ringTeeth, planets, wanted);
      if (missed === null) now.push(planets);
      else if (missed !== 'too much') later.push({ counts, planets, miss: missed });
    }
    if (!now.length) continue;
    for (const one of teeth) {
      const solved = solve(counts, one, wanted);
      if (solved) for (const planets of now) judge(solved, planets, one, null, wanted, take);
    }
  }
  later.sort((a, b) => a.miss.share - b.miss.share);
  return nearMissesOf(later, teeth, wanted);
}

/** Takes those of equal share together, so that which come first never depends on the order of looking. */
function nearMissesOf(later: readonly Later[], teeth: readonly Teeth[], wanted: ResolvedWanted) {
  let next = 0;
  const found: Judged[] = [];
  return (atLeast: number, take: (found: Judged) => void): void => {
    for (; next < later.length; next++) {
      if (found.length >= atLeast && later[next].miss.share > later[next - 1].miss.share) break;
      const { counts, planets, miss } = later[next];
      for (const one of teeth) {
        const solved = solve(counts, one, wanted);
        if (solved) judge(solved, planets, one, miss, wanted, (near) => found.push(near));
      }
    }
    found.forEach(take);
  };
}

/** The tooth form of one module as `make` would have it; nothing where no parameter file holds it. */
function teethOf(module: number, wanted: ResolvedWanted): Teeth[] {
  // Any counts do: form and wishes do not depend on them.
  const counts = { sunTeeth: 12, planetTeeth: 12, ringTeeth: 36, planets: 3 };
  const profileShifts = { sun: 0, planet: 0, ring: 0 };
  const file = planParameters({ ...counts, module, spacing: 'equal', profileShifts }, wanted);
  return unlessRefused(() => {
    // The tolerance of the meshes does not change their numbers, and the coarsest is never refused for its size.
    const tolerance = Math.min(ranges.tolerance[1], MOST_TOLERANCE_PER_GAP * wanted.gap);
    const spec = resolveSpec({ ...file, tolerance });
    const twinOf = plainTwins(wanted, wanted.engagement);
    return [{ module, form: shiftForm(spec), wishes: shiftWishes(spec), twinOf }];
  }, []);
}

function* countsOf({ sunTeeth, planetTeeth, ringTeeth }: ResolvedWanted): Generator<ShiftCounts> {
  for (let sun = sunTeeth.least; sun <= sunTeeth.most; sun++) {
    const least = Math.max(planetTeeth.least, Math.ceil((ringTeeth.least - MOST_OFF - sun) / 2));
    const most = Math.min(planetTeeth.most, Math.floor((ringTeeth.most + MOST_OFF - sun) / 2));
    for (let planet = least; planet <= most; planet++)
      for (let off = -MOST_OFF; off <= MOST_OFF; off++) {
        const ring = sun + 2 * planet + off;
        if (ring >= ringTeeth.least && ring <= ringTeeth.most)
          yield { sunTeeth: sun, planetTeeth: planet, ringTeeth: ring };
      }
  }
}

function solve(counts: ShiftCounts, teeth: Teeth, wanted: ResolvedWanted): Solved | null {
  const { form, wishes, module } = teeth;
  const frame = shiftFrame(counts, form);
  const reach = reachOf(frame);
  if (!reach) return null;
  const least = 2 * (reach.leastRingRoot * module + rimOf(module, wanted));
  if (least > (1 + NEAR) * Math.min(wanted.bed, wanted.largest ?? wanted.bed)) return null;
  const twin =
    counts.ringTeeth === counts.sunTeeth + 2 * counts.planetTeeth ? teeth.twinOf(frame) : undefined;
  if (twin === 'runs') return null;
  const found = findShifts(counts, form, wishes, frame);
  if (!('refused' in found)) {
    const { sun, planet } = found.trial;
    if (twin && Math.max(Math.abs(sun), Math.abs(planet)) < NONE) return null;
    const plain = typeof twin === 'object' ? { plain: twin.mayRun } : {};
    return { frame, reach, set: shiftedSet(frame, found.trial), miss: null, ...plain };
  }
  const share = Math.max(-found.room, Number.EPSILON);
  // Of counts that need no shift the plain set is what is missed, or what is found.
  if (twin || !found.nearest || !(share <= NEAR)) return null;
  const set = shiftedSet(frame, found.nearest);
  return { frame, reach, set, miss: { rule: 'shifts', share, says: `shifts: ${found.refused}` } };
}

/** Undefined where no common centre distance is within reach. */
function reachOf(frame: Frame): Reach | undefined {
  const { low, high } = distanceRange(frame, {});
  if (!(low <= high)) return undefined;
  const [nearest, farthest] = [distanceAt(frame, low), distanceAt(frame, high)];
  const planet = leastShiftOf(frame, 'planet');
  const shortening = Math.max(nearest.shortening, farthest.shortening);
  return {
    most: high,
    leastPlanetTip: frame.planet.referenceRadius + planet + frame.rack.addendum - shortening,
    leastRingRoot: frame.ring.referenceRadius + nearest.outer.shifts + planet + frame.rack.dedendum,
  };
}

/** What is left to ask of solved counts with a number of planets. Solves again where only that keeps neighbours apart. */
function judge(
  { frame, set, miss, plain, reach }: Solved,
  planets: number,
  { module, form, wishes }: Teeth,
  before: Miss | null,
  wanted: ResolvedWanted,
  take: (found: Judged) => void,
): void {
  const missed: Missed = before && miss ? 'too much' : (before ?? miss);
  if (missed === 'too much') return;
  const places = planetPlaces(set.sunTeeth, set.ringTeeth, planets);
  const apart = leastClearance(places, set.centreDistance, set.planetTipRadius);
  let settled = set;
  if (!(apart >= frame.gap) && missed === null) {
    if (!(leastClearance(places, reach.most, reach.leastPlanetTip) >= frame.gap)) return;
    const again = findShifts(set, form, { ...wishes, neighbourAngle: leastAngle(places) }, frame);
    if (!('refused' in again)) settled = shiftedSet(frame, again.trial);
  }
  judgeSizes(settled, planets, missed, { ...wanted, module: [module] }, (found) => {
    // The plain set itself is the near miss.
    if (found.miss === null || !plain) take(plain ? { ...found, plain } : found);
  });
}
