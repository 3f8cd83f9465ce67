import { cholesky, solveLower, solveUpper } from './cholesky.js';
import { logDensity, type Mode, type NormalPrior, posteriorMode } from './mode.js';
import { normalPoints } from './normalPoints.js';
import { boundariesOf, type OrdinalData, parameterCount, widthOf } from './ordinalModel.js';

/** Parameter values with their weights: together they stand for the posterior density. */
export interface Posterior {
  /** Of each node; together 1. */
  weights: Float64Array;
  /** Boundaries of each node, lowest first. */
  boundaries: number[][];
  /** Width of each node. */
  widths: Float64Array;
  /** How many independent draws the nodes are worth: (sum of weights)² / sum of their squares. */
  worth: number;
}

/** Enough for a quantile to within a thirtieth of its spread or so. */
const WORTH = 500;
const FEWEST = 2048;
const MOST = 32_768;
/** So much of the nodes comes from the prior, so that no region which it allows is left out. */
const FROM_PRIOR = 0.4;
/** The other nodes are spread wider than the density is thought to be, since its flanks may be less steep. */
const SPREAD = 1.25;

/** A normal density, by its middle and a triangle L with L Lᵀ its precision. */
type Normal = Pick<Mode, 'parameters' | 'lower'>;

/**
 * The posterior of the ordinal model by importance weights: nodes from a mixture of the prior and a normal density at
 * the posterior's mode, each weighted by prior times likelihood over the density that it came from. Nothing is
 * approximated by the normal density but the places of the nodes. Where few nodes carry the weight, more are taken,
 * around the middle and with the spread that were found.
 * @param prior with finite standard deviations
 */
export function posteriorOf(data: OrdinalData, prior: NormalPrior): Posterior {
  let near: Normal = posteriorMode(data, prior);
  for (let count = FEWEST; ; count *= 2) {
    const { nodes, ...found } = weighted(data, prior, near, count);
    if (found.worth >= WORTH || count >= MOST) return found;
    near = normalOf(nodes, found.weights) ?? near;
  }
}

function weighted(data: OrdinalData, prior: NormalPrior, near: Normal, count: number) {
  const size = parameterCount(data);
  const fromPrior = Math.round(count * FROM_PRIOR);
  const points = [normalPoints(fromPrior, size), normalPoints(count - fromPrior, size)];
  const nodes = Array.from({ length: count }, (_, i) => {
    const inPrior = i < fromPrior;
    const at = (inPrior ? i : i - fromPrior) * size;
    const point = points[inPrior ? 0 : 1].subarray(at, at + size);
    return inPrior ? point.map((p, j) => prior.mean[j] + prior.sd[j] * p) : around(near, point);
  });
  const weights = Float64Array.from(
    nodes,
    (node) => logDensity(data, prior, node) - logSource(node, prior, near),
  );
  const most = weights.reduce((a, b) => Math.max(a, b));
  let [sum, squares] = [0, 0];
  for (let i = 0; i < count; i++) {
    weights[i] = Math.exp(weights[i] - most);
    sum += weights[i];
    squares += weights[i] ** 2;
  }
  for (let i = 0; i < count; i++) weights[i] /= sum;
  return {
    nodes,
    weights,
    boundaries: nodes.map((node) => boundariesOf(node, data.levels)),
    widths: Float64Array.from(nodes, (node) => widthOf(node, data.levels)),
    worth: sum ** 2 / squares,
  };
}

function around({ parameters, lower }: Normal, point: Float64Array): Float64Array {
  return solveUpper(lower, point).map((away, i) => parameters[i] + SPREAD * away);
}

/** The normal density with the mean and the covariance of weighted nodes; undefined where they are too few. */
function normalOf(nodes: readonly Float64Array[], weights: Float64Array): Normal | undefined {
  const size = nodes[0].length;
  const parameters = new Float64Array(size);
  const covariance = new Float64Array(size * size);
  for (const [n, node] of nodes.entries())
    for (let i = 0; i < size; i++) parameters[i] += weights[n] * node[i];
  for (const [n, node] of nodes.entries())
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++)
        covariance[i * size + j] += weights[n] * (node[i] - parameters[i]) * (node[j] - parameters[j]);
  const root = cholesky(covariance, size);
  const lower = root && cholesky(inverse(root, size), size);
  return lower && { parameters, lower };
}

function inverse(root: Float64Array, size: number): Float64Array {
  const columns = Array.from({ length: size }, (_, j) => {
    const unit = Float64Array.from({ length: size }, (_, i) => (i === j ? 1 : 0));
    return solveUpper(root, solveLower(root, unit));
  });
  return Float64Array.from({ length: size * size }, (_, i) => columns[i % size][Math.floor(i / size)]);
}

/** Logarithm of the density that nodes come from, but for the factor (2π)^(−size / 2) that both parts share. */
function logSource(node: Float64Array, prior: NormalPrior, { parameters, lower }: Normal): number {
  const size = node.length;
  let [inPrior, nearby] = [Math.log(FROM_PRIOR), Math.log(1 - FROM_PRIOR)];
  for (let i = 0; i < size; i++) {
    const away = (node[i] - prior.mean[i]) / prior.sd[i];
    inPrior -= (away * away) / 2 + Math.log(prior.sd[i]);
    let scaled = 0;
    for (let k = i; k < size; k++) scaled += lower[k * size + i] * (node[k] - parameters[k]);
    scaled /= SPREAD;
    nearby += Math.log(lower[i * size + i] / SPREAD) - (scaled * scaled) / 2;
  }
  const larger = Math.max(inPrior, nearby);
  return larger + Math.log(Math.exp(inPrior - larger) + Math.exp(nearby - larger));
}
