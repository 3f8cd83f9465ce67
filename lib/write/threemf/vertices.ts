import { refuse } from '../../refusal.js';
import type { Part } from '../../solid/mesh.js';

/** The vertices of a part as they are written: whole nanometres, so six decimals of a millimetre. */
export type Nanometres = Float64Array;

/** Beyond 4 km a double no longer holds whole nanometres with room to spare. */
const FARTHEST_MM = 4e6;

/**
 * The positions of a part rounded to whole nanometres. Nothing is merged: every vertex stays one of its own.
 * @throws Refusal when a position is not a finite number within ±4 km, or when two vertices of the part
 * would be written alike
 */
export function roundVertices({ name, mesh }: Part): Nanometres {
  const rounded = new Float64Array(mesh.positions.length);
  for (let i = 0; i < rounded.length; i++) {
    const value = mesh.positions[i];
    if (!(Math.abs(value) <= FARTHEST_MM)) {
      refuse(
        'bad-mesh',
        `parts.${name}.positions`,
        value,
        'must be finite and within 4000000 mm of the origin',
      );
    }
    // Adding 0 turns −0 into 0.
    rounded[i] = Math.round(value * 1e6) + 0;
  }
  const twins = findTwins(rounded);
  if (twins) {
    const [a, b] = twins;
    const rule = `vertices ${a} and ${b} are the same within 0.000001 mm and would be written alike`;
    const at = Array.from(rounded.subarray(3 * a, 3 * a + 3), (n) => n / 1e6);
    refuse('bad-mesh', `parts.${name}.positions`, at, rule);
  }
  return rounded;
}

/** Two vertices with the same coordinates, or null; a hash table of indices only, at most half full. */
function findTwins(rounded: Nanometres): [number, number] | null {
  const count = rounded.length / 3;
  const size = 2 ** Math.ceil(Math.log2(Math.max(2, 2 * count)));
  const table = new Int32Array(size).fill(-1);
  for (let v = 0; v < count; v++) {
    const x = rounded[3 * v];
    const y = rounded[3 * v + 1];
    const z = rounded[3 * v + 2];
    let slot = hash(x, y, z) & (size - 1);
    for (; table[slot] >= 0; slot = (slot + 1) & (size - 1)) {
      const other = 3 * table[slot];
      if (rounded[other] === x && rounded[other + 1] === y && rounded[other + 2] === z)
        return [table[slot], v];
    }
    table[slot] = v;
  }
  return null;
}

/** Mixes three whole numbers into 32 bits (multiply and xor-shift, so that grids spread too). */
function hash(x: number, y: number, z: number): number {
  let h = Math.imul(x | 0, 0x9e3779b1) ^ Math.imul(y | 0, 0x85ebca6b) ^ Math.imul(z | 0, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return h ^ (h >>> 15);
}
