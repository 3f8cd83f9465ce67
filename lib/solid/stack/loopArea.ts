/**
 * Twice the area within a loop of vertices, mm²: above 0 when it runs counter-clockwise.
 * @param p x, y, z of vertex i at 3i
 */
export function loopArea(loop: readonly number[], p: ArrayLike<number>): number {
  let twice = 0;
  for (let i = 0, j = loop.length - 1; i < loop.length; j = i++)
    twice += p[3 * loop[j]] * p[3 * loop[i] + 1] - p[3 * loop[i]] * p[3 * loop[j] + 1];
  return twice;
}
