import { distanceAt, distanceFor } from './distance.js';
import type { Frame } from './frame.js';
import type { GivenShifts } from './limits.js';
import { type Trial, trialOf } from './trial.js';

/** Sun and planet to six places, so that they can be written down; the ring follows and keeps the centre distance. */
export function rounded(frame: Frame, trial: Trial, given: GivenShifts): Trial {
  if (given.ring !== undefined) return trial;
  const six = (shift: number) => Math.round(shift * 1e6) / 1e6 + 0;
  const planet = given.planet ?? six(trial.planet);
  const distance = distanceFor(frame, 'inner', (given.sun ?? six(trial.sun)) + planet);
  const { sun, ring, ...made } = trialOf(frame, distanceAt(frame, distance), planet);
  // A billionth is far below what the proof tells apart, and clears the last bits of rounding.
  const nine = (shift: number) => Math.round(shift * 1e9) / 1e9 + 0;
  return { ...made, sun: given.sun ?? nine(sun), ring: nine(ring) };
}

/** Two shifts leave nothing to choose: the trial they make; undefined with fewer, or where they allow no mesh. */
export function settledTrial(frame: Frame, { sun, planet, ring }: GivenShifts): Trial | undefined {
  if (sun !== undefined && planet !== undefined)
    return trialOf(frame, distanceAt(frame, distanceFor(frame, 'inner', sun + planet)), planet);
  if (planet !== undefined && ring !== undefined)
    return trialOf(frame, distanceAt(frame, distanceFor(frame, 'outer', ring - planet)), planet);
  if (sun === undefined || ring === undefined) return undefined;
  // x_sun + x_ring is the sum of both meshes' shift sums, which grows with the centre distance.
  let [low, high] = [Math.max(frame.base.inner, frame.base.outer), frame.ring.referenceRadius];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const { inner, outer } = distanceAt(frame, middle);
    if (inner.shifts + outer.shifts < sun + ring) low = middle;
    else high = middle;
  }
  const at = distanceAt(frame, (low + high) / 2);
  return trialOf(frame, at, at.inner.shifts - sun);
}
