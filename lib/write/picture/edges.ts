import type { Surface } from './shade.js';

/** Faces that meet at more than this angle have an edge between them: cosine of 32°. */
const CREASE = 0.85;
/** A step down of so many pixels from one face to the next is an edge. */
const STEP = 3;

/**
 * 1 on both sides of every edge: outlines of parts, steps from one surface to another behind it, and creases. Edges
 * keep shapes readable where colours are not told apart.
 * @param scale pixels for each mm
 */
export function edges(surface: Surface, scale: number): Uint8Array {
  const { width, height } = surface;
  const marked = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      if (x + 1 < width && parted(surface, at, at + 1, 1 / scale, 0)) marked[at] = marked[at + 1] = 1;
      if (y + 1 < height && parted(surface, at, at + width, 0, -1 / scale))
        marked[at] = marked[at + width] = 1;
    }
  return marked;
}

function parted(
  { part, cut, normals, depth }: Surface,
  a: number,
  b: number,
  right: number,
  up: number,
): boolean {
  if (part[a] !== part[b] || cut[a] !== cut[b]) return true;
  if (part[a] < 0) return false;
  const i = 3 * a;
  const j = 3 * b;
  const along = normals[i] * normals[j] + normals[i + 1] * normals[j + 1] + normals[i + 2] * normals[j + 2];
  if (along < CREASE) return true;
  // Each point against the plane of the other: a slope seen from the side is no step.
  const toward = depth[b] - depth[a];
  const offA = Math.abs(right * normals[i] + up * normals[i + 1] + toward * normals[i + 2]);
  const offB = Math.abs(right * normals[j] + up * normals[j + 1] + toward * normals[j + 2]);
  return Math.min(offA, offB) > STEP * (Math.abs(right) + Math.abs(up));
}
