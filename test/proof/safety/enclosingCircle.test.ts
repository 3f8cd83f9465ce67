import fc from 'fast-check';
import { expect, it } from 'vitest';
import { enclosingCircle } from '../../../lib/proof/safety/enclosingCircle.js';

/** Smallest circle by trying every pair and every three points. */
function byForce(points: Float64Array): number {
  const count = points.length / 2;
  const at = (i: number): [number, number] => [points[2 * i], points[2 * i + 1]];
  let best = count === 1 ? 0 : Number.POSITIVE_INFINITY;
  const offer = (x: number, y: number, radius: number) => {
    if (radius >= best || !Number.isFinite(radius)) return;
    for (let i = 0; i < count; i++)
      if (Math.hypot(at(i)[0] - x, at(i)[1] - y) > radius * (1 + 1e-9) + 1e-12) return;
    best = radius;
  };
  for (let i = 0; i < count; i++)
    for (let j = 0; j < i; j++) {
      const [[ax, ay], [bx, by]] = [at(i), at(j)];
      offer((ax + bx) / 2, (ay + by) / 2, Math.hypot(ax - bx, ay - by) / 2);
      for (let k = 0; k < j; k++) {
        const [cx, cy] = at(k);
        const d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by));
        const [a, b, c] = [ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy];
        const x = (a * (by - cy) + b * (cy - ay) + c * (ay - by)) / d;
        const y = (a * (cx - bx) + b * (ax - cx) + c * (bx - ax)) / d;
        offer(x, y, Math.hypot(ax - x, ay - y));
      }
    }
  return best;
}

const coordinate = fc.integer({ min: -20, max: 20 });

it('is as small as trying all pairs and threes, for points on a grid: in line, twice, on one circle', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 12 }), (grid) => {
      const points = Float64Array.from(grid.flat());
      const circle = enclosingCircle(points);
      expect(circle.radius).toBeCloseTo(byForce(points), 7);
      for (const [x, y] of grid)
        expect(Math.hypot(x - circle.x, y - circle.y)).toBeLessThanOrEqual(circle.radius + 1e-7);
    }),
    { numRuns: 500 },
  );
});

it('is a point for one point and nothing for none', () => {
  expect(enclosingCircle(Float64Array.of(3, 4))).toEqual({ x: 3, y: 4, radius: 0 });
  expect(enclosingCircle(new Float64Array(0)).radius).toBe(-1);
});
