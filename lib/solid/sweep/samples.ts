/** Barycentric grid over a triangle, its edges included. */
export const SAMPLES: readonly (readonly [number, number, number])[] = barycentricGrid(7);

function barycentricGrid(order: number): [number, number, number][] {
  const points: [number, number, number][] = [];
  for (let i = 0; i <= order; i++)
    for (let j = 0; j <= order - i; j++) points.push([i / order, j / order, (order - i - j) / order]);
  return points;
}
