import earcut from 'earcut';
import type { Mesh } from '../../../lib/solid/mesh.js';

export type Point = [number, number, number];

/** A mesh of plain lists. */
export function meshOf(points: readonly Point[], triangles: readonly Point[]): Mesh {
  return { positions: Float64Array.from(points.flat()), triangles: Uint32Array.from(triangles.flat()) };
}

/** Box between two corners, twelve triangles. */
export function box(min: Point, max: Point): Mesh {
  const points: Point[] = [];
  for (let i = 0; i < 8; i++)
    points.push([i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]]);
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return meshOf(
    points,
    quads.flatMap(([a, b, c, d]): Point[] => [
      [a, b, c],
      [a, c, d],
    ]),
  );
}

/** Tetrahedron on four points, the fourth above the counter-clockwise first three seen from outside below. */
export function tetrahedron(a: Point, b: Point, c: Point, d: Point): Mesh {
  return meshOf(
    [a, b, c, d],
    [
      [0, 2, 1],
      [0, 1, 3],
      [1, 2, 3],
      [2, 0, 3],
    ],
  );
}

/** Sphere of radius 1 about the origin: an octahedron, every triangle split in four `steps` times. */
export function sphere(steps: number): Mesh {
  let points: Point[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  let triangles: Point[] = [
    [0, 2, 4],
    [2, 1, 4],
    [1, 3, 4],
    [3, 0, 4],
    [2, 0, 5],
    [1, 2, 5],
    [3, 1, 5],
    [0, 3, 5],
  ];
  for (let step = 0; step < steps; step++) {
    const middles = new Map<string, number>();
    points = [...points];
    const middle = (i: number, j: number) => {
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      if (!middles.has(key)) {
        const sum = points[i].map((value, axis) => value + points[j][axis]);
        const length = Math.hypot(...sum);
        middles.set(key, points.push(sum.map((value) => value / length) as Point) - 1);
      }
      return middles.get(key)!;
    };
    triangles = triangles.flatMap(([a, b, c]): Point[] => {
      const ab = middle(a, b);
      const bc = middle(b, c);
      const ca = middle(c, a);
      return [
        [a, ab, ca],
        [ab, b, bc],
        [ca, bc, c],
        [ab, bc, ca],
      ];
    });
  }
  return meshOf(points, triangles);
}

/** Torus about z with `n` × `m` quads. */
export function torus(major: number, minor: number, n: number, m: number): Mesh {
  const points: Point[] = [];
  const triangles: Point[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < m; j++) {
      const u = (2 * Math.PI * i) / n;
      const v = (2 * Math.PI * j) / m;
      const r = major + minor * Math.cos(v);
      points.push([r * Math.cos(u), r * Math.sin(u), minor * Math.sin(v)]);
      const a = i * m + j;
      const b = ((i + 1) % n) * m + j;
      const c = ((i + 1) % n) * m + ((j + 1) % m);
      const d = i * m + ((j + 1) % m);
      triangles.push([a, b, c], [a, c, d]);
    }
  }
  return meshOf(points, triangles);
}

/** What makes a toothed, twisted prism like a gear: `teeth` waves, each `perTooth` points, `layers` of strips. */
export interface Star {
  teeth: number;
  perTooth: number;
  layers: number;
  radius: number;
  depth: number;
  height: number;
  /** Radius of a round hole. */
  bore: number;
  /** Total turn over half the height, radians; the upper half turns back. */
  twist: number;
  /** Makes a ring with its waves inside a round outer wall of this radius instead of a body with a bore. */
  wall?: number;
}

/** A star prism with long thin strips along its flanks and flat ends filled by earcut. */
export function star({ teeth, perTooth, layers, radius, depth, height, bore, twist, wall }: Star): Mesh {
  const waves = teeth * perTooth;
  const round = 4 * teeth;
  const points: Point[] = [];
  const triangles: Point[] = [];
  const profile = (count: number, r: (turn: number) => number, turned: number): Point[] =>
    Array.from({ length: count }, (_, i) => {
      const turn = (2 * Math.PI * i) / count;
      return [r(turn) * Math.cos(turn + turned), r(turn) * Math.sin(turn + turned), 0];
    });
  const wave = (turn: number) => radius + (depth / 2) * Math.tanh(2.5 * Math.sin(teeth * turn));
  const plain = wall ?? bore;
  for (let layer = 0; layer <= layers; layer++) {
    const z = (height * layer) / layers;
    const turned = twist * (1 - Math.abs((2 * layer) / layers - 1));
    const ring = [...profile(waves, wave, turned), ...profile(round, () => plain, 0)];
    for (const [x, y] of ring) points.push([x, y, z]);
  }
  const count = waves + round;
  const outward = wall === undefined;
  for (let layer = 0; layer < layers; layer++) {
    // The diagonal follows the hand, as it must on a twisted flank.
    const rises = layer < layers / 2 === twist > 0;
    strips(triangles, layer * count, count, waves, outward, rises);
    strips(triangles, layer * count + waves, count, round, !outward, rises);
  }
  const ends = endCap(points, waves, round, outward);
  const top = layers * count;
  for (const [a, b, c] of ends) triangles.push([a, c, b]);
  for (const [a, b, c] of endCap(points.slice(top), waves, round, outward))
    triangles.push([top + a, top + b, top + c]);
  return meshOf(points, triangles);
}

function strips(
  to: Point[],
  start: number,
  stride: number,
  count: number,
  outward: boolean,
  rises: boolean,
): void {
  for (let i = 0; i < count; i++) {
    const a = start + i;
    const b = start + ((i + 1) % count);
    const [c, d] = [b + stride, a + stride];
    const pair: Point[] = rises
      ? [
          [a, b, d],
          [b, c, d],
        ]
      : [
          [a, b, c],
          [a, c, d],
        ];
    for (const [p, q, r] of pair) to.push(outward ? [p, q, r] : [p, r, q]);
  }
}

/** Counter-clockwise triangles over the first layer of a star. */
function endCap(points: readonly Point[], waves: number, round: number, outward: boolean): Point[] {
  const outer = Array.from({ length: outward ? waves : round }, (_, i) => (outward ? i : waves + i));
  const inner = Array.from({ length: outward ? round : waves }, (_, i) => (outward ? waves + i : i));
  const order = [...outer, ...inner];
  const found = earcut(
    order.flatMap((i) => [points[i][0], points[i][1]]),
    [outer.length],
  );
  const cap: Point[] = [];
  for (let i = 0; i < found.length; i += 3) {
    const [a, b, c] = [order[found[i]], order[found[i + 1]], order[found[i + 2]]];
    const [p, q, r] = [points[a], points[b], points[c]];
    const turn = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
    cap.push(turn > 0 ? [a, b, c] : [a, c, b]);
  }
  return cap;
}

/** Several meshes as one, their vertices kept apart. */
export function together(...meshes: Mesh[]): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const before = positions.length / 3;
    for (const value of mesh.positions) positions.push(value);
    for (const index of mesh.triangles) triangles.push(index + before);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A mesh with every triangle turned over. */
export function turnedOver({ positions, triangles }: Mesh): Mesh {
  return { positions, triangles: triangles.slice().reverse() };
}

/** A lumpy ball: a sphere whose vertices are pulled in or out by the radii given, clean whatever they are. */
export function lump(radii: readonly number[]): Mesh {
  const ball = sphere(2);
  const positions = ball.positions.map((value, i) => value * radii[Math.floor(i / 3) % radii.length]);
  return { positions, triangles: ball.triangles };
}
