import type { Mesh, Part } from '../../solid/mesh.js';
import { isInside, sectionAt } from '../mesh/section.js';
import { rootOf, singles, unite } from '../mesh/shells.js';
import { type Grid, gridOver, markSection, markTriangle } from './grid.js';

/** A place at which a body begins when it is printed from the bed upwards: nothing of it beside the place is lower. */
export interface Start {
  /** mm. */
  at: [number, number, number];
  /** Vertices at its height that hang together. */
  vertices: number[];
}

/** Heights closer together than this, mm, are one: rounding of doubles. */
const FLAT = 1e-7;

/** Places where a body begins above a height, mm; the bottom of a pit is none, since there the body ends. */
export function startsAbove(mesh: Mesh, height: number): Start[] {
  const { positions: p, triangles } = mesh;
  const level = singles(p.length / 3);
  const onLower = new Uint8Array(p.length / 3);
  eachEdge(triangles, (a, b) => {
    if (Math.abs(p[3 * a + 2] - p[3 * b + 2]) < FLAT) unite(level, a, b);
  });
  eachEdge(triangles, (a, b) => {
    const rise = p[3 * b + 2] - p[3 * a + 2];
    if (Math.abs(rise) >= FLAT) onLower[rootOf(level, rise > 0 ? b : a)] = 1;
  });
  const places = new Map<number, number[]>();
  for (const vertex of new Set(triangles)) {
    const root = rootOf(level, vertex);
    if (onLower[root] || !(p[3 * vertex + 2] > height)) continue;
    const vertices = places.get(root);
    if (vertices) vertices.push(vertex);
    else places.set(root, [vertex]);
  }
  if (places.size === 0) return [];
  const looks = downwards(mesh, new Set([...places.values()].map(([first]) => first)));
  return [...places.values()]
    .filter(([first]) => looks.get(first)! < 0)
    .map((vertices) => ({ at: middleOf(p, vertices), vertices }));
}

function eachEdge(triangles: Uint32Array, visit: (a: number, b: number) => void): void {
  for (let t = 0; t < triangles.length; t += 3) {
    visit(triangles[t], triangles[t + 1]);
    visit(triangles[t + 1], triangles[t + 2]);
    visit(triangles[t + 2], triangles[t]);
  }
}

/**
 * The z component of the angle-weighted normal at some vertices: below 0 where the body lies above them.
 * Source: Bærentzen and Aanæs, Signed distance computation using the angle weighted pseudonormal, IEEE Transactions on
 * Visualization and Computer Graphics 11 (2005) 243–253 (from memory): its sign tells inside from outside for every
 * point whose nearest place on the surface is that vertex, here a point straight below.
 */
function downwards({ positions: p, triangles }: Mesh, vertices: ReadonlySet<number>): Map<number, number> {
  const sums = new Map([...vertices].map((vertex) => [vertex, 0]));
  for (let i = 0; i < triangles.length; i++) {
    const sum = sums.get(triangles[i]);
    if (sum === undefined) continue;
    const t = i - (i % 3);
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[t + ((i + k) % 3)]);
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const up = ux * vy - uy * vx;
    const doubled = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, up);
    const angle = Math.atan2(doubled, ux * vx + uy * vy + uz * vz);
    if (doubled > 0) sums.set(triangles[i], sum + (angle * up) / doubled);
  }
  return sums;
}

function middleOf(p: Float64Array, vertices: readonly number[]): [number, number, number] {
  const sum = [0, 1, 2].map((k) => vertices.reduce((total, vertex) => total + p[3 * vertex + k], 0));
  return sum.map((total) => total / vertices.length) as [number, number, number];
}

/**
 * Whether some body, itself included, lies below a start, no more layers deep than given.
 * @param layer height of a layer, mm
 */
export function isCarried(
  mesh: Mesh,
  start: Start,
  parts: readonly Part[],
  { layer, layers }: { layer: number; layers: number },
): boolean {
  const lowest = Math.min(...start.vertices.map((vertex) => mesh.positions[3 * vertex + 2]));
  const face = faceOf(mesh, start);
  for (let depth = 1; depth <= layers; depth++) {
    const z = lowest - (depth + 0.01) * layer;
    if (
      parts.some((part) =>
        face ? liesUnder(part.mesh, z, face) : liesUnderCorners(part.mesh, z, mesh, start),
      )
    )
      return true;
  }
  return false;
}

/** Side of the squares in which a face is looked at, mm, and the most of them along a side. */
const CELL = 0.2;
const MOST_CELLS = 300;

/** The level face of a start; null where it is a point, an edge or no larger than a square. */
function faceOf({ positions, triangles }: Mesh, { vertices }: Start): Grid | null {
  const own = new Set(vertices);
  const face = gridOver(positions, vertices, CELL, MOST_CELLS);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (own.has(a) && own.has(b) && own.has(c)) markTriangle(face, positions, a, b, c);
  }
  return face.marks.includes(1) ? face : null;
}

function liesUnder(body: Mesh, z: number, face: Grid): boolean {
  const below = { ...face, marks: new Uint8Array(face.marks.length) };
  markSection(below, body, z);
  return below.marks.some((mark, i) => mark === 1 && face.marks[i] === 1);
}

function liesUnderCorners(body: Mesh, z: number, { positions: p }: Mesh, { vertices }: Start): boolean {
  const loops = sectionAt(body, z);
  const isWithin = (x: number, y: number) =>
    loops.filter(({ points }) => isInside(points, x, y)).length % 2 === 1;
  return vertices.some((vertex) => isWithin(p[3 * vertex], p[3 * vertex + 1]));
}
