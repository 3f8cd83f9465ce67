import { type Distance, distanceAt, distanceFor } from './distance.js';
import type { Frame } from './frame.js';
import { golden } from './golden.js';
import { type Bounds, leastShiftOf, type Wanted } from './limits.js';
import {
  type Asked,
  type Balance,
  type Balanced,
  balancedAt,
  type Choice,
  choiceAt,
  nearestSplit,
  type Room,
  roomAt,
  type Split,
} from './split.js';
import type { Trial } from './trial.js';

/** The best choice found, or what stood in the way where most nearly one was found. */
export type Found = { trial: Trial } | Room;

/** Steps of the coarse search along the centre distance. */
const DISTANCES = 28;
/** Widths to which planet shifts are found, in modules: enough to compare by, and to write down six places. */
const WIDTHS = { coarse: 1e-6, fine: 1e-8 };
/** Golden-section steps between two coarse centre distances: to about a ten-thousandth of a module. */
const REFINEMENTS = 15;
/** Shift sums that are looked through. */
const SUMS = { inner: 2.2, outer: 2.5 };
/** Less room than this at every coarse step is not looked into any closer. */
const HOPELESS = -0.1;
/** Criteria closer than this are equal. */
const EQUAL = 1e-5;

/** Common centre distances worth a look; `low` > `high` when there is none. */
export function distanceRange(frame: Frame, { given = {} }: Bounds): { low: number; high: number } {
  const leastOf = (part: 'sun' | 'planet') => given[part] ?? leastShiftOf(frame, part);
  // Below the base distance there is no mesh; a hair above it the working pressure angle is real.
  const least = (mesh: 'inner' | 'outer', shifts: number) => {
    const distance = distanceFor(frame, mesh, shifts);
    return Number.isNaN(distance) ? frame.base[mesh] * (1 + 1e-6) : distance;
  };
  return {
    low: Math.max(least('inner', leastOf('sun') + leastOf('planet')), least('outer', -SUMS.outer)),
    high: Math.min(distanceFor(frame, 'inner', SUMS.inner), distanceFor(frame, 'outer', SUMS.outer)),
  };
}

/**
 * Looks for the shifts of least effort at which sun and planet are balanced, within the limits; where balance is
 * never allowed, for those that leave them least unequal. Deterministic: a coarse walk along the centre distance,
 * then golden section beside the best step. Distances that cannot cost less effort than a balanced choice already
 * found are passed over, which changes nothing but the time.
 */
export function searchShifts(frame: Frame, balance: Balance, wanted: Wanted, bounds: Bounds): Found {
  const range = distanceRange(frame, bounds);
  if (!(range.low <= range.high)) return { limit: 'undercut', room: range.high - range.low };
  const asked = { frame, balance, wanted, bounds };
  const step = (range.high - range.low) / DISTANCES;
  const stops = Array.from({ length: DISTANCES + 1 }, (_, i) => stopAt(frame, range.low + i * step));
  // Standard teeth are offered by name, so that no search misses them by a hair.
  for (const distance of [frame.unshifted.inner, frame.unshifted.outer])
    if (distance >= range.low && distance <= range.high) stops.push(stopAt(frame, distance));
  // Balance alone costs a fraction of the way to what is nearest to it, and often it is allowed.
  const balances: Balanced[] = [];
  let best: Split | undefined;
  for (const stop of stops.sort((a, b) => a.effort - b.effort)) {
    if (beaten(best, stop)) break;
    const found = balancedAt(asked, stop.distance, WIDTHS.coarse);
    balances.push(found);
    const choice = choiceAt(asked, found);
    if (choice && (!best || !preferred(best, choice))) best = choice;
  }
  const balancedOnly = best !== undefined;
  for (const found of balancedOnly ? [] : balances) {
    const split = nearestSplit(asked, found, WIDTHS.coarse);
    if (!best || !preferred(best, split)) best = split;
  }
  const coarse = best!;
  if (!('trial' in coarse) && coarse.room < HOPELESS) return coarse;
  return refine(asked, coarse, balancedOnly, [
    Math.max(range.low, coarse.distance - step),
    Math.min(range.high, coarse.distance + step),
  ]);
}

/** The best choice between two centre distances, beside a coarse one. */
function refine(asked: Asked, coarse: Split, balancedOnly: boolean, beside: [number, number]): Split {
  // What was found coarsely stands, should it miss a limit by a hair when looked at closely.
  let best = balancedOnly ? coarse : undefined;
  const look = (centreDistance: number): Split => {
    const stop = stopAt(asked.frame, centreDistance);
    if (beaten(best, stop))
      return { ...(best as Choice & Split), distance: centreDistance, effort: stop.effort };
    const found = balancedAt(asked, stop.distance, WIDTHS.fine);
    const split =
      choiceAt(asked, found) ?? (balancedOnly ? roomAt(found) : nearestSplit(asked, found, WIDTHS.fine));
    if (!best || !preferred(best, split)) best = split;
    return split;
  };
  look(coarse.distance);
  golden(beside, REFINEMENTS, look, preferred);
  return best!;
}

/** Whether no split of a stop can be better than a choice that is balanced. */
function beaten(best: Split | undefined, { effort }: Stop): boolean {
  return best !== undefined && 'trial' in best && inequality(best) === 0 && effort >= best.effort;
}

/** A centre distance, and the least effort that any split of its shift sums costs. */
interface Stop {
  distance: Distance;
  effort: number;
}

/** Of (a − p)² + p² + (b + p)² over all planet shifts p: two thirds of a² + a b + b². */
function stopAt(frame: Frame, centreDistance: number): Stop {
  const distance = distanceAt(frame, centreDistance);
  const [a, b] = [distance.inner.shifts, distance.outer.shifts];
  return { distance, effort: (2 / 3) * (a * a + a * b + b * b) };
}

/** Choices before obstacles; the better choice, the obstacle that leaves more room. */
function preferred(a: Split, b: Split): boolean {
  if ('trial' in a) return !('trial' in b) || !better(b, a);
  return !('trial' in b) && a.room >= b.room;
}

/** Balanced before unbalanced, then less effort; unbalanced ones by how unequal they are. */
function better(a: Choice, b: Choice): boolean {
  const [left, right] = [inequality(a), inequality(b)];
  return left === right ? a.effort < b.effort : left < right;
}

/** How unequal sun and planet are, in steps that count; 0 when balanced. */
function inequality({ unequal }: Choice): number {
  return Math.round(unequal / EQUAL);
}
