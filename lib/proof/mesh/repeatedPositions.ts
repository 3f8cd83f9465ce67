/**
 * How many vertices stand exactly where an earlier one stands; −0 and 0 are the same place.
 * Open addressing in a table at most half full, so time grows in proportion to the vertices.
 */
export function repeatedPositions(positions: Float64Array): number {
  const count = positions.length / 3;
  let size = 16;
  while (size < 2 * count) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const bits = new Uint32Array(2);
  const value = new Float64Array(bits.buffer);
  let repeated = 0;
  for (let vertex = 0; vertex < count; vertex++) {
    let hash = 0;
    for (let axis = 0; axis < 3; axis++) {
      value[0] = positions[3 * vertex + axis] + 0;
      hash = mixed(mixed(hash ^ bits[0]) ^ bits[1]);
    }
    let slot = hash & (size - 1);
    while (table[slot] >= 0 && !samePlace(positions, table[slot], vertex)) slot = (slot + 1) & (size - 1);
    if (table[slot] >= 0) repeated++;
    else table[slot] = vertex;
  }
  return repeated;
}

function samePlace(positions: Float64Array, i: number, j: number): boolean {
  return (
    positions[3 * i] === positions[3 * j] &&
    positions[3 * i + 1] === positions[3 * j + 1] &&
    positions[3 * i + 2] === positions[3 * j + 2]
  );
}

/** Spreads the bits of a 32-bit integer (the finaliser of MurmurHash3, public domain; from memory). */
function mixed(bits: number): number {
  let hash = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}
