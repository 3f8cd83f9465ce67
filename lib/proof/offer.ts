import type { PlanetarySpec } from '../spec/types.js';
import { assemblyStep, departure, planetPlaces } from '../train/assembly.js';
import type { SetCounts } from '../train/nearestSets.js';
import { nearestShiftedSets } from '../train/nearestShiftedSets.js';
import { shiftForm, shiftWishes, solveFor } from '../train/shifts/specShifts.js';
import type { Change } from './nearest/changes.js';
import { firstOf } from './nearest/nearestWorking.js';
import { countsOf, setChanges, solved, withCounts } from './nearest/setChanges.js';
import { worksWith } from './nearest/works.js';

/** How many sets a refusal offers. */
const OFFERED = 4;

/** Offers already worked out: several checks of one file ask for the same one, and a search costs some 100 ms. */
const offers = new WeakMap<PlanetarySpec, string>();

/** The sets nearest to the file's that work, with profile shifts found where the file asks for that, as one sentence. */
export function refusalOffer(spec: PlanetarySpec): string {
  const offer = offers.get(spec) ?? nearestOffer(spec);
  offers.set(spec, offer);
  return offer;
}

function nearestOffer(spec: PlanetarySpec): string {
  if (spec.profileShift === 'solve') {
    const found = firstOf(
      nearestShiftedSets(countsOf(spec), 2 * OFFERED, shiftForm(spec), shiftWishes(spec)),
      OFFERED,
      (set) => worksWith(spec, { ...withCounts(set), ...solved(spec) }),
    );
    if (found.length)
      return `Nearest sets that work with profileShift: solve (sun / planets / ring teeth × planets): ${found.map(show).join('; ')}`;
  }
  const found = firstOf(setChanges(spec), OFFERED, (change) => worksWith(spec, change));
  if (!found.length) return 'No set within twelve teeth of this one works without profile shift.';
  return `Nearest sets that work (sun / planets / ring teeth × planets): ${found.map(showChange).join('; ')}`;
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

function show({ sunTeeth, planetTeeth, ringTeeth, planets }: SetCounts): string {
  return `${sunTeeth} / ${planetTeeth} / ${ringTeeth} × ${planets}`;
}

function showChange(change: Change): string {
  const [sun, planet, ring, planets] = ['sun.teeth', 'planets.teeth', 'ring.teeth', 'planets.count'].map(
    (path) => change[path],
  );
  return `${sun} / ${planet} / ${ring} × ${planets}`;
}
