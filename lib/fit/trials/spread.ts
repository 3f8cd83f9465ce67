/** A figure with its uncertainty. */
export interface Uncertain {
  mean: number;
  /** Standard deviation. */
  sd: number;
  /** It lies between `least` and `most` with a chance of 80 %, below and above with 10 % each. */
  least: number;
  most: number;
}

/** Mean and spread of values with weights that are together 1. */
export function spreadOf(values: ArrayLike<number>, weights: ArrayLike<number>): Uncertain {
  let [mean, square] = [0, 0];
  for (let i = 0; i < values.length; i++) mean += weights[i] * values[i];
  for (let i = 0; i < values.length; i++) square += weights[i] * (values[i] - mean) ** 2;
  const order = Uint32Array.from({ length: values.length }, (_, i) => i).sort(
    (a, b) => values[a] - values[b],
  );
  const quantile = (share: number) => {
    let below = 0;
    for (const i of order) {
      below += weights[i];
      if (below >= share) return values[i];
    }
    return values[order[order.length - 1]];
  };
  return { mean, sd: Math.sqrt(square), least: quantile(0.1), most: quantile(0.9) };
}
