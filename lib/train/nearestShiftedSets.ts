import { isWithin, ranges } from '../spec/ranges.js';
import { allowsEqualSpacing } from './assembly.js';
import { byDistance, type SetCounts } from './nearestSets.js';
import { mayBeSolved, type ShiftForm, type ShiftOptions, shiftsFor } from './solveShifts.js';

/** Tooth counts of sun and planets are changed by at most this much, and the number of planets by one. */
const WINDOW = 3;
/** How far the ring may depart from z_sun + 2 z_planet; beyond this no shifts were ever found. */
const RING = 4;
/** Sets that are looked at closely before the search gives up: a bound on its time. */
const MOST_SOLVED = 60;

/**
 * The sets nearest to what was asked whose profile shifts can be solved: equally spaced, neighbours clear, all limits
 * of `solveShifts` kept. What was asked comes first when it works itself. Nearest is meant as in `nearestSets`.
 * @param most how many to give back
 * @param options as for `solveShifts`; the angle between neighbours follows from each set's own count
 * @returns best first; empty when nothing near works
 */
export function nearestShiftedSets(
  asked: SetCounts,
  most: number,
  form: ShiftForm,
  options: Omit<ShiftOptions, 'given' | 'neighbourAngle'> = {},
): SetCounts[] {
  const near: SetCounts[] = [];
  for (let sun = -WINDOW; sun <= WINDOW; sun++)
    for (let planet = -WINDOW; planet <= WINDOW; planet++)
      for (let ring = -RING; ring <= RING; ring++)
        for (let more = -1; more <= 1; more++) {
          const sunTeeth = asked.sunTeeth + sun;
          const planetTeeth = asked.planetTeeth + planet;
          const counts = {
            sunTeeth,
            planetTeeth,
            ringTeeth: sunTeeth + 2 * planetTeeth + ring,
            planets: asked.planets + more,
          };
          if (!isWithin(sunTeeth, ranges.teeth) || !isWithin(planetTeeth, ranges.teeth)) continue;
          if (!isWithin(counts.planets, ranges.planets) || !isWithin(counts.ringTeeth, ranges.ringTeeth))
            continue;
          if (allowsEqualSpacing(sunTeeth, counts.ringTeeth, counts.planets)) near.push(counts);
        }
  const found: SetCounts[] = [];
  let solved = 0;
  for (const counts of near.sort(byDistance(asked))) {
    if (found.length === most || solved === MOST_SOLVED) break;
    if (!mayBeSolved(counts, form)) continue;
    solved++;
    const shifts = shiftsFor(counts, form, { ...options, neighbourAngle: 360 / counts.planets });
    if (!('refused' in shifts)) found.push(counts);
  }
  return found;
}
