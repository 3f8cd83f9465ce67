import type { Mesh } from '../mesh.js';

/**
 * How far apart heights may be and still be one, mm. Modelling scripts put one solid onto the other's end face by
 * sums of decimals, and their booleans round; without this a sheet of air or matter thinner than an atom stays between.
 */
const ONE_LEVEL = 1e-4;

/** Ascending, each once. */
export type Levels = readonly number[];

/** Heights at which vertices lie, joined to those that are known already. */
export function levelsOf({ positions }: Mesh, known: Levels = []): Levels {
  const heights = new Set(known);
  for (let i = 2; i < positions.length; i += 3) heights.add(positions[i]);
  return [...heights].sort((a, b) => a - b);
}

/** A solid whose vertices lie exactly at the levels that they nearly lie at. */
export function atLevels(solid: Mesh, levels: Levels): Mesh {
  const positions = solid.positions.slice();
  for (let i = 2; i < positions.length; i += 3) {
    const nearest = nearestOf(levels, positions[i]);
    if (Math.abs(nearest - positions[i]) <= ONE_LEVEL) positions[i] = nearest;
  }
  return { ...solid, positions };
}

function nearestOf(levels: Levels, height: number): number {
  let [low, high] = [0, levels.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (levels[middle] < height) low = middle + 1;
    else high = middle;
  }
  const [above, below] = [levels[low], levels[Math.max(0, low - 1)]];
  return Math.abs(below - height) < Math.abs(above - height) ? below : above;
}
