import type { LiveBody } from '../liveData.js';

/** A body where it stands. */
export interface Placed {
  body: LiveBody;
  x: number;
  y: number;
  angle: number;
}

/** The two nearest points of two outlines inside a window, mm; null where not both are seen there. */
export interface Nearest {
  from: [number, number];
  to: [number, number];
  distance: number;
}

/** Runs in the page, so it names nothing outside itself. */
export function nearest(
  one: Placed,
  other: Placed,
  [cx, cy]: [number, number],
  reach: number,
): Nearest | null {
  type Line = [number, number, number, number];
  const linesOf = ({ body, x, y, angle }: Placed): Line[] => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const lines: Line[] = [];
    for (const loop of body.loops) {
      let px = 0;
      let py = 0;
      // One point more than there are: the first again, to close the outline.
      for (let i = 0; i <= loop.length; i += 2) {
        const [u, v] = [loop[i % loop.length], loop[(i % loop.length) + 1]];
        const qx = u * cos - v * sin + x;
        const qy = u * sin + v * cos + y;
        if (i > 0 && Math.hypot((px + qx) / 2 - cx, (py + qy) / 2 - cy) < reach) lines.push([px, py, qx, qy]);
        [px, py] = [qx, qy];
      }
    }
    return lines;
  };
  let best: Nearest | null = null;
  const tryPoint = (x: number, y: number, [ax, ay, bx, by]: Line, swap: boolean) => {
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
    const foot: [number, number] = [ax + t * dx, ay + t * dy];
    const distance = Math.hypot(x - foot[0], y - foot[1]);
    if (best && distance >= best.distance) return;
    best = swap ? { from: foot, to: [x, y], distance } : { from: [x, y], to: foot, distance };
  };
  const [first, second] = [linesOf(one), linesOf(other)];
  for (const a of first)
    for (const b of second) {
      tryPoint(a[0], a[1], b, false);
      tryPoint(b[0], b[1], a, true);
    }
  return best;
}
