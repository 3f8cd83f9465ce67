/** Where a linear program has its best point. */
export interface BestPoint {
  /** Largest value of the objective; Infinity when nothing bounds it. */
  value: number;
  /** The point that reaches it; where nothing bounds it, the point from which the way on is free. */
  point: Float64Array;
  /** Constraints that hold the point there: those whose bound, moved, would move the value. */
  heldBy: number[];
}

/** Entries below this share of the largest entry of the constraints are rounding. */
const ROUNDING = 1e-9;
/** Pivots by the steepest column for each variable, before the rule that cannot cycle takes over. */
const STEEPEST = 20;

/**
 * Maximises objective · x over all x with rows · x ≤ bounds, every variable free in sign.
 * @param rows constraint i holds numbers i n … i n + n − 1, n variables
 * @param bounds all ≥ 0, so that x = 0 is allowed: nothing needs to be found to start from
 * Method: simplex on a dictionary (G. B. Dantzig). A free variable that has entered the basis never leaves it. After
 * many pivots R. G. Bland's rule (smallest index first), which cannot cycle. Cost: constraints × variables a pivot; the
 * table is kept by columns, since there are many more constraints than variables and loops should be long.
 */
export function maximise(
  objective: ArrayLike<number>,
  rows: ArrayLike<number>,
  bounds: ArrayLike<number>,
): BestPoint {
  const n = objective.length;
  const m = bounds.length;
  const table = new Float64Array(m * n);
  for (let i = 0, at = 0; i < m; i++) for (let j = 0; j < n; j++) table[j * m + i] = rows[at++];
  const right = Float64Array.from(bounds);
  const cost = Float64Array.from(objective);
  // Names: 0 … n − 1 the variables, n … n + m − 1 the slacks.
  const columns = new Int32Array(n);
  for (let j = 0; j < n; j++) columns[j] = j;
  const basis = new Int32Array(m);
  for (let i = 0; i < m; i++) basis[i] = n + i;
  const tolerance = ROUNDING * largest(table);
  const costTolerance = ROUNDING * largest(cost);
  let value = 0;
  let free = false;
  for (let pivots = 0; ; pivots++) {
    const column = entering(cost, columns, n, costTolerance, pivots > STEEPEST * (n + 1));
    if (column < 0) break;
    const row = leaving(table, right, basis, n, column, Math.sign(cost[column]), tolerance);
    if (row < 0) {
      free = true;
      break;
    }
    value += pivot(table, right, cost, row, column);
    const left = basis[row];
    basis[row] = columns[column];
    columns[column] = left;
  }
  const point = new Float64Array(n);
  for (let i = 0; i < m; i++) if (basis[i] < n) point[basis[i]] = right[i];
  const heldBy: number[] = [];
  for (let j = 0; j < n; j++) if (columns[j] >= n && cost[j] < -costTolerance) heldBy.push(columns[j] - n);
  return { value: free ? Number.POSITIVE_INFINITY : value, point, heldBy: heldBy.sort((a, b) => a - b) };
}

/** The column that gains most (with `bland`, the one of least name that gains), −1 at the best point. */
function entering(
  cost: Float64Array,
  columns: Int32Array,
  n: number,
  tolerance: number,
  bland: boolean,
): number {
  let chosen = -1;
  for (let j = 0; j < n; j++) {
    const gain = columns[j] < n ? Math.abs(cost[j]) : cost[j];
    if (gain <= tolerance) continue;
    const better =
      chosen < 0 || (bland ? columns[j] < columns[chosen] : gain > gainOf(cost, columns, n, chosen));
    if (better) chosen = j;
  }
  return chosen;
}

function gainOf(cost: Float64Array, columns: Int32Array, n: number, j: number): number {
  return columns[j] < n ? Math.abs(cost[j]) : cost[j];
}

/** The slack that reaches 0 first, −1 when none does; of slacks that reach it together the safest to divide by. */
function leaving(
  table: Float64Array,
  right: Float64Array,
  basis: Int32Array,
  n: number,
  column: number,
  direction: number,
  tolerance: number,
): number {
  let chosen = -1;
  let least = Number.POSITIVE_INFINITY;
  let divisor = 0;
  const start = column * basis.length;
  for (let i = 0; i < basis.length; i++) {
    const rate = direction * table[start + i];
    if (rate <= tolerance || basis[i] < n) continue;
    const reach = Math.max(0, right[i]) / rate;
    const tied = Math.abs(reach - least) <= 1e-12 * least;
    if (tied ? rate > divisor : reach < least) {
      chosen = i;
      least = reach;
      divisor = rate;
    }
  }
  return chosen;
}

/** Exchanges a basic for a non-basic name. Returns what the objective gains. */
function pivot(
  table: Float64Array,
  right: Float64Array,
  cost: Float64Array,
  row: number,
  column: number,
): number {
  const m = right.length;
  const start = column * m;
  const inverse = 1 / table[start + row];
  const costFactor = cost[column];
  right[row] *= inverse;
  const ratio = right[row];
  for (let i = 0; i < m; i++) right[i] -= table[start + i] * ratio;
  right[row] = ratio;
  for (let j = 0, at = 0; j < cost.length; j++, at += m) {
    // With many parts most columns have nothing in the row, and stay as they are.
    if (j === column || table[at + row] === 0) continue;
    const share = table[at + row] * inverse;
    for (let i = 0; i < m; i++) table[at + i] -= table[start + i] * share;
    table[at + row] = share;
    cost[j] -= costFactor * share;
  }
  for (let i = 0; i < m; i++) table[start + i] *= -inverse;
  table[start + row] = inverse;
  cost[column] = -costFactor * inverse;
  return costFactor * ratio;
}

function largest(entries: Float64Array): number {
  let most = 0;
  for (let i = 0; i < entries.length; i++) most = Math.max(most, Math.abs(entries[i]));
  return most;
}
