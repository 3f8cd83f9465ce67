/**
 * Better-shaped triangles over the same region: wherever two of them share an edge and the angles that face it add up
 * to more than 180°, the edge is swapped for the other diagonal (Lawson's flips), which leaves no needle that can be
 * avoided. Edges of the region stay.
 * Source: C. L. Lawson, Software for C1 surface interpolation (1977), from memory.
 * @param triangles vertex ids, counter-clockwise seen from +z, edge to edge
 * @param positions x, y, z of vertex i at 3i
 */
export function flipped(triangles: readonly number[], positions: ArrayLike<number>): number[] {
  const ids = triangles.slice();
  const count = positions.length / 3;
  const cornerOf = new Map<number, number>();
  const key = (a: number, b: number) => a * count + b;
  const note = (triangle: number) => {
    for (let k = 0; k < 3; k++)
      cornerOf.set(key(ids[3 * triangle + k], ids[3 * triangle + ((k + 1) % 3)]), 3 * triangle + k);
  };
  for (let t = 0; 3 * t < ids.length; t++) note(t);
  const waiting = [...cornerOf.keys()];
  // Each flip makes the least angle larger, so there is an end; the limit only keeps rounding from turning in circles.
  for (let left = 50 * waiting.length; waiting.length && left > 0; left--) {
    const edge = waiting.pop()!;
    const a = Math.floor(edge / count);
    const b = edge % count;
    const here = cornerOf.get(edge);
    const there = cornerOf.get(key(b, a));
    if (here === undefined || there === undefined) continue;
    const c = ids[opposite(here)];
    const d = ids[opposite(there)];
    if (!shouldFlip(positions, a, b, c, d)) continue;
    cornerOf.delete(edge);
    cornerOf.delete(key(b, a));
    const one = Math.floor(here / 3);
    const other = Math.floor(there / 3);
    [ids[3 * one], ids[3 * one + 1], ids[3 * one + 2]] = [c, a, d];
    [ids[3 * other], ids[3 * other + 1], ids[3 * other + 2]] = [d, b, c];
    note(one);
    note(other);
    waiting.push(key(c, a), key(a, d), key(d, b), key(b, c));
  }
  return ids;
}

/** The corner that faces the edge starting at `corner`. */
function opposite(corner: number): number {
  return corner - (corner % 3) + ((corner + 2) % 3);
}

/** Edge a–b with c on its left and d on its right: the angles at c and d exceed 180° together, and c–d lies inside. */
function shouldFlip(p: ArrayLike<number>, a: number, b: number, c: number, d: number): boolean {
  const atC = angleAt(p, c, a, b);
  const atD = angleAt(p, d, b, a);
  if (atC + atD <= Math.PI + SLACK) return false;
  return turns(p, c, a, d) > 0 && turns(p, d, b, c) > 0;
}

/** Rounding of angles, radians. */
const SLACK = 1e-9;

function angleAt(p: ArrayLike<number>, at: number, from: number, to: number): number {
  const ux = p[3 * from] - p[3 * at];
  const uy = p[3 * from + 1] - p[3 * at + 1];
  const vx = p[3 * to] - p[3 * at];
  const vy = p[3 * to + 1] - p[3 * at + 1];
  return Math.atan2(Math.abs(ux * vy - uy * vx), ux * vx + uy * vy);
}

/** Twice the area of the triangle a, b, c: above 0 when it turns counter-clockwise. */
function turns(p: ArrayLike<number>, a: number, b: number, c: number): number {
  return (
    (p[3 * b] - p[3 * a]) * (p[3 * c + 1] - p[3 * a + 1]) -
    (p[3 * b + 1] - p[3 * a + 1]) * (p[3 * c] - p[3 * a])
  );
}
