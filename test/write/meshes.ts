import type { Mesh } from '../../lib/solid/mesh.js';

/** An axis-parallel box from `least` to `greatest`, mm: 8 vertices, 12 triangles. */
export function box(least: readonly number[], greatest: readonly number[]): Mesh {
  const positions: number[] = [];
  for (const z of [least[2], greatest[2]]) {
    positions.push(least[0], least[1], z, greatest[0], least[1], z);
    positions.push(greatest[0], greatest[1], z, least[0], greatest[1], z);
  }
  const sides = [0, 1, 2, 3].flatMap((i) => {
    const j = (i + 1) % 4;
    return [i, j, j + 4, i, j + 4, i + 4];
  });
  return {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from([0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, ...sides]),
  };
}

/** A regular prism standing on z = 0 whose sections turn by `turn` radians over its height. */
export function twistedPrism(
  corners: number,
  radius: number,
  height: number,
  turn: number,
  steps = 12,
): Mesh {
  const positions: number[] = [];
  for (let k = 0; k <= steps; k++) {
    for (let i = 0; i < corners; i++) {
      const angle = (2 * Math.PI * i) / corners + (turn * k) / steps;
      positions.push(radius * Math.cos(angle), radius * Math.sin(angle), (height * k) / steps);
    }
  }
  const triangles: number[] = [];
  const top = steps * corners;
  for (let i = 1; i < corners - 1; i++) triangles.push(0, i + 1, i, top, top + i, top + i + 1);
  for (let k = 0; k < steps; k++) {
    for (let i = 0; i < corners; i++) {
      const [a, b] = [k * corners + i, k * corners + ((i + 1) % corners)];
      triangles.push(a, b, b + corners, a, b + corners, a + corners);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A ball on the bed with 2 n² triangles. */
export function ball(radius: number, n: number): Mesh {
  const positions: number[] = [];
  for (let i = 1; i <= n; i++) {
    const polar = (Math.PI * i) / (n + 1);
    for (let j = 0; j < n; j++) {
      const around = (2 * Math.PI * j) / n;
      const width = radius * Math.sin(polar);
      positions.push(width * Math.cos(around), width * Math.sin(around), radius + radius * Math.cos(polar));
    }
  }
  positions.push(0, 0, 2 * radius, 0, 0, 0);
  const triangles: number[] = [];
  for (let j = 0; j < n; j++) {
    const next = (j + 1) % n;
    triangles.push(n * n, j, next, n * n + 1, (n - 1) * n + next, (n - 1) * n + j);
    for (let i = 0; i < n - 1; i++) {
      const [a, b, c, d] = [i * n + j, i * n + next, (i + 1) * n + j, (i + 1) * n + next];
      triangles.push(a, c, d, a, d, b);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Volume by the divergence theorem, mm³; positive when the triangles face outward. */
export function volumeOf({ positions: p, triangles: t }: Mesh): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    six += p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]);
    six += p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]);
    six += p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}

/** Directed edges whose reverse does not occur exactly once, or that occur more than once themselves. */
export function openEdges({ triangles }: Mesh): number {
  const seen = new Map<string, number>();
  const edges: [number, number][] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) edges.push([triangles[i + k], triangles[i + ((k + 1) % 3)]]);
  }
  for (const [a, b] of edges) seen.set(`${a} ${b}`, (seen.get(`${a} ${b}`) ?? 0) + 1);
  return edges.filter(([a, b]) => seen.get(`${a} ${b}`) !== 1 || seen.get(`${b} ${a}`) !== 1).length;
}

/** The same mesh moved, mm. */
export function moved({ positions, triangles }: Mesh, by: readonly number[]): Mesh {
  return { positions: positions.map((value, i) => value + by[i % 3]), triangles };
}
