import type { PlanetarySpec } from '../spec/types.js';
import { assemblyStep, departure, planetPlaces } from '../train/assembly.js';
import { nearestShiftedSets } from '../train/nearestShiftedSets.js';
import { shiftForm, shiftWishes, solveFor } from '../train/shifts/specShifts.js';
import type { Change } from './nearest/changes.js';
import { firstOf } from './nearest/nearestWorking.js';
import { countsOf, setChanges, solved, withCounts } from './nearest/setChanges.js';
import { saySets } from './nearest/words.js';
import { worksWith } from './nearest/works.js';

/** How many sets a refusal offers. */
const OFFERED = 4;

/** Sets already found: several checks of one file name the same ones, and a search costs some 100 ms. */
const known = new WeakMap<PlanetarySpec, Change[]>();

/** The sets nearest to the file's that work, with profile shifts found where the file asks for that. */
export function nearestSetsTo(spec: PlanetarySpec): Change[] {
  const sets = known.get(spec) ?? workingSets(spec);
  known.set(spec, sets);
  return sets;
}

/** These in one sentence. */
export function sayNearestSets(sets: readonly Change[]): string {
  if (sets.length) return saySets(sets, 'work');
  return 'No set within twelve teeth of this one works without profile shift.';
}

function workingSets(spec: PlanetarySpec): Change[] {
  const first = (changes: readonly Change[]) =>
    firstOf(changes, OFFERED, (change) => worksWith(spec, change));
  if (spec.profileShift === 'solve') {
    const sets = nearestShiftedSets(countsOf(spec), 2 * OFFERED, shiftForm(spec), shiftWishes(spec));
    const found = first(sets.map((set) => ({ ...withCounts(set), ...solved(spec) })));
    if (found.length) return found;
  }
  return first(setChanges(spec));
}

/** What `profileShift: solve` would make of a set without a common centre distance, as one sentence. */
export function shiftOffer(spec: PlanetarySpec): string {
  const found = solveFor(spec, {});
  if ('refused' in found) return `profileShift: solve cannot help: ${found.refused}.`;
  const { sun, planet, ring } = found;
  const does = worksWith(spec, solved(spec)) ? 'make it work' : 'give one centre distance';
  return `profileShift: solve would ${does} with shifts of ${sun.toFixed(3)} (sun), ${planet.toFixed(3)} (planets) and ${ring.toFixed(3)} (ring).`;
}

/**
 * What `spacing: nearest` would make of planets that cannot be equally spaced, as one sentence; empty where that alone
 * is not enough.
 */
export function spacingOffer(spec: PlanetarySpec): string {
  if (!worksWith(spec, { 'planets.spacing': 'nearest' })) return '';
  const { sun, ring, planets } = spec;
  const off = departure(planetPlaces(sun.teeth, ring.teeth, planets.count));
  const step = assemblyStep(sun.teeth, ring.teeth);
  return `planets.spacing: nearest would put them at multiples of ${step.toFixed(3)}°, at most ${off.toFixed(3)}° off equal angles.`;
}
