import type { DistanceTree } from '../mesh/triangleTree.js';
import { imageOf, type ProfileTree, trianglesOf } from './profileTree.js';

/** How near two bodies come whatever the turn of either, and where. */
export interface ProfileDistance {
  /** mm; no more than `FINE` above what it is, and less than it is where searching on would take too long. */
  distance: number;
  /** The nearest points of the two bodies as they lie now, mm. */
  pointA: [number, number, number];
  pointB: [number, number, number];
}

/** Distances are found to within this, mm. */
export const FINE = 1e-3;

/** Pairs that are looked at before what is sure so far is taken for the distance: a second or two. */
const MOST_LOOKS = 300_000;

/** What is known while searching: the least distance so far, and the points it was found at. */
interface Found {
  least: number;
  points: Float64Array;
}

/**
 * The least distance of two bodies over all turns of each about its own axis: with one axis that is the distance of
 * their images in the half plane (min over R of |p − R q| is hypot(r_p − r_q, z_p − z_q)); with axes `apart` from each
 * other it is that of two solids of revolution; with a body that slides, that of one from a straight extrusion. Exact
 * for bodies whose turns go through all combinations, a lower bound for others. Pairs of triangles whose images are no
 * farther apart than the least found are halved until the bound and a pair of points agree.
 * @param b may be one that slides
 * @param apart distance of the axes, mm; not asked where b slides
 * @param within distances of interest, mm; null where there is none below
 */
export function profileDistance(
  a: ProfileTree,
  b: ProfileTree,
  apart: number,
  within: number,
): ProfileDistance | null {
  const found: Found = { least: within, points: new Float64Array(6) };
  const axes = b.about === 'slide' ? Number.POSITIVE_INFINITY : apart;
  search(a, b, axes, found);
  if (found.least >= within) return null;
  const [p, q] = [placeOf(found.points, 0, a.about), placeOf(found.points, 3, b.about)];
  return { distance: found.least < FINE ? 0 : found.least, pointA: p, pointB: q };
}

/** Whether two bodies stay farther apart than `within` whatever their turns, as far as the boxes of their leaves tell. */
export function farApart(
  a: DistanceTree,
  aboutA: ProfileTree['about'],
  b: DistanceTree,
  aboutB: ProfileTree['about'],
  within: number,
): boolean {
  if (aboutA === 'slide' || aboutB === 'slide') return false;
  const apart = Math.hypot(aboutA[0] - aboutB[0], aboutA[1] - aboutB[1]);
  return boxesApart(outlineOf(a, aboutA), 0, outlineOf(b, aboutB), 0, apart) > within;
}

/** A box around the image of a whole body. */
function outlineOf({ boxes, firstLeaf }: DistanceTree, [x, y]: readonly [number, number]): Float64Array {
  const outline = Float64Array.of(Infinity, boxes[2], 0, boxes[5]);
  for (let at = 6 * firstLeaf; at < boxes.length; at += 6) {
    const [x0, y0, x1, y1] = [boxes[at] - x, boxes[at + 1] - y, boxes[at + 3] - x, boxes[at + 4] - y];
    outline[0] = Math.min(outline[0], lengthOf(Math.max(0, x0, -x1), Math.max(0, y0, -y1)));
    outline[2] = Math.max(outline[2], lengthOf(Math.max(-x0, x1), Math.max(-y0, y1)));
  }
  return outline;
}

function lengthOf(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

function placeOf(points: Float64Array, at: number, about: ProfileTree['about']): [number, number, number] {
  const [x, y] = about === 'slide' ? [0, 0] : about;
  return [points[at] + x, points[at + 1] + y, points[at + 2]];
}

/**
 * Distance of two circles about axes `apart` from each other, whose radii lie in given ranges, seen along the axes; with
 * axes infinitely far apart, that of a circle about the origin from a line y = b.
 */
function across(a0: number, a1: number, b0: number, b1: number, apart: number): number {
  if (apart === Number.POSITIVE_INFINITY) return Math.max(0, b0 - a1, -b1 - a1);
  return Math.max(0, apart - a1 - b1, a0 - b1 - apart, b0 - a1 - apart);
}

function boxesApart(a: Float64Array, i: number, b: Float64Array, j: number, apart: number): number {
  const side = across(a[i], a[i + 2], b[j], b[j + 2], apart);
  const up = Math.max(0, a[i + 1] - b[j + 3], b[j + 1] - a[i + 3]);
  return Math.sqrt(side * side + up * up);
}

/** What is still to be looked at, no nearer than `bound`: two nodes, or two triangles or pieces of them. */
type Waiting = { bound: number; nodes: [number, number] } | { bound: number; pieces: [Piece, Piece] };

/** The pair with the least bound first, so that nothing is halved that the least distance does not ask for. */
function search(a: ProfileTree, b: ProfileTree, apart: number, found: Found): void {
  const slides = b.about === 'slide';
  const heap: Waiting[] = [];
  const pushNodes = (i: number, j: number) => {
    const bound = boxesApart(a.boxes, 4 * i, b.boxes, 4 * j, apart);
    if (bound < found.least - FINE) push(heap, { bound, nodes: [i, j] });
  };
  const pushPieces = (p: Piece, q: Piece) => {
    const bound = piecesApart(p, q, slides, apart);
    if (bound >= found.least - FINE) return;
    tryCorners(p, q, slides, apart, found);
    if (bound < found.least - FINE) push(heap, { bound, pieces: [p, q] });
  };
  pushNodes(0, 0);
  let looks = 0;
  for (let next = pop(heap); next && next.bound < found.least - FINE; next = pop(heap)) {
    if (++looks > MOST_LOOKS) {
      // No pair is nearer than this one's bound.
      found.least = next.bound;
      return;
    }
    if ('pieces' in next) {
      const [p, q] = next.pieces;
      if (p.side >= q.side) for (const half of halves(p, false)) pushPieces(half, q);
      else for (const half of halves(q, slides)) pushPieces(p, half);
      continue;
    }
    const [i, j] = next.nodes;
    const [leafA, leafB] = [i >= a.firstLeaf, j >= b.firstLeaf];
    if (leafA && leafB) {
      const mates = piecesOf(b, j);
      for (const p of piecesOf(a, i)) for (const q of mates) pushPieces(p, q);
    } else if (leafB || (!leafA && girth(a.boxes, i) >= girth(b.boxes, j))) {
      pushNodes(2 * i + 1, j);
      pushNodes(2 * i + 2, j);
    } else {
      pushNodes(i, 2 * j + 1);
      pushNodes(i, 2 * j + 2);
    }
  }
}

function girth(boxes: Float64Array, node: number): number {
  return boxes[4 * node + 2] - boxes[4 * node] + (boxes[4 * node + 3] - boxes[4 * node + 1]);
}

/** A triangle or a piece of one, and its image. */
interface Piece {
  /** Its corners, counted from the axis. */
  corners: Float64Array;
  /** Box around its image. */
  box: Float64Array;
  /** Its corners in the plane of the image: across and z of each. */
  flat: Float64Array;
  /**
   * How much nearer to the axis than the triangle through those its image reaches, at most: along a straight line the
   * distance from the axis bends by no more than 1 / r, and no point is farther than side / √3 from a corner's circle.
   */
  sag: number;
  /** Length of its longest side, mm, and where that starts. */
  side: number;
  at: number;
}

function piecesOf(tree: ProfileTree, node: number): Piece[] {
  const [from, to] = trianglesOf(tree, node);
  return Array.from({ length: to - from }, (_, i) =>
    pieceOf(tree.corners.subarray(9 * (from + i), 9 * (from + i) + 9), tree.about === 'slide'),
  );
}

function pieceOf(corners: Float64Array, slides: boolean): Piece {
  const box = new Float64Array(4);
  imageOf(corners, slides, box);
  const flat = new Float64Array(6);
  for (let k = 0; k < 3; k++) {
    const [x, y] = [corners[3 * k], corners[3 * k + 1]];
    flat[2 * k] = slides ? y : Math.sqrt(x * x + y * y);
    flat[2 * k + 1] = corners[3 * k + 2];
  }
  const { at, square } = longest(corners);
  const bends = slides ? 0 : square / (6 * Math.max(box[0], Number.MIN_VALUE));
  return { corners, box, flat, sag: Math.min(bends, box[2] - box[0]), side: Math.sqrt(square), at };
}

/**
 * A bound for how near two images come: that of their boxes, or, where it says more, of their corners seen from a side.
 * Circles about two axes are as far apart as points of a plane are, in which the radii of one are counted from the other
 * end of the way between the axes (beside each other), or from its end (one within the other).
 */
function piecesApart(p: Piece, q: Piece, slides: boolean, apart: number): number {
  const bound = boxesApart(p.box, 0, q.box, 0, apart);
  if (slides) return bound;
  const sag = p.sag + q.sag;
  if (apart === 0) return Math.max(bound, apartSeenFrom(p.flat, q.flat, sag));
  if (p.box[2] + q.box[2] <= apart)
    return Math.max(bound, apartSeenFrom(p.flat, moved(q.flat, -1, apart), sag));
  if (q.box[0] >= p.box[2] + apart)
    return Math.max(bound, apartSeenFrom(moved(p.flat, 1, apart), q.flat, sag));
  if (p.box[0] >= q.box[2] + apart)
    return Math.max(bound, apartSeenFrom(p.flat, moved(q.flat, 1, apart), sag));
  return bound;
}

/** A flat triangle whose radii are counted another way. */
function moved(flat: Float64Array, way: 1 | -1, by: number): Float64Array {
  return flat.map((value, i) => (i % 2 === 0 ? way * value + by : value));
}

/** The widest gap between two flat triangles seen square to one of their sides or along two corners, less the sag. */
function apartSeenFrom(p: Float64Array, q: Float64Array, sag: number): number {
  let widest = 0;
  for (let side = 0; side < 12; side += 2) {
    const t = side < 6 ? p : q;
    const k = side % 6;
    const next = (k + 2) % 6;
    widest = Math.max(widest, gapAlong(p, q, t[next + 1] - t[k + 1], t[k] - t[next], sag));
  }
  for (let i = 0; i < 6; i += 2)
    for (let j = 0; j < 6; j += 2)
      widest = Math.max(widest, gapAlong(p, q, q[j] - p[i], q[j + 1] - p[i + 1], sag));
  return widest;
}

/** The gap between two flat triangles along a direction; what bends lies across, so as much of it counts as it points there. */
function gapAlong(p: Float64Array, q: Float64Array, x: number, y: number, sag: number): number {
  const length = Math.sqrt(x * x + y * y);
  if (length === 0) return 0;
  let [p0, p1, q0, q1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let k = 0; k < 6; k += 2) {
    const a = p[k] * x + p[k + 1] * y;
    const b = q[k] * x + q[k + 1] * y;
    p0 = Math.min(p0, a);
    p1 = Math.max(p1, a);
    q0 = Math.min(q0, b);
    q1 = Math.max(q1, b);
  }
  return (Math.max(q0 - p1, p0 - q1) - Math.abs(x) * sag) / length;
}

function tryCorners(p: Piece, q: Piece, slides: boolean, apart: number, found: Found): void {
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      const [a, b] = [p.flat[2 * i], q.flat[2 * j]];
      const side = across(a, a, b, b, slides ? Number.POSITIVE_INFINITY : apart);
      const up = p.flat[2 * i + 1] - q.flat[2 * j + 1];
      const distance = Math.sqrt(side * side + up * up);
      if (distance >= found.least) continue;
      found.least = distance;
      found.points.set(p.corners.subarray(3 * i, 3 * i + 3));
      found.points.set(q.corners.subarray(3 * j, 3 * j + 3), 3);
    }
}

/** Adds to a binary heap, the least bound on top. */
function push(heap: Waiting[], one: Waiting): void {
  let at = heap.push(one) - 1;
  for (let up = (at - 1) >> 1; at > 0 && heap[up].bound > one.bound; at = up, up = (at - 1) >> 1)
    heap[at] = heap[up];
  heap[at] = one;
}

function pop(heap: Waiting[]): Waiting | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!heap.length || !last) return top;
  let at = 0;
  for (let down = 1; down < heap.length; down = 2 * at + 1) {
    if (down + 1 < heap.length && heap[down + 1].bound < heap[down].bound) down++;
    if (heap[down].bound >= last.bound) break;
    heap[at] = heap[down];
    at = down;
  }
  heap[at] = last;
  return top;
}

/** The longest side of a triangle: where it starts, and the square of its length. */
function longest(t: Float64Array): { at: number; square: number } {
  let [at, square] = [0, -1];
  for (let k = 0; k < 9; k += 3) {
    const next = (k + 3) % 9;
    const length = (t[next] - t[k]) ** 2 + (t[next + 1] - t[k + 1]) ** 2 + (t[next + 2] - t[k + 2]) ** 2;
    if (length > square) [at, square] = [k, length];
  }
  return { at, square };
}

/** The halves of a piece, cut at the middle of its longest side. */
function halves({ corners: t, at }: Piece, slides: boolean): [Piece, Piece] {
  const next = (at + 3) % 9;
  const one = Float64Array.from(t);
  const two = Float64Array.from(t);
  for (let k = 0; k < 3; k++) one[next + k] = two[at + k] = (t[at + k] + t[next + k]) / 2;
  return [pieceOf(one, slides), pieceOf(two, slides)];
}
