import type { Contour } from '../../stack/contour.js';
import type { Face, Stack, Wall } from '../../stack/stack.js';
import type { Mesh } from '../mesh.js';
import { fillFaces } from './fillFaces.js';
import { zippedWall } from './zippedWall.js';

/** A surface that is there already, such as swept teeth, and the contours at its open ends. */
export interface OpenSurface {
  /** x, y, z of vertex i at 3i, mm. */
  positions: ArrayLike<number>;
  /** Three vertex ids a triangle, counter-clockwise from outside. */
  triangles: Uint32Array;
  /** Its open ends: each contour with the vertex of each of its points. */
  ends: readonly { contour: Contour; ids: readonly number[] }[];
}

/**
 * The closed mesh of a stack. Vertices come in the order of the walls (point by point, the two contours of a wall in
 * turn), triangles in the order of walls and faces: the same stack gives the same bytes.
 * @param start a surface to build on; its vertices and triangles come first
 * @throws Error when a contour is not used exactly twice, a wall lies flat, or a face cannot be filled: a fault of
 * whoever made the stack
 */
export function stackMesh({ walls, faces }: Stack, start?: OpenSurface): Mesh {
  checkClosed(walls, faces, start);
  const given = start ? start.positions.length / 3 : 0;
  const added: number[] = [];
  const idsOf = new Map<Contour, readonly number[]>(start?.ends.map(({ contour, ids }) => [contour, ids]));
  const place = (contours: readonly Contour[]) => {
    const fresh = contours.filter((contour) => !idsOf.has(contour));
    const ids = fresh.map((): number[] => []);
    for (let i = 0; i < Math.max(0, ...fresh.map(({ points }) => points.length)); i++)
      fresh.forEach(({ points, z }, k) => {
        if (i < points.length) ids[k].push(given + added.push(points[i][0], points[i][1], z) / 3 - 1);
      });
    fresh.forEach((contour, k) => {
      idsOf.set(contour, ids[k]);
    });
  };
  for (const { from, to } of walls) place([from, to]);
  for (const { outer, holes } of faces) place([outer, ...holes]);
  const positions = new Float64Array(3 * given + added.length);
  if (start) positions.set(start.positions);
  positions.set(added, 3 * given);

  const walled = walls.map(({ from, to }) => {
    const [lower, upper] = from.z < to.z ? [from, to] : [to, from];
    return wallTriangles(lower, upper, idsOf.get(lower)!, idsOf.get(upper)!);
  });
  const filled = fillFaces(faces);
  const before = start ? start.triangles.length : 0;
  const triangles = new Uint32Array([...walled, ...filled].reduce((sum, { length }) => sum + length, before));
  if (start) triangles.set(start.triangles);
  let at = before;
  const add = (ids: readonly number[], flip: boolean) => {
    const second = flip ? 2 : 1;
    for (let i = 0; i < ids.length; i += 3, at += 3) {
      triangles[at] = ids[i];
      triangles[at + 1] = ids[i + second];
      triangles[at + 2] = ids[i + 3 - second];
    }
  };
  walls.forEach(({ solid }, i) => {
    add(walled[i], solid === 'outside');
  });
  faces.forEach(({ outer, holes, looks }, i) => {
    const ids = [outer, ...holes].flatMap((contour) => idsOf.get(contour)!);
    add(
      filled[i].map((place) => ids[place]),
      looks === 'down',
    );
  });
  return { positions, triangles };
}

/** Wound for material inside. */
function wallTriangles(
  lower: Contour,
  upper: Contour,
  below: readonly number[],
  above: readonly number[],
): number[] {
  const count = below.length;
  if (count !== above.length) return zippedWall(lower.points, upper.points, below, above);
  const triangles: number[] = [];
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    triangles.push(below[i], below[next], above[next], below[i], above[next], above[i]);
  }
  return triangles;
}

/** Every contour must bound two surfaces; a face's own height is that of all its contours. */
function checkClosed(walls: readonly Wall[], faces: readonly Face[], start?: OpenSurface): void {
  const uses = new Map<Contour, number>();
  const use = (contour: Contour) => uses.set(contour, (uses.get(contour) ?? 0) + 1);
  for (const { contour } of start?.ends ?? []) use(contour);
  for (const { from, to } of walls) {
    if (from.z === to.z) throw new Error(`stack: a wall lies flat at z = ${from.z}`);
    use(from);
    use(to);
  }
  for (const { outer, holes } of faces)
    for (const contour of [outer, ...holes]) {
      if (contour.z !== outer.z) throw new Error(`stack: a face has contours at ${outer.z} and ${contour.z}`);
      use(contour);
    }
  for (const [{ z }, count] of uses)
    if (count !== 2) throw new Error(`stack: a contour at z = ${z} bounds ${count} surfaces, not two`);
}
