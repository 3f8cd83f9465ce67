import { cholesky, solveLower, solveUpper } from './cholesky.js';
import { logLikelihood, type OrdinalData, parameterCount } from './ordinalModel.js';

/** Independent normal priors of the parameters of the ordinal model, in their order. */
export interface NormalPrior {
  mean: readonly number[];
  /** Standard deviations; infinite ones switch the prior off. */
  sd: readonly number[];
}

/** The likeliest parameters, and how sharply they are known. */
export interface Mode {
  parameters: Float64Array;
  /** Lower triangle L; L Lᵀ is the precision: minus the second derivatives of the logarithm of the density. */
  lower: Float64Array;
}

const MOST_STEPS = 200;
const STEP = 1e-5;

/**
 * Logarithm of prior times likelihood, without the prior's constant.
 * @param gradient where given, is overwritten by the derivative
 */
export function logDensity(
  data: OrdinalData,
  prior: NormalPrior,
  at: ArrayLike<number>,
  gradient?: Float64Array,
): number {
  gradient?.fill(0);
  let sum = logLikelihood(data, at, gradient);
  for (let i = 0; i < prior.mean.length; i++) {
    const away = (at[i] - prior.mean[i]) / prior.sd[i];
    sum -= (away * away) / 2;
    if (gradient) gradient[i] -= away / prior.sd[i];
  }
  return sum;
}

/**
 * The parameters at which the posterior density is greatest, by Newton's method with steps damped until they gain;
 * with infinite standard deviations that is maximum likelihood. Starts at the prior's means.
 * @throws Error where nothing is determined, as by maximum likelihood from outcomes that are perfectly separated
 */
export function posteriorMode(data: OrdinalData, prior: NormalPrior): Mode {
  const size = parameterCount(data);
  const gradient = new Float64Array(size);
  let parameters = Float64Array.from(prior.mean);
  let value = logDensity(data, prior, parameters, gradient);
  let damping = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const precision = curvature(data, prior, parameters);
    const lower = damped(precision, size, damping);
    if (lower) {
      const move = solveUpper(lower, solveLower(lower, gradient));
      const next = parameters.map((p, i) => p + move[i]);
      const gained = logDensity(data, prior, next) - value;
      if (gained >= 0) {
        parameters = next;
        value = logDensity(data, prior, parameters, gradient);
        damping = damping > 1e-6 ? damping / 8 : 0;
        if (move.every((m) => Math.abs(m) < 1e-9)) break;
        continue;
      }
      // Rounding is all that is left of the slope.
      if (move.every((m) => Math.abs(m) < 1e-7)) break;
    }
    damping = Math.max(1e-3, damping * 8);
  }
  const lower = cholesky(curvature(data, prior, parameters), size);
  if (!lower) throw new Error('the trials do not determine the model');
  return { parameters, lower };
}

/** Minus the second derivatives, from differences of the first ones. */
function curvature(data: OrdinalData, prior: NormalPrior, at: Float64Array): Float64Array {
  const size = at.length;
  const matrix = new Float64Array(size * size);
  const plus = new Float64Array(size);
  const minus = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const moved = Float64Array.from(at);
    const step = STEP * Math.max(1, Math.abs(at[i]));
    moved[i] = at[i] + step;
    logDensity(data, prior, moved, plus);
    moved[i] = at[i] - step;
    logDensity(data, prior, moved, minus);
    for (let j = 0; j < size; j++) {
      const second = -(plus[j] - minus[j]) / (4 * step);
      matrix[i * size + j] += second;
      matrix[j * size + i] += second;
    }
  }
  return matrix;
}

function damped(precision: Float64Array, size: number, damping: number): Float64Array | undefined {
  if (damping === 0) return cholesky(precision, size);
  const raised = Float64Array.from(precision);
  for (let i = 0; i < size; i++) raised[i * size + i] += damping * (1 + Math.abs(precision[i * size + i]));
  return cholesky(raised, size);
}
