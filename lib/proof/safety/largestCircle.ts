import { isInside } from '../mesh/section.js';

type Outline = readonly (readonly [number, number])[];

/** A circle, mm. */
export interface Circle {
  centre: [number, number];
  radius: number;
}

/** How near to the largest one a circle is found, mm. */
const PRECISION = 0.05;

/**
 * The largest circle inside an outline that keeps out of all others within it; null when none is larger than `least`.
 * Outlines do not cross.
 * A square in which the distance at the middle and half the diagonal do not add up to more than what is found holds
 * nothing larger and is left out; all others are quartered.
 * Source: V. Agafonkin, A new algorithm for finding a visual center of a polygon (2016), from memory.
 * @param least radius, mm
 */
export function largestCircle(outline: Outline, others: readonly Outline[], least: number): Circle | null {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const side = Math.min(maxX - minX, maxY - minY);
  if (!(side > 2 * least)) return null;
  const within = others.filter(([[x, y]]) => isInside(outline, x, y));
  let best: Circle = { centre: [0, 0], radius: least };
  const waiting: [number, number, number][] = [];
  for (let x = minX; x < maxX; x += side)
    for (let y = minY; y < maxY; y += side) waiting.push([x + side / 2, y + side / 2, side / 2]);
  for (let square = waiting.pop(); square; square = waiting.pop()) {
    const [x, y, half] = square;
    const free = isInside(outline, x, y) && !within.some((other) => isInside(other, x, y));
    const distance = Math.min(...[outline, ...within].map((one) => distanceTo(one, x, y)));
    const radius = free ? distance : -distance;
    if (radius > best.radius) best = { centre: [x, y], radius };
    if (radius + half * Math.SQRT2 <= best.radius + PRECISION) continue;
    const quarter = half / 2;
    for (const dx of [-quarter, quarter])
      for (const dy of [-quarter, quarter]) waiting.push([x + dx, y + dy, quarter]);
  }
  return best.radius > least ? best : null;
}

function distanceTo(outline: Outline, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[j];
    const [dx, dy] = [outline[i][0] - ax, outline[i][1] - ay];
    const length = dx * dx + dy * dy;
    const share = length > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
    least = Math.min(least, Math.hypot(x - ax - share * dx, y - ay - share * dy));
  }
  return least;
}
