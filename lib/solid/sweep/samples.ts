/** Shares of the three corners in one point. */
export type Share = readonly [number, number, number];

/** Barycentric grid over a triangle, its edges and corners included. */
export const SAMPLES: readonly Share[] = barycentricGrid(7);

/** Points of a triangle whose corners need no measuring, because they lie on the exact surface. */
export interface Points {
  /** Shares of the three corners, three numbers a point. */
  shares: Float64Array;
  /** So many of them come first: those of the edge between the first corner and the last. */
  onLastEdge: number;
}

export const DENSE: Points = withoutCorners(SAMPLES);

/** Fewer of them, for a first look. */
export const FEW: Points = withoutCorners(barycentricGrid(4));

function barycentricGrid(order: number): Share[] {
  const points: Share[] = [];
  for (let i = 0; i <= order; i++)
    for (let j = 0; j <= order - i; j++) points.push([i / order, j / order, (order - i - j) / order]);
  return points;
}

function withoutCorners(grid: readonly Share[]): Points {
  const inside = grid.filter((share) => !share.includes(1));
  const isOnLastEdge = ([, second]: Share) => second === 0;
  const onLastEdge = inside.filter(isOnLastEdge);
  const others = inside.filter((share) => !isOnLastEdge(share));
  return { shares: Float64Array.from([...onLastEdge, ...others].flat()), onLastEdge: onLastEdge.length };
}
