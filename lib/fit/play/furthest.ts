import { type Acting, actingOn, gapOf, slopesOf } from './acting.js';
import { climb } from './climb.js';
import type { Contact, Feature, Motion } from './contact.js';
import { maximise } from './linearProgram.js';

/** The largest motion in one direction. */
export interface Furthest {
  /** Of the objective: mm or radians; Infinity when nothing holds. */
  value: number;
  /** The motion of every loose part that reaches it, by name; of no meaning when nothing holds. */
  motions: Record<string, Motion>;
  /** What holds it there. */
  heldBy: Feature[];
}

/** What is asked to be as large as possible: for each part, a weight for each number of its motion. */
export type Direction = Record<string, Motion>;

/**
 * Steps that follow the curvature of the gaps and bring in contacts; most directions take three to five, and what is left
 * over after the last is taken off by `withinGaps`. */
const STEPS = 16;
/** With several loose parts every so many contacts are in the first program; others come in as they are run into. */
const EVERY = 3;
/** Change, in mm, below which a step has arrived, and overlap that is none. */
const ARRIVED = 5e-4;
/** A motion that gets this far, in mm, is not held: rounding alone is left of what would hold it. */
const FREE = 1e3;

/**
 * How far parts can move in a direction, all loose parts helping, the others held.
 * The gaps are linear in small motions, so the motions allowed form a polytope and the furthest one is the answer of
 * a linear program; the gaps are then taken at that motion and the program is solved again, until it stays.
 * @param loose names of the loose parts
 * @param gauge numbers of motions kept at 0, as [part, 0 … 5]: for a motion of the whole train that is free
 */
export function furthest(
  direction: Direction,
  contacts: readonly Contact[],
  loose: readonly string[],
  gauge: readonly (readonly [string, number])[] = [],
): Furthest {
  const place = new Map<string, number>(loose.map((name, i) => [name, 6 * i]));
  const size = 6 * loose.length;
  const fixed = gauge.map(([name, number]) => place.get(name)! + number);
  const weights = weightsOf(direction, loose, fixed);
  const acting = actingOn(contacts, place);
  const smooth = acting.filter(isSmooth);
  let working = loose.length === 1 ? smooth : smooth.filter((_, i) => i % EVERY === 0);
  const known = new Set(working);
  const cuts: Cut[] = [];
  // Six zeros at the end are the motion of all parts that are held.
  const point = new Float64Array(size + 6);
  let value = 0;
  let holding: Acting[] = [];
  let settled = false;
  for (let step = 0; step < STEPS; step++) {
    const { rows, bounds } = programAt(point, working, cuts, fixed);
    const best = maximise(weights, rows, bounds);
    if (!(best.value < FREE)) {
      if (working.length === smooth.length)
        return { value: Number.POSITIVE_INFINITY, motions: {}, heldBy: [] };
      working = smooth;
      for (const one of smooth) known.add(one);
      continue;
    }
    const change = largestChange(point, best.point);
    value = best.value;
    holding = best.heldBy.map((i) => (i < working.length ? working[i] : cuts[i - working.length].by));
    point.set(best.point);
    const more = overlapping(acting, known, point);
    settled = more.length === 0;
    if (settled && change < ARRIVED) break;
    working = working.concat(more.filter(isSmooth));
    bringIn(more, known, cuts, point, fixed);
  }
  // Where nothing was run into, only what the program knew is left to ask.
  const share = withinGaps(acting, settled ? [...known] : acting, point);
  const made = scaled(point, share, point);
  // Lips bend the gaps so much that what was scaled back falls short: from there it goes on.
  const short = loose.length === 1 && share < 1 && acting.some(({ contact }) => contact.feature === 'lips');
  return {
    value: short ? climb(weights, acting, made) : value * share,
    motions: Object.fromEntries(loose.map((name) => [name, motionAt(made, place.get(name)!)])),
    heldBy: [...new Set(holding.map(({ contact }) => contact.feature))].sort(),
  };
}

function weightsOf(direction: Direction, loose: readonly string[], fixed: readonly number[]): Float64Array {
  const weights = new Float64Array(6 * loose.length);
  loose.forEach((name, i) => {
    weights.set(direction[name] ?? [], 6 * i);
  });
  for (const at of fixed) weights[at] = 0;
  return weights;
}

/** Contacts that were run into become known, those with corners as cuts where the motion first touches them. */
function bringIn(
  more: readonly Acting[],
  known: Set<Acting>,
  cuts: Cut[],
  point: Float64Array,
  fixed: readonly number[],
): void {
  for (const one of more) {
    if (one.contact.smooth) known.add(one);
    else cuts.push(cutAt(one, touching(one, point), fixed));
  }
}

/**
 * The largest share of a motion, to a five-hundredth, up to which no contact is run into.
 * @param doubtful those that the whole motion may run into
 */
function withinGaps(acting: readonly Acting[], doubtful: readonly Acting[], point: Float64Array): number {
  if (isClear(doubtful, point)) return 1;
  const part = new Float64Array(point.length);
  let low = 0;
  let high = 1;
  while (high - low > 2e-3) {
    const middle = (low + high) / 2;
    if (isClear(acting, scaled(point, middle, part))) low = middle;
    else high = middle;
  }
  return low;
}

function isSmooth({ contact }: Acting): boolean {
  return contact.smooth;
}

function isClear(contacts: readonly Acting[], point: Float64Array): boolean {
  for (const one of contacts) if (gapOf(one, point) < -2 * ARRIVED) return false;
  return true;
}

/** Where on the way from rest to a point a contact is first touched, to a thousandth: there its slope is the true one. */
function touching(one: Acting, point: Float64Array): Float64Array {
  const part = new Float64Array(point.length);
  let low = 0;
  let high = 1;
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (gapOf(one, scaled(point, middle, part)) < 0) high = middle;
    else low = middle;
  }
  return scaled(point, low, part);
}

function scaled(point: Float64Array, share: number, into: Float64Array): Float64Array {
  for (let i = 0; i < point.length; i++) into[i] = point[i] * share;
  return into;
}

/** One contact about a point: gap(x) + slopes · (motion − x) ≥ 0, written as row · motion ≤ bound. */
interface Cut {
  by: Acting;
  row: Float64Array;
  bound: number;
}

function cutAt(by: Acting, point: Float64Array, fixed: readonly number[]): Cut {
  const row = new Float64Array(point.length - 6);
  return { by, bound: writeCut(by, point, fixed, row, 0, new Float64Array(12)), row };
}

/** The program about a point: rows of the working contacts, then those of the cuts found earlier. */
function programAt(
  point: Float64Array,
  working: readonly Acting[],
  cuts: readonly Cut[],
  fixed: readonly number[],
): { rows: Float64Array; bounds: Float64Array } {
  const size = point.length - 6;
  const rows = new Float64Array((working.length + cuts.length) * size);
  const bounds = new Float64Array(working.length + cuts.length);
  const slopes = new Float64Array(12);
  for (let i = 0; i < working.length; i++)
    bounds[i] = writeCut(working[i], point, fixed, rows, i * size, slopes);
  for (let i = 0; i < cuts.length; i++) {
    rows.set(cuts[i].row, (working.length + i) * size);
    bounds[working.length + i] = cuts[i].bound;
  }
  return { rows, bounds };
}

/** Writes the row of a cut, all zeros before, from `at` on. @param slopes room for twelve @returns its bound */
function writeCut(
  one: Acting,
  point: Float64Array,
  fixed: readonly number[],
  rows: Float64Array,
  at: number,
  slopes: Float64Array,
): number {
  const size = point.length - 6;
  let bound = slopesOf(one, point, slopes);
  for (let end = 0; end < 2; end++) {
    const start = end === 0 ? one.first : one.second;
    if (start === size) continue;
    for (let k = 0; k < 6; k++) {
      bound -= slopes[6 * end + k] * point[start + k];
      rows[at + start + k] = -slopes[6 * end + k];
    }
  }
  for (const number of fixed) rows[at + number] = 0;
  // Standing still is always allowed; only rounding and curvature could say otherwise.
  return Math.max(0, bound);
}

/** Contacts that the motion runs into though the program did not know, the worst of each pair of parts and feature. */
function overlapping(acting: readonly Acting[], known: ReadonlySet<Acting>, point: Float64Array): Acting[] {
  const worst = new Map<string, { one: Acting; gap: number }>();
  for (const one of acting) {
    if (known.has(one)) continue;
    const gap = gapOf(one, point);
    if (gap >= -ARRIVED) continue;
    const { between, feature, z } = one.contact;
    const key = `${between} ${feature} ${Math.round(z)}`;
    if (gap < (worst.get(key)?.gap ?? 0)) worst.set(key, { one, gap });
  }
  return [...worst.values()].map(({ one }) => one);
}

function motionAt(point: Float64Array, start: number): Motion {
  return [...point.subarray(start, start + 6)] as unknown as Motion;
}

/** A radian counts as ten millimetres: about what it moves a tooth by. */
function largestChange(point: Float64Array, next: Float64Array): number {
  let most = 0;
  for (let i = 0; i < next.length; i++)
    most = Math.max(most, Math.abs(point[i] - next[i]) * (i % 6 < 3 ? 1 : 10));
  return most;
}
