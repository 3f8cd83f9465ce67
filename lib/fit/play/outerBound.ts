import { type Acting, actingOn, gapOf, slopesOf } from './acting.js';
import type { Contact, Motion } from './contact.js';
import { maximise } from './linearProgram.js';

/** Numbers of one part's motion. */
const SIZE = 6;
/** Boxes in which remainders are taken, and how many more until nothing reaches the edge of the first. */
const BOXES = 40;
const BOXES_TO_CLOSE = 240;
/** How much wider than what the tangents at rest allow the first box is. */
const WIDER = 1.6;
/**
 * How much a gap bends with each number, for choosing which to halve: a shift by its square over some ten millimetres of
 * radius, a turn by its square times as much; along the axis hardly at all.
 */
const WEIGHTS = [1, 1, 0.3, 10, 10, 10] as const;
/** This near to the edge of the first box, as a share of it, is on it. */
const EDGE = 1e-6;
/** Farther than this, mm, nothing is held. */
const FREE = 1e2;

/** A box of motions: its middle and half its width, and the most that the objective reaches in it. */
interface Box {
  centre: Float64Array;
  half: Float64Array;
  most: number;
  /** Whether a motion in it may lie on the edge of the first box, which something may leave there. */
  onEdge: boolean;
}

/** Tangents of gaps at the centre of a box: gap(x) ≤ gap + remainder + slopes · (x − centre) all over it. */
interface Tangents {
  rows: Float64Array;
  bounds: Float64Array;
}

/**
 * What one loose part cannot exceed in a direction, all others held: never less than its furthest motion, unlike what
 * `furthest` finds. Infinity where the contacts do not bound it, or not so that it can be shown.
 *
 * No motion that is reached from rest may make a gap negative. Over a box of motions every gap lies below its tangent at
 * the centre plus the most that it bends away from it there; so those lines hold all motions allowed in the box, and
 * it shrinks to them. Boxes are divided again and again: first those that reach the edge of the first box, until nothing
 * allowed lies there and no way leads out of it, then those that reach farthest in the direction. Remainders are taken at the 729 places where every number is at an end or in the
 * middle of its range: gaps are nearly quadratic, and such a function bends farthest at one of them.
 * @param contacts that the motion cannot get past: conditions that hold wherever the part goes
 */
export function outerBound(direction: Motion, contacts: readonly Contact[], part: string): number {
  const acting = actingOn(
    contacts.filter(({ smooth }) => smooth),
    new Map([[part, 0]]),
  );
  const rest = new Float64Array(SIZE);
  const few = holdingAnywhere(tangents(acting, rest, null), direction).map((i) => acting[i]);
  const edge = firstEdge(few);
  return edge ? divided(few, direction, edge) : Number.POSITIVE_INFINITY;
}

/** The contacts that hold the part in some direction; others only slow the search down. */
function holdingAnywhere(program: Tangents, direction: Motion): number[] {
  const found = new Set(maximise(direction, program.rows, program.bounds).heldBy);
  for (const way of ways()) for (const i of maximise(way, program.rows, program.bounds).heldBy) found.add(i);
  return [...found];
}

function ways(): Float64Array[] {
  return Array.from({ length: 2 * SIZE }, (_, i) => {
    const way = new Float64Array(SIZE);
    way[i >> 1] = i % 2 ? -1 : 1;
    return way;
  });
}

/** Half the width of the first box about rest; null where some number of the motion is not held at all. */
function firstEdge(acting: readonly Acting[]): Float64Array | null {
  const { rows, bounds } = tangents(acting, new Float64Array(SIZE), null);
  const reach = ways().map((way) => maximise(way, rows, bounds).value);
  if (!reach.every((end) => end < FREE)) return null;
  return Float64Array.from({ length: SIZE }, (_, k) => WIDER * Math.max(reach[2 * k], reach[2 * k + 1]));
}

function divided(acting: readonly Acting[], direction: Motion, edge: Float64Array): number {
  const whole = { centre: new Float64Array(SIZE), half: edge };
  const boxes = [shrunk(acting, direction, whole, edge)].filter((box) => box !== null);
  for (let made = 1; made < BOXES_TO_CLOSE && boxes.length; made += 2) {
    boxes.sort((a, b) => Number(b.onEdge) - Number(a.onEdge) || b.most - a.most);
    if (made >= BOXES && !boxes[0].onEdge) break;
    const [{ centre, half, most }] = boxes.splice(0, 1);
    const widest = half.reduce(
      (best, _, k) => (half[k] * WEIGHTS[k] > half[best] * WEIGHTS[best] ? k : best),
      0,
    );
    for (const side of [-1, 1]) {
      const part = { centre: centre.slice(), half: half.slice() };
      part.half[widest] /= 2;
      part.centre[widest] += side * part.half[widest];
      const box = shrunk(acting, direction, part, edge);
      if (box) boxes.push({ ...box, most: Math.min(most, box.most) });
    }
  }
  if (boxes.some(({ onEdge }) => onEdge)) return Number.POSITIVE_INFINITY;
  return Math.max(...boxes.map(({ most }) => most));
}

/** The least box around all motions that are allowed in a box; null where there is none. */
function shrunk(
  acting: readonly Acting[],
  direction: Motion,
  { centre, half }: Pick<Box, 'centre' | 'half'>,
  edge: Float64Array,
): Box | null {
  const program = withinBox(tangents(acting, centre, half), half);
  const most = program(direction);
  if (most === null) return null;
  const [low, high] = [new Float64Array(SIZE), new Float64Array(SIZE)];
  for (const [i, way] of ways().entries()) {
    const reach = program(way) ?? half[i >> 1];
    if (i % 2) low[i >> 1] = Math.max(-half[i >> 1], -reach);
    else high[i >> 1] = Math.min(half[i >> 1], reach);
  }
  const middle = centre.map((x, k) => x + (low[k] + high[k]) / 2);
  const onEdge = edge.some(
    (end, k) => centre[k] + high[k] > end * (1 - EDGE) || centre[k] + low[k] < -end * (1 - EDGE),
  );
  const offset = direction.reduce((sum, weight, k) => sum + weight * centre[k], 0);
  return { centre: middle, half: high.map((top, k) => (top - low[k]) / 2), most: most + offset, onEdge };
}

/**
 * The linear program in a box: how far a way leads from the centre, null where nothing in the box is allowed. The
 * centre itself may be forbidden: one more number, which must come to 1, brings such bounds in from 0.
 */
function withinBox({ rows, bounds }: Tangents, half: Float64Array) {
  const count = bounds.length;
  const last = count + 2 * SIZE;
  const wide = new Float64Array((last + 1) * (SIZE + 1));
  const limits = new Float64Array(last + 1);
  for (let i = 0; i < count; i++) {
    wide.set(rows.subarray(i * SIZE, (i + 1) * SIZE), i * (SIZE + 1));
    if (bounds[i] < 0) wide[i * (SIZE + 1) + SIZE] = -bounds[i];
    else limits[i] = bounds[i];
  }
  ways().forEach((way, i) => {
    wide.set(way, (count + i) * (SIZE + 1));
    limits[count + i] = half[i >> 1];
  });
  wide[last * (SIZE + 1) + SIZE] = 1;
  limits[last] = 1;
  return (way: ArrayLike<number>): number | null => {
    const { point } = maximise([...Array.from(way), FREE], wide, limits);
    if (point[SIZE] < 1 - 1e-6) return null;
    let reached = 0;
    for (let k = 0; k < SIZE; k++) reached += way[k] * point[k];
    return reached;
  };
}

/** @param half of the box [no remainders] */
function tangents(acting: readonly Acting[], centre: Float64Array, half: Float64Array | null): Tangents {
  const rows = new Float64Array(acting.length * SIZE);
  const bounds = new Float64Array(acting.length);
  const slopes = new Float64Array(2 * SIZE);
  // Six zeros at the end are the motion of all parts that are held.
  const point = new Float64Array(2 * SIZE);
  for (const [i, one] of acting.entries()) {
    point.set(centre);
    const gap = slopesOf(one, point, slopes);
    const own = slopes.subarray(one.first === 0 ? 0 : SIZE, one.first === 0 ? SIZE : 2 * SIZE);
    for (let k = 0; k < SIZE; k++) rows[i * SIZE + k] = -own[k];
    const bound = gap + (half ? remainder(one, point, gap, own, centre, half) : 0);
    bounds[i] = Number.isFinite(bound) ? bound : FREE;
  }
  // At rest every gap is open; only rounding could say otherwise.
  if (!centre.some((x) => x !== 0))
    for (let i = 0; i < bounds.length; i++) bounds[i] = Math.max(0, bounds[i]);
  return { rows, bounds };
}

/** The most by which a gap lies above its tangent anywhere in a box, mm. @param point room for a motion */
function remainder(
  one: Acting,
  point: Float64Array,
  gap: number,
  own: Float64Array,
  centre: Float64Array,
  half: Float64Array,
): number {
  let most = 0;
  for (let place = 0; place < 3 ** SIZE; place++) {
    let tangent = gap;
    for (let k = 0, rest = place; k < SIZE; k++, rest = Math.floor(rest / 3)) {
      const off = ((rest % 3) - 1) * half[k];
      point[k] = centre[k] + off;
      tangent += own[k] * off;
    }
    most = Math.max(most, gapOf(one, point) - tangent);
  }
  return most;
}
