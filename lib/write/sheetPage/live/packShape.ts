import type { Mesh } from '../../../solid/mesh.js';
import type { LiveShape } from './liveData.js';

/** Steps of a 16-bit coordinate: on a set of 100 mm one is 1.5 µm. */
const STEPS = 65535;

/** A mesh packed for a page: coordinates from its own axis in 16 bits each, vertex numbers in 32, both as base64. */
export function packShape({ positions, triangles }: Mesh, [cx, cy]: readonly [number, number]): LiveShape {
  const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3;
    least[axis] = Math.min(least[axis], positions[i]);
    most[axis] = Math.max(most[axis], positions[i]);
  }
  const step = least.map((low, axis) => (most[axis] - low) / STEPS || 1);
  const packed = new Uint16Array(positions.length);
  for (let i = 0; i < positions.length; i++)
    packed[i] = Math.round((positions[i] - least[i % 3]) / step[i % 3]);
  return {
    positions: base64(packed),
    triangles: base64(triangles),
    origin: [least[0] - cx, least[1] - cy, least[2]],
    step: [step[0], step[1], step[2]],
  };
}

function base64({ buffer, byteOffset, byteLength }: Uint16Array | Uint32Array): string {
  return Buffer.from(buffer, byteOffset, byteLength).toString('base64');
}
