/**
 * Ordinal logistic regression (proportional odds). An outcome is above level k with the chance
 *
 *     F((x − boundary_k − shift) / width),   F(u) = 1 / (1 + exp(−u)),
 *
 * x is the gap (in general: the predictor), boundary_k the x at which half of all outcomes are above level k, width
 * how gradually outcomes change around it, shift what a trial's own conditions move all boundaries by.
 *
 * Parameters stand in one list, so that any values of them are valid and none needs a limit:
 * first boundary, logarithms of the distances between neighbouring boundaries, logarithm of the width, shifts.
 *
 * Source: P. McCullagh, Regression Models for Ordinal Data, J. R. Statist. Soc. B 42 (1980) 109-142 (from memory).
 */
export interface OrdinalData {
  /** How many levels an outcome has, at least 2. */
  levels: number;
  /** How many shifts there are. */
  shifts: number;
  observations: readonly Observation[];
}

/** One outcome. */
export interface Observation {
  x: number;
  /** 0 for the lowest level. */
  level: number;
  /** Which shifts apply, by their number; those of the conditions asked about have none. */
  shifts: readonly number[];
}

/** How many parameters there are: boundaries, width, shifts. */
export function parameterCount({ levels, shifts }: OrdinalData): number {
  return levels + shifts;
}

/** The boundaries, lowest first, that parameters stand for. */
export function boundariesOf(parameters: ArrayLike<number>, levels: number): number[] {
  const boundaries = [parameters[0]];
  for (let k = 1; k < levels - 1; k++) boundaries.push(boundaries[k - 1] + Math.exp(parameters[k]));
  return boundaries;
}

/** The width that parameters stand for. */
export function widthOf(parameters: ArrayLike<number>, levels: number): number {
  return Math.exp(parameters[levels - 1]);
}

/** The chance of each level at x, lowest first, written into `chances`. */
export function chancesAt(x: number, boundaries: readonly number[], width: number, chances: number[]): void {
  let above = 1;
  for (let k = 0; k < boundaries.length; k++) {
    const next = 1 / (1 + Math.exp((boundaries[k] - x) / width));
    chances[k] = above - next;
    above = next;
  }
  chances[boundaries.length] = above;
}

/**
 * Logarithm of the chance of all observations together.
 * @param gradient where given, its derivative by each parameter is added here
 */
export function logLikelihood(
  data: OrdinalData,
  parameters: ArrayLike<number>,
  gradient?: Float64Array,
): number {
  const { levels, observations } = data;
  const boundaries = boundariesOf(parameters, levels);
  const width = widthOf(parameters, levels);
  let sum = 0;
  for (const { x, level, shifts } of observations) {
    let at = x;
    for (const shift of shifts) at -= parameters[levels + shift];
    // Distances from the boundary below and from the one above, in widths: the chance is F(below) − F(above)
    // = F(below) · (1 − F(above)) · (1 − exp(above − below)), in which nothing cancels.
    const below = level > 0 ? (at - boundaries[level - 1]) / width : Number.POSITIVE_INFINITY;
    const above = level < levels - 1 ? (at - boundaries[level]) / width : Number.NEGATIVE_INFINITY;
    const ratio = Math.exp(above - below);
    sum += Math.log1p(-ratio) - softplus(-below) - softplus(above);
    if (!gradient) continue;
    const tied = ratio / (1 - ratio);
    const byBelow = logistic(-below) + tied;
    const byAbove = -logistic(above) - tied;
    if (level > 0) addBoundary(gradient, parameters, level - 1, -byBelow / width);
    if (level < levels - 1) addBoundary(gradient, parameters, level, -byAbove / width);
    gradient[levels - 1] -= (level > 0 ? byBelow * below : 0) + (level < levels - 1 ? byAbove * above : 0);
    for (const shift of shifts) gradient[levels + shift] -= (byBelow + byAbove) / width;
  }
  return sum;
}

/** A boundary's derivative, passed on to the first boundary and to every distance below it. */
function addBoundary(
  gradient: Float64Array,
  parameters: ArrayLike<number>,
  boundary: number,
  slope: number,
): void {
  gradient[0] += slope;
  for (let k = 1; k <= boundary; k++) gradient[k] += slope * Math.exp(parameters[k]);
}

/** F; 0 and 1 at the infinities. */
function logistic(u: number): number {
  return 1 / (1 + Math.exp(-u));
}

/** log(1 + exp(u)), for any u. */
function softplus(u: number): number {
  return u > 0 ? u + Math.log1p(Math.exp(-u)) : Math.log1p(Math.exp(u));
}
