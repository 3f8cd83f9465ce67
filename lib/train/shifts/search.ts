import { type Distance, distanceAt, distanceFor } from './distance.js';
import type { Frame } from './frame.js';
import { golden } from './golden.js';
import {
  type Bounds,
  SHIFT_RANGE,
  type ShiftLimit,
  tightest,
  UNDERCUT_SPARE,
  type Wanted,
} from './limits.js';
import { rootThicknessOf, slidingOf, type Trial, trialOf } from './trial.js';

/** By what sun and planet share their shift; see `solveShifts`. */
export type Balance = 'sliding' | 'root' | 'none';

/** The best choice found, or what stood in the way where most nearly one was found. */
export type Found = { trial: Trial } | Room;

/** The limit that leaves least room, and how much; negative where it is passed. */
export interface Room {
  limit: ShiftLimit;
  room: number;
}

/** What one centre distance comes to. */
type Split = (Choice | Room) & { distance: number };

interface Choice {
  trial: Trial;
  /** How unequal sun and planet are left, by the criterion; 0 when balanced. */
  unequal: number;
  /** Sum of the squares of all three shifts. */
  effort: number;
}

/** Steps of the coarse search along the centre distance, and of the search for room across the planet shift. */
const DISTANCES = 28;
const SPLITS = 14;
/** Halvings of an interval about half a module wide: enough to compare by, and to write down six places. */
const HALVINGS = { coarse: 18, fine: 28 };
/** Golden-section steps between two coarse centre distances: to a few millionths of a module. */
const REFINEMENTS = 22;
/** Shift sums that are looked through. */
const SUMS = { inner: 2.2, outer: 2.5 };
/** Room that every limit keeps, so that rounding of the shifts found does not pass it. */
const MARGIN = 1e-4;
/** Less room than this at every coarse step is not looked into any closer. */
const HOPELESS = -0.1;
/** Criteria closer than this are equal. */
const EQUAL = 1e-5;

/** Common centre distances worth a look; `low` > `high` when there is none. */
export function distanceRange(frame: Frame, { given = {} }: Bounds): { low: number; high: number } {
  const leastOf = (part: 'sun' | 'planet') =>
    given[part] ?? Math.max(SHIFT_RANGE.gear[0], frame[part].leastShift + UNDERCUT_SPARE);
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
 * then golden section beside the best step.
 */
export function searchShifts(frame: Frame, balance: Balance, wanted: Wanted, bounds: Bounds): Found {
  const range = distanceRange(frame, bounds);
  if (!(range.low <= range.high)) return { limit: 'undercut', room: range.high - range.low };
  let halvings = HALVINGS.coarse;
  let best: Split | undefined;
  const at = (distance: number): Split => {
    const split = bestSplit(frame, distanceAt(frame, distance), balance, wanted, bounds, halvings);
    if (!best || !preferred(best, split)) best = split;
    return split;
  };
  const step = (range.high - range.low) / DISTANCES;
  for (let i = 0; i <= DISTANCES; i++) at(range.low + i * step);
  // Standard teeth are offered by name, so that no search misses them by a hair.
  for (const distance of [frame.unshifted.inner, frame.unshifted.outer])
    if (distance >= range.low && distance <= range.high) at(distance);
  const coarse = best!;
  if (!('trial' in coarse) && coarse.room < HOPELESS) return coarse;
  halvings = HALVINGS.fine;
  best = undefined;
  at(coarse.distance);
  const beside: [number, number] = [
    Math.max(range.low, coarse.distance - step),
    Math.min(range.high, coarse.distance + step),
  ];
  golden(beside, REFINEMENTS, at, preferred);
  return best!;
}

/** Choices before obstacles; the better choice, the obstacle that leaves more room. */
function preferred(a: Split, b: Split): boolean {
  if ('trial' in a) return !('trial' in b) || !better(b, a);
  return !('trial' in b) && a.room >= b.room;
}

/** Balanced before unbalanced, then less effort; unbalanced ones by how unequal they are. */
function better(a: Choice, b: Choice): boolean {
  const [left, right] = [Math.round(a.unequal / EQUAL), Math.round(b.unequal / EQUAL)];
  return left === right ? a.effort < b.effort : left < right;
}

/** The admissible planet shift at one centre distance that is nearest to balance. */
function bestSplit(
  frame: Frame,
  at: Distance,
  balance: Balance,
  wanted: Wanted,
  bounds: Bounds,
  halvings: number,
): Split {
  const distance = at.centreDistance;
  const { low, high } = splitRange(frame, at, bounds);
  if (!(low <= high)) return { distance, limit: 'undercut', room: high - low };
  const excess = (planet: number) => imbalance(frame, trialOf(frame, at, planet), balance);
  const ideal = root(excess, low, high, halvings);
  const roomAt = (planet: number) => tightest(frame, trialOf(frame, at, planet), wanted, bounds);
  const there = roomAt(ideal);
  let inside = ideal;
  const balanced = there.room >= MARGIN && excess(low) <= 0 && excess(high) >= 0;
  if (there.room < MARGIN) {
    // Each limit tightens one way along the split, so the least room has a single peak.
    const most = golden(
      [low, high],
      SPLITS,
      (planet) => ({ planet, ...roomAt(planet) }),
      (a, b) => a.room >= b.room,
      ({ room }) => room >= MARGIN,
    );
    if (most.room < MARGIN) {
      const { limit, room } = most.room > there.room ? most : there;
      return { distance, limit, room };
    }
    inside = most.planet;
    let outside = ideal;
    for (let i = 0; i < halvings; i++) {
      const middle = (inside + outside) / 2;
      if (roomAt(middle).room < MARGIN) outside = middle;
      else inside = middle;
    }
  }
  const trial = trialOf(frame, at, inside);
  return {
    distance,
    trial,
    unequal: balanced ? 0 : Math.abs(excess(inside)),
    effort: trial.sun ** 2 + trial.planet ** 2 + trial.ring ** 2,
  };
}

/** Planet shifts that the given shifts, undercut and ranges leave at one centre distance. */
function splitRange(frame: Frame, at: Distance, { given = {} }: Bounds): { low: number; high: number } {
  const [inner, outer] = [at.inner.shifts, at.outer.shifts];
  const fixed = given.planet ?? (given.sun === undefined ? undefined : inner - given.sun);
  const only = fixed ?? (given.ring === undefined ? undefined : given.ring - outer);
  if (only !== undefined) return { low: only, high: only };
  const [least, most] = SHIFT_RANGE.gear;
  const leastOf = (part: 'sun' | 'planet') => Math.max(least, frame[part].leastShift + UNDERCUT_SPARE);
  return {
    low: Math.max(leastOf('planet'), inner - most, SHIFT_RANGE.ring[0] - outer),
    high: Math.min(most, inner - leastOf('sun'), SHIFT_RANGE.ring[1] - outer),
  };
}

/** Grows with the planet's share of the shift; zero where sun and planet are balanced. */
function imbalance(frame: Frame, trial: Trial, balance: Balance): number {
  switch (balance) {
    case 'sliding': {
      const { sun, planet } = slidingOf(frame, trial);
      // Contact down to the base circle slides without bound; any large figure orders it.
      return Math.max(-UNBOUNDED, planet) - Math.max(-UNBOUNDED, sun);
    }
    case 'root':
      return rootThicknessOf(frame, trial, 'planet') - rootThicknessOf(frame, trial, 'sun');
    case 'none':
      return trial.planet;
  }
}

const UNBOUNDED = 1e6;

/** Zero of a growing function between `low` and `high`, or the end nearer to it. */
function root(grows: (x: number) => number, low: number, high: number, halvings: number): number {
  if (grows(low) >= 0) return low;
  if (grows(high) <= 0) return high;
  let [below, above] = [low, high];
  for (let i = 0; i < halvings; i++) {
    const middle = (below + above) / 2;
    if (grows(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
