/** Points made one where they coincide. */
export interface Welded {
  /** x, y, z of the points that are left, in order of first appearance, mm. */
  positions: Float64Array;
  /** For every point given, its index among those left. */
  indexOf: Uint32Array;
}

/**
 * Makes points one that are no farther apart than `tolerance` (the first one stays where it is).
 * @param points x, y, z, …, mm, all finite
 * @param tolerance mm; 0 joins only points with the very same coordinates
 * Cost: about linear, through a hashed grid.
 */
export function weld(points: Float64Array, tolerance: number): Welded {
  const cell = Math.max(4 * tolerance, LEAST_CELL);
  const buckets = new Map<number, number[]>();
  const kept: number[] = [];
  const indexOf = new Uint32Array(points.length / 3);
  for (let p = 0; p < points.length; p += 3) {
    const point: [number, number, number] = [points[p], points[p + 1], points[p + 2]];
    let index = findNear(buckets, kept, point, tolerance, cell);
    if (index < 0) {
      index = kept.length / 3;
      kept.push(...point);
      const key = hash(Math.floor(point[0] / cell), Math.floor(point[1] / cell), Math.floor(point[2] / cell));
      const bucket = buckets.get(key);
      if (bucket) bucket.push(index);
      else buckets.set(key, [index]);
    }
    indexOf[p / 3] = index;
  }
  return { positions: Float64Array.from(kept), indexOf };
}

/** mm; small enough that a cell seldom holds more than one point of a real mesh. */
const LEAST_CELL = 1e-3;

function findNear(
  buckets: ReadonlyMap<number, number[]>,
  kept: readonly number[],
  [x, y, z]: readonly [number, number, number],
  tolerance: number,
  cell: number,
): number {
  const low = (value: number): number => Math.floor((value - tolerance) / cell);
  const high = (value: number): number => Math.floor((value + tolerance) / cell);
  for (let i = low(x); i <= high(x); i++) {
    for (let j = low(y); j <= high(y); j++) {
      for (let k = low(z); k <= high(z); k++) {
        for (const index of buckets.get(hash(i, j, k)) ?? []) {
          const [dx, dy, dz] = [kept[3 * index] - x, kept[3 * index + 1] - y, kept[3 * index + 2] - z];
          if (dx * dx + dy * dy + dz * dz <= tolerance * tolerance) return index;
        }
      }
    }
  }
  return -1;
}

/** Cells that share a key only cost a look at each other's points. */
function hash(i: number, j: number, k: number): number {
  return Math.imul(i, 73856093) ^ Math.imul(j, 19349663) ^ Math.imul(k, 83492791);
}
