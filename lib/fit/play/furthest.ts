import { AT_REST, type Contact, type Feature, type Motion, type Reading } from './contact.js';
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
  const fixed = new Set(gauge.map(([name, number]) => place.get(name)! + number));
  const size = 6 * loose.length;
  const objective = new Float64Array(size);
  for (const name of loose) objective.set(direction[name] ?? AT_REST, place.get(name));
  const acting = contacts.filter(({ between }) => between.some((name) => place.has(name)));
  const smooth = acting.filter((contact) => contact.smooth);
  const weights = objective.map((weight, i) => (fixed.has(i) ? 0 : weight));
  let working = loose.length === 1 ? smooth : smooth.filter((_, i) => i % EVERY === 0);
  const cuts: Cut[] = [];
  let point = new Float64Array(size);
  let value = 0;
  let holding: Contact[] = [];
  for (let step = 0; step < STEPS; step++) {
    const lines = [...working.map((contact) => cutAt(contact, place, point, fixed)), ...cuts];
    const rows = new Float64Array(lines.length * size);
    lines.forEach(({ row }, i) => {
      rows.set(row, i * size);
    });
    const best = maximise(
      weights,
      rows,
      lines.map(({ bound }) => bound),
    );
    if (!(best.value < FREE)) {
      if (working.length === smooth.length)
        return { value: Number.POSITIVE_INFINITY, motions: {}, heldBy: [] };
      working = smooth;
      continue;
    }
    const change = largestChange(point, best.point);
    value = best.value;
    holding = best.heldBy.map((i) => lines[i].contact);
    point = Float64Array.from(best.point);
    const more = overlapping(acting, working, place, point);
    if (change < ARRIVED && more.length === 0) break;
    working = [...working, ...more.filter((contact) => contact.smooth)];
    for (const contact of more)
      if (!contact.smooth) cuts.push(cutAt(contact, place, touching(contact, place, point), fixed));
  }
  const share = withinGaps(acting, place, point);
  return {
    value: value * share,
    motions: Object.fromEntries(
      loose.map((name) => [name, motionAt(scaled(point, share), place.get(name)!)]),
    ),
    heldBy: [...new Set(holding.map(({ feature }) => feature))].sort(),
  };
}

/** The largest share of a motion, to a five-hundredth, up to which no contact is run into. */
function withinGaps(
  contacts: readonly Contact[],
  place: ReadonlyMap<string, number>,
  point: Float64Array,
): number {
  const clear = (share: number) => {
    const part = scaled(point, share);
    return contacts.every((contact) => readAt(contact, place, part).gap >= -2 * ARRIVED);
  };
  if (clear(1)) return 1;
  let [low, high] = [0, 1];
  while (high - low > 2e-3) {
    const middle = (low + high) / 2;
    if (clear(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** One contact about a point: gap(x) + slopes · (motion − x) ≥ 0, written as row · motion ≤ bound. */
interface Cut {
  contact: Contact;
  row: Float64Array;
  bound: number;
}

/** Where on the way from rest to a point a contact is first touched, to a thousandth: there its slope is the true one. */
function touching(contact: Contact, place: ReadonlyMap<string, number>, point: Float64Array): Float64Array {
  let [low, high] = [0, 1];
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (readAt(contact, place, scaled(point, middle)).gap < 0) high = middle;
    else low = middle;
  }
  return scaled(point, low);
}

function scaled(point: Float64Array, share: number): Float64Array {
  return point.map((number) => number * share);
}

function cutAt(
  contact: Contact,
  place: ReadonlyMap<string, number>,
  point: Float64Array,
  fixed: ReadonlySet<number>,
): Cut {
  const { gap, slopes } = readAt(contact, place, point);
  const row = new Float64Array(point.length);
  let bound = gap;
  contact.between.forEach((name, end) => {
    const start = place.get(name);
    if (start === undefined) return;
    for (let k = 0; k < 6; k++) {
      bound -= slopes[end][k] * point[start + k];
      if (!fixed.has(start + k)) row[start + k] = -slopes[end][k];
    }
  });
  // Standing still is always allowed; only rounding and curvature could say otherwise.
  return { contact, row, bound: Math.max(0, bound) };
}

/** Contacts that the motion runs into though the program did not know, the worst of each pair of parts and feature. */
function overlapping(
  contacts: readonly Contact[],
  working: readonly Contact[],
  place: ReadonlyMap<string, number>,
  point: Float64Array,
): Contact[] {
  const within = new Set(working);
  const worst = new Map<string, { contact: Contact; gap: number }>();
  for (const contact of contacts) {
    if (within.has(contact)) continue;
    const { gap } = readAt(contact, place, point);
    const key = `${contact.between} ${contact.feature} ${Math.round(contact.z)}`;
    if (gap < -ARRIVED && gap < (worst.get(key)?.gap ?? 0)) worst.set(key, { contact, gap });
  }
  return [...worst.values()].map(({ contact }) => contact);
}

function readAt(contact: Contact, place: ReadonlyMap<string, number>, point: Float64Array): Reading {
  const [first, second] = contact.between.map((name) => {
    const start = place.get(name);
    return start === undefined ? AT_REST : motionAt(point, start);
  });
  return contact.read(first, second);
}

function motionAt(point: Float64Array, start: number): Motion {
  return [...point.subarray(start, start + 6)] as unknown as Motion;
}

/** A radian counts as ten millimetres: about what it moves a tooth by. */
function largestChange(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, from, i) => Math.max(most, Math.abs(from - b[i]) * (i % 6 < 3 ? 1 : 10)), 0);
}
