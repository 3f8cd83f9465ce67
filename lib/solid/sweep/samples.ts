/** Barycentric grid over a triangle, its edges included. */
export const SAMPLES: readonly Share[] = barycentricGrid(7);

/** Fewer of them, for a first look. */
export const FEW_SAMPLES: readonly Share[] = barycentricGrid(4);

/** Shares of the three corners in one point. */
export type Share = readonly [number, number, number];

function barycentricGrid(order: number): Share[] {
  const points: Share[] = [];
  for (let i = 0; i <= order; i++)
    for (let j = 0; j <= order - i; j++) points.push([i / order, j / order, (order - i - j) / order]);
  return points;
}
