import { type Corner, cutBy, middleOf } from '../mesh/convexOutline.js';
import { FACET, type Facets, NORMAL } from '../mesh/facets.js';
import type { TriangleTree } from '../mesh/triangleTree.js';

/** How near opposite facets may come to each other before the material or the air between them counts as thin, mm. */
export interface ThinLimits {
  /** For walls that stand upright. */
  wall: number;
  /** For slots between upright walls of one body. */
  slot: number;
  /** For plates and slots that lie level: height of a layer. */
  layer: number;
  /** For upright walls that may be too high for their thickness; 0 looks for none. */
  tall: number;
}

/** Where two facets of one body face away from each other, or towards each other, with little between them. */
export interface ThinPiece {
  /** Material between them, or air. */
  between: 'wall' | 'slot';
  /** Of the facet that was looked from, in the mesh. */
  triangle: number;
  /** In the middle of the piece, along the normal of that facet, mm. */
  thickness: number;
  /** Share of `thickness` in what the direction of the wall asks for; less than 1 is too thin to print. */
  share: number;
  /** mm². */
  area: number;
  /** Middle of the piece on the facet, mm. */
  at: [number, number, number];
  /** The heights between which it lies, mm. */
  from: number;
  to: number;
}

/**
 * Faces that meet at more than this are a wedge, as tooth tips, bevels and the corners of solids are: it thins to nothing
 * within a millimetre, and prints blunt. Common practice, no source.
 */
const WEDGE = (20 * Math.PI) / 180;
/** The same of air: what fuses at the bottom of a notch is no loss, while a slot is there to part its two sides. */
const NOTCH = (10 * Math.PI) / 180;

const OPPOSITE = { wall: -Math.cos(WEDGE), slot: -Math.cos(NOTCH) };
/** Walls within this angle of upright can be too high, as a share of their normal that points up. */
const UPRIGHT = Math.sin(WEDGE);
/** Faces that lie on each other but for rounding, mm. */
const ROUNDING = 1e-9;
/** Pieces smaller than this are where facets only touch along their edges, mm². */
const NO_AREA = 1e-12;

/**
 * All pairs of facets of one body that have little between them, as the pieces in which they lie opposite each other.
 * No place is sampled: each facet's shadow is cut out of the other one, so that nothing slips through, however small.
 *
 * What a wall must hold is one line: a box as wide as a line and as high as a layer, which lies between two planes with
 * normal n when they are `wall` × the level share of n plus `layer` × its upright share apart.
 * @param looked whether a triangle is one to be looked from
 */
export function thinPieces(
  tree: TriangleTree,
  looked: (triangle: number) => boolean,
  limits: ThinLimits,
): ThinPiece[] {
  const pieces: ThinPiece[] = [];
  for (let facet = 0; facet < tree.order.length; facet++)
    if (looked(tree.order[facet])) lookFrom(tree, facet, limits, pieces);
  return pieces;
}

/** What one facet asks for, in the direction of its normal. */
interface Reach {
  wall: number;
  slot: number;
  /** As deep as is looked for, mm. */
  depth: number;
}

function lookFrom(tree: TriangleTree, facet: number, limits: ThinLimits, pieces: ThinPiece[]): void {
  const { facets, order, firstLeaf, leafStart } = tree;
  const at = FACET * facet;
  const up = Math.abs(facets[at + NORMAL + 2]);
  const level = Math.hypot(facets[at + NORMAL], facets[at + NORMAL + 1]);
  if (up + level === 0) return;
  const wall = limits.wall * level + limits.layer * up;
  const slot = limits.slot * level + limits.layer * up;
  const depth = up < UPRIGHT ? Math.max(wall, limits.tall) : wall;
  const reach: Reach = { wall, slot, depth };
  const waiting = [0];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (!reaches(tree, node, at, reach)) continue;
    if (node < firstLeaf) {
      waiting.push(2 * node + 1, 2 * node + 2);
      continue;
    }
    for (let other = leafStart[node - firstLeaf]; other < leafStart[node - firstLeaf + 1]; other++) {
      const facing = between(facets, at, FACET * other);
      if (facing < OPPOSITE.wall) addPiece(facets, at, FACET * other, 'wall', reach, order[facet], pieces);
      if (facing < OPPOSITE.slot) addPiece(facets, at, FACET * other, 'slot', reach, order[facet], pieces);
    }
  }
}

/** Whether anything in a node's box may lie between the planes in front of and behind a facet, beside it. */
function reaches({ boxes, facets }: TriangleTree, node: number, at: number, { slot, depth }: Reach): boolean {
  const farthest = Math.max(slot, depth);
  const box = 6 * node;
  let middle = 0;
  let half = 0;
  for (let axis = 0; axis < 3; axis++) {
    const [a, b, c] = [facets[at + axis], facets[at + 3 + axis], facets[at + 6 + axis]];
    if (
      boxes[box + axis] > Math.max(a, b, c) + farthest ||
      boxes[box + 3 + axis] < Math.min(a, b, c) - farthest
    )
      return false;
    const normal = facets[at + NORMAL + axis];
    middle += normal * ((boxes[box + axis] + boxes[box + 3 + axis]) / 2 - a);
    half += Math.abs(normal) * ((boxes[box + 3 + axis] - boxes[box + axis]) / 2);
  }
  return middle - half <= slot && middle + half >= -depth;
}

/** Cosine of the angle between the normals of two facets. */
function between(f: Facets, a: number, b: number): number {
  const n = a + NORMAL;
  const m = b + NORMAL;
  return f[n] * f[m] + f[n + 1] * f[m + 1] + f[n + 2] * f[m + 2];
}

/**
 * Adds what of facet `b` lies opposite facet `a`, if anything does. Corners are places in the plane of `a` and how far they
 * lie behind it.
 */
function addPiece(
  f: Facets,
  a: number,
  b: number,
  kind: ThinPiece['between'],
  reach: Reach,
  triangle: number,
  pieces: ThinPiece[],
): void {
  // Walls lie behind the facet, slots in front of it; faces that lie on each other are a wall without thickness.
  const sign = kind === 'wall' ? 1 : -1;
  const farthest = kind === 'wall' ? reach.depth : reach.slot;
  const frame = frameOf(f, a);
  const deep = [0, 3, 6].map((k) => inFrame(f, a, frame, b + k));
  let shadow = cutBy(deep, (corner) => sign * (corner[2] + ROUNDING));
  shadow = cutBy(shadow, (corner) => farthest - sign * corner[2]);
  const own = [0, 3, 6].map((k) => inFrame(f, a, frame, a + k));
  for (let i = 0; i < 3 && shadow.length; i++) {
    const [x, y] = own[i];
    const [dx, dy] = [own[(i + 1) % 3][0] - x, own[(i + 1) % 3][1] - y];
    shadow = cutBy(shadow, (corner) => dx * (corner[1] - y) - dy * (corner[0] - x));
  }
  const { area, middle } = middleOf(shadow);
  if (!(area > NO_AREA)) return;
  const thickness = Math.max(0, sign * middle[2]);
  const heights = shadow.map((corner) => heightOf(f, a, frame, corner));
  pieces.push({
    between: kind,
    triangle,
    thickness,
    share: thickness / reach[kind],
    area,
    at: placeOf(f, a, frame, middle),
    from: Math.min(...heights),
    to: Math.max(...heights),
  });
}

/** Two directions that span the plane of a facet, the first along its first side, right-handed with its normal. */
type Frame = readonly [number, number, number, number, number, number];

function frameOf(f: Facets, a: number): Frame {
  const [x, y, z] = [f[a + 3] - f[a], f[a + 4] - f[a + 1], f[a + 5] - f[a + 2]];
  const length = Math.hypot(x, y, z);
  const [ux, uy, uz] = [x / length, y / length, z / length];
  const [nx, ny, nz] = [f[a + NORMAL], f[a + NORMAL + 1], f[a + NORMAL + 2]];
  return [ux, uy, uz, ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
}

function inFrame(f: Facets, a: number, [ux, uy, uz, vx, vy, vz]: Frame, at: number): Corner {
  const [x, y, z] = [f[at] - f[a], f[at + 1] - f[a + 1], f[at + 2] - f[a + 2]];
  const depth = -(f[a + NORMAL] * x + f[a + NORMAL + 1] * y + f[a + NORMAL + 2] * z);
  return [ux * x + uy * y + uz * z, vx * x + vy * y + vz * z, depth];
}

function placeOf(f: Facets, a: number, [ux, uy, uz, vx, vy, vz]: Frame, [u, v]: Corner): Corner {
  return [f[a] + u * ux + v * vx, f[a + 1] + u * uy + v * vy, f[a + 2] + u * uz + v * vz];
}

function heightOf(f: Facets, a: number, frame: Frame, corner: Corner): number {
  return placeOf(f, a, frame, corner)[2];
}
