/**
 * Points that stand for independent standard normal numbers, spread more evenly than random ones, the same every
 * time: multiples of irrational steps modulo 1 (the additive recurrence of M. Roberts, whose steps are powers of the
 * root of x^(d + 1) = x + 1), two of them turned into two normal numbers by Box and Muller's formula.
 * @param dimensions numbers in a point
 * @returns points one after another
 */
export function normalPoints(count: number, dimensions: number): Float64Array {
  const even = dimensions + (dimensions % 2);
  const steps = irrationalSteps(even);
  const points = new Float64Array(count * dimensions);
  for (let i = 0; i < count; i++)
    for (let d = 0; d < dimensions; d += 2) {
      // Half a step in keeps the first fraction off 0.
      const first = ((i + 0.5) * steps[d]) % 1;
      const second = ((i + 0.5) * steps[d + 1]) % 1;
      const radius = Math.sqrt(-2 * Math.log(1 - first));
      points[i * dimensions + d] = radius * Math.cos(2 * Math.PI * second);
      if (d + 1 < dimensions) points[i * dimensions + d + 1] = radius * Math.sin(2 * Math.PI * second);
    }
  return points;
}

function irrationalSteps(dimensions: number): number[] {
  let root = 1.5;
  for (let i = 0; i < 60; i++) root = (1 + root) ** (1 / (dimensions + 1));
  return Array.from({ length: dimensions }, (_, d) => root ** -(d + 1));
}
