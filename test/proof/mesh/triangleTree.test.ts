import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FACET } from '../../../lib/proof/mesh/facets.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { Refusal } from '../../../lib/refusal.js';
import { box, meshOf, sphere, star, together } from './fixtures.js';
import { fuzz, lumps, placements } from './fuzz.js';
import { PLACEMENTS, placed } from './placement.js';

const STAR = {
  teeth: 9,
  perTooth: 12,
  layers: 4,
  radius: 10,
  depth: 3,
  height: 12,
  bore: 3,
  twist: 0.4,
};

describe('triangleTree', () => {
  const meshes = [
    meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
      ],
      [[0, 1, 2]],
    ),
    box([0, 0, 0], [1, 2, 3]),
    sphere(3),
    star(STAR),
    together(box([0, 0, 0], [1, 1, 1]), box([0, 0, 0], [1, 1, 1])),
  ];

  it('holds every triangle once, each inside the boxes of its leaf and of every node above', () => {
    for (const mesh of meshes)
      for (const placement of PLACEMENTS) {
        const tree = triangleTree(placed(mesh, placement));
        const count = mesh.triangles.length / 3;
        expect([...tree.order].sort((i, j) => i - j)).toEqual(Array.from({ length: count }, (_, i) => i));
        expect(tree.boxes.length).toBe(6 * (2 * tree.firstLeaf + 1));
        let outside = 0;
        for (let leaf = 0; leaf <= tree.firstLeaf; leaf++) {
          expect(tree.leafStart[leaf + 1]).toBeGreaterThan(tree.leafStart[leaf]);
          for (let facet = tree.leafStart[leaf]; facet < tree.leafStart[leaf + 1]; facet++)
            for (let i = 0; i < 9; i++) {
              const corner = tree.mesh.triangles[3 * tree.order[facet] + Math.floor(i / 3)];
              const value = tree.mesh.positions[3 * corner + (i % 3)];
              expect(tree.facets[FACET * facet + i]).toBe(value);
              for (let node = tree.firstLeaf + leaf; ; node = (node - 1) >> 1) {
                const at = 6 * node + (i % 3);
                if (value < tree.boxes[at] || value > tree.boxes[at + 3]) outside++;
                if (node === 0) break;
              }
            }
        }
        expect(outside).toBe(0);
      }
  });

  it('gives unit normals by the right-hand rule', () => {
    fuzz(
      fc.property(lumps, placements(10), (mesh, placement) => {
        const { facets } = triangleTree(placed(mesh, placement));
        for (let at = 0; at < facets.length; at += FACET) {
          const [ax, ay, az, bx, by, bz, cx, cy, cz, nx, ny, nz] = facets.subarray(at, at + FACET);
          const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
          const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
          const cross = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
          const length = Math.hypot(...cross);
          expect((nx * cross[0] + ny * cross[1] + nz * cross[2]) / length).toBeCloseTo(1, 12);
          expect(Math.hypot(nx, ny, nz)).toBeCloseTo(1, 12);
        }
      }),
      20,
    );
  });

  it('gives the same tree for the same mesh', () => {
    const [first, second] = [triangleTree(star(STAR)), triangleTree(star(STAR))];
    expect(second).toEqual(first);
  });

  it('refuses what would make every later answer wrong', () => {
    const cube = box([0, 0, 0], [1, 1, 1]);
    const broken = { positions: cube.positions.slice(), triangles: cube.triangles };
    broken.positions[7] = Number.NaN;
    expect(() => triangleTree(broken)).toThrow(Refusal);
    broken.positions[7] = Infinity;
    expect(() => triangleTree(broken)).toThrow(Refusal);
    expect(() => triangleTree({ ...cube, triangles: new Uint32Array(0) })).toThrow(Refusal);
    expect(() => triangleTree({ ...cube, triangles: Uint32Array.of(0, 1) })).toThrow(Refusal);
    expect(() => triangleTree({ ...cube, triangles: Uint32Array.of(0, 1, 8) })).toThrow(Refusal);
  });
});
