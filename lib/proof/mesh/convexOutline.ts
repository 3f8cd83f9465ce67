/** Three coordinates of a corner of a convex outline, mm. */
export type Corner = [number, number, number];

/** What of a convex outline lies where a linear function is not negative. */
export function cutBy(outline: readonly Corner[], inside: (corner: Corner) => number): Corner[] {
  const kept: Corner[] = [];
  outline.forEach((corner, i) => {
    const next = outline[(i + 1) % outline.length];
    const here = inside(corner);
    const there = inside(next);
    if (here >= 0) kept.push(corner);
    if (here >= 0 === there >= 0) return;
    const share = here / (here - there);
    kept.push([0, 1, 2].map((k) => corner[k] + share * (next[k] - corner[k])) as Corner);
  });
  return kept;
}

/** Area and centre of area of a convex outline by its first two coordinates; the third goes along. */
export function middleOf(outline: readonly Corner[]): { area: number; middle: Corner } {
  let twice = 0;
  const sum: Corner = [0, 0, 0];
  for (let i = 2; i < outline.length; i++) {
    const [p, q, r] = [outline[0], outline[i - 1], outline[i]];
    const part = Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
    twice += part;
    for (let k = 0; k < 3; k++) sum[k] += (part * (p[k] + q[k] + r[k])) / 3;
  }
  return { area: twice / 2, middle: sum.map((x) => x / twice) as Corner };
}
