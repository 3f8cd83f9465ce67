import { type PitchDraft, placeOf } from './pitchVertices.js';

/**
 * How far triangles of a patch stand out over its edge, mm: 0 where all lie the same way up, else the most that one on
 * its back reaches beyond the edge it lies on. A triangle can be near the exact surface and yet beyond the patch's rim.
 * @param triangles vertex ids, three a triangle
 * @param flat a picture of the patch in a plane that keeps its triangles the right way up
 */
export function foldedBy(
  draft: PitchDraft,
  triangles: readonly number[],
  flat: (place: [number, number, number]) => [number, number],
): number {
  const areas: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => flat(placeOf(draft, triangles[i + k])));
    areas.push((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  }
  const way = Math.sign(areas.reduce((sum, area) => sum + area, 0));
  return areas.reduce(
    (most, area, i) => (area * way < 0 ? Math.max(most, leastHeight(draft, triangles, 3 * i)) : most),
    0,
  );
}

function leastHeight(draft: PitchDraft, triangles: readonly number[], at: number): number {
  const [a, b, c] = [0, 1, 2].map((k) => placeOf(draft, triangles[at + k]));
  const [u, v] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
  const twiceArea = Math.hypot(
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  );
  const longest = Math.max(Math.hypot(...u), Math.hypot(...v), Math.hypot(...u.map((x, k) => x - v[k])));
  return longest === 0 ? 0 : twiceArea / longest;
}
