import { ranges } from '../../spec/ranges.js';
import { type Admissible, admissible } from './admissible.js';
import { bracket } from './bracket.js';
import type { Distance } from './distance.js';
import type { Frame } from './frame.js';
import { golden } from './golden.js';
import { type Bounds, leastShiftOf, roomsOf, type ShiftLimit, tightest, type Wanted } from './limits.js';
import { rootThicknessOf, slidingLean, slidingOf, type Trial, trialOf } from './trial.js';

/** Steps of the search for room across the planet shift. */
const SPLITS = 14;
/** Room that every limit keeps, so that rounding of the shifts found does not pass it. */
const MARGIN = 1e-4;

/** By what sun and planet share their shift; see `solveShifts`. */
export type Balance = 'sliding' | 'root' | 'none';

/** The limit that leaves least room, and how much; negative where it is passed. */
export interface Room {
  limit: ShiftLimit;
  room: number;
  /** The shifts that leave it, where there are any within reach. */
  nearest?: Trial;
}

/** What one centre distance comes to. */
export type Split = (Choice | Room) & { distance: number };

/** Shifts that keep every limit. */
export interface Choice {
  trial: Trial;
  /** How unequal sun and planet are left, by the criterion; 0 when balanced. */
  unequal: number;
  /** Sum of the squares of all three shifts. */
  effort: number;
}

/** What is asked of every centre distance alike. */
export interface Asked {
  frame: Frame;
  balance: Balance;
  wanted: Wanted;
  bounds: Bounds;
}

/** The planet shift nearest to balance at one centre distance, whether allowed or not. */
export interface Balanced {
  at: Distance;
  /** Planet shifts that are within reach; `low` > `high` where none is. */
  range: { low: number; high: number };
  /** Undefined where none is within reach. */
  trial?: Trial;
  balanced: boolean;
  limit: ShiftLimit;
  room: number;
}

/** The balanced split at one centre distance, to within `width`, and the room it leaves. */
export function balancedAt({ frame, balance, wanted, bounds }: Asked, at: Distance, width: number): Balanced {
  const range = splitRange(frame, at, bounds);
  const { low, high } = range;
  if (!(low <= high)) return { at, range, balanced: false, limit: 'undercut', room: high - low };
  const ideal = balancedSplit((planet) => lean(frame, at, planet, balance), range, width);
  const trial = trialOf(frame, at, ideal.planet);
  return { at, range, trial, balanced: ideal.balanced, ...tightest(frame, trial, wanted, bounds) };
}

/** The balanced split as a choice, where it is one. */
export function choiceAt(asked: Asked, { at, trial, balanced, room }: Balanced): Split | undefined {
  if (!trial || !balanced || room < MARGIN) return undefined;
  return { distance: at.centreDistance, ...choiceOf(asked, trial, true) };
}

/** The balanced split as an obstacle. */
export function roomAt({ at, balanced, limit, room }: Balanced): Split {
  return { distance: at.centreDistance, limit, room: balanced ? room : Math.min(room, UNBALANCED) };
}

function choiceOf({ frame, balance }: Asked, trial: Trial, balanced: boolean): Choice {
  return {
    trial,
    unequal: balanced ? 0 : Math.abs(imbalance(frame, trial, balance)),
    effort: trial.sun ** 2 + trial.planet ** 2 + trial.ring ** 2,
  };
}

/** The admissible planet shift at one centre distance that is nearest to balance. */
export function nearestSplit(asked: Asked, found: Balanced, width: number): Split {
  const { at, range, trial, room } = found;
  const distance = at.centreDistance;
  if (!trial) return { distance, limit: found.limit, room };
  if (room >= MARGIN) return { distance, ...choiceOf(asked, trial, found.balanced) };
  const nearest = nearestAllowed(asked, at, trial.planet, [range.low, range.high], width);
  if ('room' in nearest) {
    const { limit, room: left, x } = nearest;
    return { distance, limit, room: left, nearest: trialOf(asked.frame, at, x) };
  }
  return { distance, ...choiceOf(asked, trialOf(asked.frame, at, nearest.x), false) };
}

/** The planet shift nearest to the ideal one that keeps every limit, or the one that leaves most room. */
function nearestAllowed(
  { frame, wanted, bounds }: Asked,
  at: Distance,
  ideal: number,
  range: [number, number],
  width: number,
): Admissible {
  const rooms = (planet: number) => roomsOf(frame, trialOf(frame, at, planet), wanted, bounds);
  const found = admissible(rooms, ideal, range, MARGIN, width);
  if (found) return found;
  const roomy = (x: number) => ({ x, ...tightest(frame, trialOf(frame, at, x), wanted, bounds) });
  // Each limit tightens one way along the split, so the least room has a single peak.
  const most = golden(
    range,
    SPLITS,
    roomy,
    (a, b) => a.room >= b.room,
    ({ room }) => room >= MARGIN,
  );
  if (most.room < MARGIN) return most;
  const beyond = (x: number) => roomy(x).room - MARGIN;
  const x = bracket(beyond, [most.x, most.room - MARGIN], [ideal, beyond(ideal)], width).over;
  return { x };
}

/** Planet shifts that the given shifts, undercut and ranges leave at one centre distance. */
function splitRange(frame: Frame, at: Distance, { given = {} }: Bounds): { low: number; high: number } {
  const [inner, outer] = [at.inner.shifts, at.outer.shifts];
  const fixed = given.planet ?? (given.sun === undefined ? undefined : inner - given.sun);
  const only = fixed ?? (given.ring === undefined ? undefined : given.ring - outer);
  if (only !== undefined) return { low: only, high: only };
  const most = ranges.shift[1];
  return {
    low: Math.max(leastShiftOf(frame, 'planet'), inner - most, ranges.ringShift[0] - outer),
    high: Math.min(most, inner - leastShiftOf(frame, 'sun'), ranges.ringShift[1] - outer),
  };
}

/** How much more the planet has than the sun of what is to be balanced. */
function imbalance(frame: Frame, trial: Trial, balance: Balance): number {
  if (balance !== 'sliding') return lean(frame, trial.at, trial.planet, balance);
  const { sun, planet } = slidingOf(frame, trial);
  // Contact down to the base circle slides without bound; any large figure orders it.
  return Math.max(-UNBOUNDED, planet) - Math.max(-UNBOUNDED, sun);
}

/** Grows with the planet's share of the shift; zero where sun and planet are balanced, and of the sign of `imbalance`. */
function lean(frame: Frame, at: Distance, planet: number, balance: Balance): number {
  switch (balance) {
    case 'sliding':
      return slidingLean(frame, at, planet);
    case 'root': {
      const trial = trialOf(frame, at, planet);
      return rootThicknessOf(frame, trial, 'planet') - rootThicknessOf(frame, trial, 'sun');
    }
    case 'none':
      return planet;
  }
}

const UNBOUNDED = 1e6;
/** Room of a distance at which no balance is in reach: less than any limit leaves. */
const UNBALANCED = -1e3;

/** Zero of a growing function between `low` and `high`, or the end nearer to it. */
function balancedSplit(
  grows: (planet: number) => number,
  { low, high }: { low: number; high: number },
  width: number,
): { planet: number; balanced: boolean } {
  const [atLow, atHigh] = [grows(low), grows(high)];
  if (atLow >= 0) return { planet: low, balanced: atLow === 0 };
  if (atHigh <= 0) return { planet: high, balanced: atHigh === 0 };
  const { over, under } = bracket(grows, [low, atLow], [high, atHigh], width);
  return { planet: (over + under) / 2, balanced: true };
}
