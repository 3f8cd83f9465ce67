import { FACET, NORMAL } from '../mesh/facets.js';
import type { DistanceTree } from '../mesh/triangleTree.js';

/**
 * What a body passes through while it turns about an axis parallel to z, or slides along x: the image of its triangles in
 * a half plane, distance from the axis (or y) across, z upward. A complete binary tree as `TriangleTree` is, its leaves
 * holding up to `LEAF` triangles, ordered by where their images are. Triangles with one image, such as those of all teeth
 * of a gear, are held once. Lengths in mm.
 */
export interface ProfileTree {
  /** `slide` for a body carried along x. */
  about: readonly [number, number] | 'slide';
  /** Corners of triangle i at 9i, counted from the axis. */
  corners: Float64Array;
  count: number;
  /** Box around the images under node i at 4i: least across, least z, greatest across, greatest z. */
  boxes: Float64Array;
  firstLeaf: number;
}

export const LEAF = 4;

/** The images of a body's triangles. */
export function profileTree({ facets }: DistanceTree, about: ProfileTree['about']): ProfileTree {
  const all = facets.length / FACET;
  const corners = new Float64Array(9 * all);
  const images = new Float64Array(4 * all);
  for (let i = 0; i < all; i++) {
    cornersOf(facets, FACET * i, about, corners.subarray(9 * i, 9 * i + 9));
    imageOf(corners.subarray(9 * i, 9 * i + 9), about === 'slide', images.subarray(4 * i, 4 * i + 4));
  }
  const order = inPlane(images, about === 'slide' ? all : unlike(corners, images), all);
  const count = order.length;
  const ordered = new Float64Array(9 * count);
  order.forEach((from, to) => {
    ordered.set(corners.subarray(9 * from, 9 * from + 9), 9 * to);
  });
  let leaves = 1;
  while (leaves * LEAF < count) leaves *= 2;
  return { about, corners: ordered, count, boxes: boxesOf(order, images, leaves), firstLeaf: leaves - 1 };
}

/** Which triangles a leaf holds, from and to. */
export function trianglesOf(
  { count, firstLeaf }: Pick<ProfileTree, 'count' | 'firstLeaf'>,
  node: number,
): [number, number] {
  const leaf = node - firstLeaf;
  return [Math.floor((leaf * count) / (firstLeaf + 1)), Math.floor(((leaf + 1) * count) / (firstLeaf + 1))];
}

/** Images closer than this are one, mm. */
const SAME = 1e-6;

/** For every triangle whether it is the first with its image: turned about the axis, it would be every other one. */
function unlike(corners: Float64Array, images: Float64Array): Uint8Array {
  const count = images.length / 4;
  const first = new Uint8Array(count);
  const known = new Map<number, number>();
  const figures = new Float64Array(7 * count);
  for (let i = 0; i < count; i++) {
    const own = figures.subarray(7 * i, 7 * i + 7);
    own.set(images.subarray(4 * i, 4 * i + 4));
    figuresOf(corners.subarray(9 * i, 9 * i + 9), own);
    let hash = 17;
    for (let k = 0; k < 7; k++) hash = (Math.imul(hash, 31) + Math.round(own[k] / (100 * SAME))) | 0;
    const other = known.get(hash);
    if (other !== undefined && own.every((value, k) => Math.abs(value - figures[7 * other + k]) < SAME))
      continue;
    known.set(hash, i);
    first[i] = 1;
  }
  return first;
}

/** Sums over the corners that, with the box of its image, tell how a triangle lies about the axis. */
function figuresOf(t: Float64Array, into: Float64Array): void {
  let [reach, height, sides] = [0, 0, 0];
  for (let k = 0; k < 9; k += 3) {
    const next = (k + 3) % 9;
    const radius = Math.sqrt(t[k] * t[k] + t[k + 1] * t[k + 1]);
    reach += radius;
    height += radius * t[k + 2];
    sides += Math.sqrt((t[next] - t[k]) ** 2 + (t[next + 1] - t[k + 1]) ** 2 + (t[next + 2] - t[k + 2]) ** 2);
  }
  into[4] = reach;
  into[5] = height;
  into[6] = sides;
}

/** Cells of the plane along each side, by which images are ordered. */
const CELLS = 65535;

/** The triangles that are kept, neighbours in the plane near each other: along a curve through all cells (Morton's). */
function inPlane(images: Float64Array, kept: Uint8Array | number, all: number): Uint32Array {
  const middle = (i: number, k: number) => images[4 * i + k] + images[4 * i + k + 2];
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (let i = 0; i < all; i++)
    for (let k = 0; k < 2; k++) {
      low[k] = Math.min(low[k], middle(i, k));
      high[k] = Math.max(high[k], middle(i, k));
    }
  const wide = Math.max(high[0] - low[0], high[1] - low[1], Number.MIN_VALUE);
  const keys: number[] = [];
  for (let i = 0; i < all; i++) {
    if (typeof kept !== 'number' && !kept[i]) continue;
    const [x, y] = [0, 1].map((k) => spread(((middle(i, k) - low[k]) / wide) * CELLS));
    keys.push((x + 2 * y) * INDICES + i);
  }
  return Uint32Array.from(Float64Array.from(keys).sort(), (key) => key % INDICES);
}

/** More triangles than any body has; a cell's number and this fit a double. */
const INDICES = 2 ** 21;

/** The bits of a number up to 65535, every other place free. */
function spread(value: number): number {
  let bits = value | 0;
  bits = (bits | (bits << 8)) & 0x00ff00ff;
  bits = (bits | (bits << 4)) & 0x0f0f0f0f;
  bits = (bits | (bits << 2)) & 0x33333333;
  return (bits | (bits << 1)) & 0x55555555;
}

function boxesOf(order: Uint32Array, images: Float64Array, leaves: number): Float64Array {
  const boxes = new Float64Array(4 * (2 * leaves - 1));
  const place = { count: order.length, firstLeaf: leaves - 1 };
  for (let node = 2 * leaves - 2; node >= 0; node--) {
    const to = 4 * node;
    boxes[to] = boxes[to + 1] = Number.POSITIVE_INFINITY;
    boxes[to + 2] = boxes[to + 3] = Number.NEGATIVE_INFINITY;
    if (node >= leaves - 1) {
      const [from, end] = trianglesOf(place, node);
      for (let i = from; i < end; i++) widen(boxes, to, images, 4 * order[i]);
    } else for (const child of [2 * node + 1, 2 * node + 2]) widen(boxes, to, boxes, 4 * child);
  }
  return boxes;
}

function widen(boxes: Float64Array, to: number, from: Float64Array, at: number): void {
  boxes[to] = Math.min(boxes[to], from[at]);
  boxes[to + 1] = Math.min(boxes[to + 1], from[at + 1]);
  boxes[to + 2] = Math.max(boxes[to + 2], from[at + 2]);
  boxes[to + 3] = Math.max(boxes[to + 3], from[at + 3]);
}

/** Writes the corners of the facet at `at`, counted from the axis. */
function cornersOf(facets: Float64Array, at: number, about: ProfileTree['about'], into: Float64Array): void {
  const x = about === 'slide' ? 0 : about[0];
  const y = about === 'slide' ? 0 : about[1];
  for (let k = 0; k < NORMAL; k += 3) {
    into[k] = facets[at + k] - x;
    into[k + 1] = facets[at + k + 1] - y;
    into[k + 2] = facets[at + k + 2];
  }
}

/** Writes the box around the image of a triangle whose corners are counted from the axis. Exact for either side. */
export function imageOf(t: Float64Array, slides: boolean, into: Float64Array): void {
  into[1] = Math.min(t[2], t[5], t[8]);
  into[3] = Math.max(t[2], t[5], t[8]);
  if (slides) {
    into[0] = Math.min(t[1], t[4], t[7]);
    into[2] = Math.max(t[1], t[4], t[7]);
    return;
  }
  into[0] = Math.sqrt(nearestSquare(t));
  into[2] = Math.sqrt(
    Math.max(t[0] * t[0] + t[1] * t[1], t[3] * t[3] + t[4] * t[4], t[6] * t[6] + t[7] * t[7]),
  );
}

/** Square of the distance of the axis from a triangle seen along it; 0 where it goes through. */
function nearestSquare(t: Float64Array): number {
  const ab = t[0] * t[4] - t[1] * t[3];
  const bc = t[3] * t[7] - t[4] * t[6];
  const ca = t[6] * t[1] - t[7] * t[0];
  if ((ab > 0 && bc > 0 && ca > 0) || (ab < 0 && bc < 0 && ca < 0)) return 0;
  return Math.min(
    toEdge(t[0], t[1], t[3], t[4]),
    toEdge(t[3], t[4], t[6], t[7]),
    toEdge(t[6], t[7], t[0], t[1]),
  );
}

/** Square of the distance of the origin from the line between two points. */
function toEdge(ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  const along = -(ax * dx + ay * dy);
  const share = along > 0 ? (along < length ? along / length : 1) : 0;
  const x = ax + share * dx;
  const y = ay + share * dy;
  return x * x + y * y;
}
