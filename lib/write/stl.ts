import { refuse } from '../refusal.js';
import type { Mesh, Part } from '../solid/mesh.js';

/** Bytes before the facets: an 80-byte header of free text and the facet count. */
const HEADER_BYTES = 84;
/** Twelve float32 (normal, three corners) and an attribute word that stays 0. */
const FACET_BYTES = 50;
/** Facets in one chunk: about 400 kB, large enough that the calls cost nothing beside the writing. */
const CHUNK_FACETS = 8192;
/** Must not begin with `solid`, which is how readers tell the text form. */
const HEADER_TEXT = 'binary STL, millimetres';

/**
 * All parts, in place, as one binary STL file in memory (84 + 50 bytes a triangle).
 * Coordinates are written as float32 in mm; normals have unit length and come from the float64 positions.
 * @throws Refusal when there are more triangles than the format can count
 * Source of the layout: the binary STL format, little endian, corners counter-clockwise from outside.
 */
export function encodeStl(parts: readonly Part[]): Uint8Array {
  const count = countFacets(parts);
  const bytes = new Uint8Array(HEADER_BYTES + FACET_BYTES * count);
  writeHeader(bytes, count);
  const view = new DataView(bytes.buffer);
  let offset = HEADER_BYTES;
  for (const { mesh } of parts) {
    const facets = mesh.triangles.length / 3;
    writeFacets(view, offset, mesh, 0, facets);
    offset += facets * FACET_BYTES;
  }
  return bytes;
}

/**
 * The same file as `encodeStl`, piece by piece: joined, the chunks are that file, byte for byte. Each chunk
 * is a buffer of its own of at most 409 600 bytes, so a mesh of any size passes in little memory.
 * @throws Refusal when there are more triangles than the format can count
 */
export function* stlChunks(parts: readonly Part[]): Generator<Uint8Array> {
  const header = new Uint8Array(HEADER_BYTES);
  writeHeader(header, countFacets(parts));
  yield header;
  for (const { mesh } of parts) {
    const facets = mesh.triangles.length / 3;
    for (let from = 0; from < facets; from += CHUNK_FACETS) {
      const to = Math.min(facets, from + CHUNK_FACETS);
      const chunk = new Uint8Array((to - from) * FACET_BYTES);
      writeFacets(new DataView(chunk.buffer), 0, mesh, from, to);
      yield chunk;
    }
  }
}

function countFacets(parts: readonly Part[]): number {
  const count = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  if (count > 0xffff_ffff)
    refuse('too-large', 'parts', count, 'binary STL counts at most 4294967295 triangles');
  return count;
}

function writeHeader(bytes: Uint8Array, count: number): void {
  bytes.fill(0x20, 0, HEADER_BYTES - 4);
  bytes.set(new TextEncoder().encode(HEADER_TEXT));
  new DataView(bytes.buffer).setUint32(HEADER_BYTES - 4, count, true);
}

/** Writes triangles `from` … `to` − 1 at `offset`; no object is made per triangle, and no tuple taken apart. */
function writeFacets(view: DataView, offset: number, mesh: Mesh, from: number, to: number): void {
  const { positions, triangles } = mesh;
  for (let t = 3 * from, at = offset; t < 3 * to; t += 3, at += FACET_BYTES) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    const ax = positions[a];
    const ay = positions[a + 1];
    const az = positions[a + 2];
    const bx = positions[b];
    const by = positions[b + 1];
    const bz = positions[b + 2];
    const cx = positions[c];
    const cy = positions[c + 1];
    const cz = positions[c + 2];
    const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    // A triangle without area has no normal; readers then work one out themselves from 0 0 0.
    const scale = length > 0 ? 1 / length : 0;
    view.setFloat32(at, nx * scale, true);
    view.setFloat32(at + 4, ny * scale, true);
    view.setFloat32(at + 8, nz * scale, true);
    view.setFloat32(at + 12, ax, true);
    view.setFloat32(at + 16, ay, true);
    view.setFloat32(at + 20, az, true);
    view.setFloat32(at + 24, bx, true);
    view.setFloat32(at + 28, by, true);
    view.setFloat32(at + 32, bz, true);
    view.setFloat32(at + 36, cx, true);
    view.setFloat32(at + 40, cy, true);
    view.setFloat32(at + 44, cz, true);
  }
}
