import { type Distance, distanceAt, distanceFor } from './distance.js';
import type { Frame } from './frame.js';
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
export type Found = { trial: Trial } | { limit: ShiftLimit; room: number };

interface Choice {
  trial: Trial;
  /** How unequal sun and planet are left, by the criterion; 0 when balanced. */
  unequal: number;
  /** Sum of the squares of all three shifts. */
  effort: number;
}

/** Steps of the coarse search along the centre distance, and across the planet shift where balance is not allowed. */
const DISTANCES = 28;
const SPLITS = 10;
/** Halvings of an interval about half a module wide: far below what any printer resolves. */
const HALVINGS = 30;
/** Golden-section steps between two coarse centre distances. */
const REFINEMENTS = 24;
/** Shift sums that are looked through. */
const SUMS = { inner: 2.2, outer: 2.5 };
/** Room that every limit keeps, so that rounding of the shifts found does not pass it. */
const MARGIN = 1e-4;
/** Criteria closer than this are equal. */
const EQUAL = 1e-6;

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
  let obstacle: { limit: ShiftLimit; room: number } = { limit: 'range', room: Number.NEGATIVE_INFINITY };
  const at = (distance: number): Choice | undefined => {
    const found = bestSplit(frame, distanceAt(frame, distance), balance, wanted, bounds);
    if ('trial' in found) return found;
    if (found.room > obstacle.room) obstacle = found;
    return undefined;
  };
  const step = (range.high - range.low) / DISTANCES;
  let best: Choice | undefined;
  const offer = (choice: Choice | undefined) => {
    if (choice && (!best || better(choice, best))) best = choice;
  };
  for (let i = 0; i <= DISTANCES; i++) offer(at(range.low + i * step));
  // Standard teeth are offered by name, so that no search misses them by a hair.
  for (const distance of [frame.unshifted.inner, frame.unshifted.outer])
    if (distance >= range.low && distance <= range.high) offer(at(distance));
  if (!best) return obstacle;
  const middle = best.trial.at.centreDistance;
  let [low, high] = [Math.max(range.low, middle - step), Math.min(range.high, middle + step)];
  const cut = (Math.sqrt(5) - 1) / 2;
  let [one, two] = [high - cut * (high - low), low + cut * (high - low)];
  let [first, second] = [at(one), at(two)];
  for (let i = 0; i < REFINEMENTS; i++) {
    offer(first);
    offer(second);
    // Where both fail, the admissible middle stays inside.
    const keepLow = first && second ? !better(second, first) : first ? true : second ? false : one > middle;
    if (keepLow) {
      [high, two, second] = [two, one, first];
      one = high - cut * (high - low);
      first = at(one);
    } else {
      [low, one, first] = [one, two, second];
      two = low + cut * (high - low);
      second = at(two);
    }
  }
  return { trial: best.trial };
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
): Choice | { limit: ShiftLimit; room: number } {
  const { low, high } = splitRange(frame, at, bounds);
  if (!(low <= high)) return { limit: 'undercut', room: high - low };
  const excess = (planet: number) => imbalance(frame, trialOf(frame, at, planet), balance);
  const ideal = root(excess, low, high);
  const roomAt = (planet: number) => tightest(frame, trialOf(frame, at, planet), wanted, bounds);
  let obstacle = roomAt(ideal);
  let inside = ideal;
  if (obstacle.room < MARGIN) {
    let nearest: number | undefined;
    for (let i = 0; i <= SPLITS; i++) {
      const planet = low + ((high - low) * i) / SPLITS;
      const found = roomAt(planet);
      if (found.room < MARGIN) {
        if (found.room > obstacle.room) obstacle = found;
      } else if (nearest === undefined || Math.abs(planet - ideal) < Math.abs(nearest - ideal))
        nearest = planet;
    }
    if (nearest === undefined) return obstacle;
    let outside = ideal;
    inside = nearest;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (inside + outside) / 2;
      if (roomAt(middle).room < MARGIN) outside = middle;
      else inside = middle;
    }
  }
  const trial = trialOf(frame, at, inside);
  return {
    trial,
    unequal: Math.abs(imbalance(frame, trial, balance)),
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
function root(grows: (x: number) => number, low: number, high: number): number {
  if (grows(low) >= 0) return low;
  if (grows(high) <= 0) return high;
  let [below, above] = [low, high];
  for (let i = 0; i < HALVINGS + 10; i++) {
    const middle = (below + above) / 2;
    if (grows(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
