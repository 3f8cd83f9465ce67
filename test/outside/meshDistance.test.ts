import fc from 'fast-check';
import createKernel, { type Manifold } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { edgeDefects } from '../../lib/proof/mesh/edges.js';
import { leastDistance } from '../../lib/proof/mesh/leastDistance.js';
import { triangleTree } from '../../lib/proof/mesh/triangleTree.js';
import { meshArea, meshVolume } from '../../lib/proof/mesh/volume.js';
import type { Mesh } from '../../lib/solid/mesh.js';
import { box, sphere, star, torus } from '../proof/mesh/fixtures.js';
import { fuzz, lumps, placements } from '../proof/mesh/fuzz.js';
import { placed } from '../proof/mesh/placement.js';

/** Reference: manifold-3d, a general-purpose kernel for solid meshes, reading the same triangles. */
let kernel: Awaited<ReturnType<typeof createKernel>>;

beforeAll(async () => {
  kernel = await createKernel();
  kernel.setup();
});

/** The kernel holds vertices in 32 bits, so both sides get the same rounded ones. */
function rounded(mesh: Mesh): Mesh {
  return { ...mesh, positions: mesh.positions.map(Math.fround) };
}

function read({ positions, triangles }: Mesh): Manifold {
  return new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions),
      triVerts: triangles.slice(),
    }),
  );
}

/** What `use` makes of the kernel's readings of some meshes, which are freed afterwards. */
function withKernel<T>(meshes: Mesh[], use: (...bodies: Manifold[]) => T): T {
  const bodies = meshes.map(read);
  try {
    return use(...bodies);
  } finally {
    for (const body of bodies) body.delete();
  }
}

/** The kernel's verdict on a mesh: its constructor throws what it refuses. */
function statusOf(mesh: Mesh): string {
  try {
    return withKernel([mesh], (reference) => reference.status());
  } catch (error) {
    return (error as { code: string }).code;
  }
}

const gearLike = { teeth: 11, perTooth: 16, layers: 6, depth: 3, height: 10, twist: 0.3 };
const bodies: fc.Arbitrary<Mesh> = fc.oneof(
  lumps,
  fc.constantFrom(
    box([-1, -0.5, -0.25], [1, 0.5, 0.25]),
    sphere(3),
    torus(1, 0.3, 30, 12),
    placed(star({ ...gearLike, radius: 10, bore: 3 }), scaled(0.1)),
    placed(star({ ...gearLike, radius: 12.25, bore: 0, wall: 16 }), scaled(0.1)),
  ),
);

function scaled(scale: number) {
  return {
    turns: [0, 0, 0] as [number, number, number],
    scale,
    mirrored: false,
    shift: [0, 0, 0] as [number, number, number],
  };
}

describe('against manifold-3d', () => {
  it('leastDistance is its least gap', () => {
    const seen = { apart: 0, met: 0, beyond: 0 };
    fuzz(
      fc.property(bodies, bodies, placements(3), placements(2), (first, second, here, there) => {
        const [a, b] = [rounded(placed(first, here)), rounded(placed(second, there))];
        const within = 3;
        const found = leastDistance(triangleTree(a), triangleTree(b), within);
        const gap = withKernel([a, b], (p, q) => p.minGap(q, within));
        if (found === null) seen.beyond++;
        else if (found.distance > 0) seen.apart++;
        else seen.met++;
        expect(Math.abs((found?.distance ?? within) - gap)).toBeLessThan(1e-9);
      }),
      100,
    );
    expect(Math.min(seen.apart, seen.met, seen.beyond)).toBeGreaterThan(5);
  });

  it('leastDistance is its least gap between a body and the ring around it', () => {
    const inner = rounded(star({ ...gearLike, radius: 10, bore: 3 }));
    fuzz(
      fc.property(fc.constantFrom(11.75, 12, 12.25, 13), placements(0.3), (radius, { shift }) => {
        const ring = star({ ...gearLike, radius, bore: 0, wall: 16 });
        const outer = rounded(placed(ring, { ...scaled(1), shift }));
        const found = leastDistance(triangleTree(inner), triangleTree(outer), 5)!;
        const gap = withKernel([inner, outer], (p, q) => p.minGap(q, 5));
        expect(found.inside).toBe(false);
        expect(Math.abs(found.distance - gap)).toBeLessThan(1e-9);
      }),
      8,
    );
  });

  it('volume, area and genus are its own, and a body it accepts has no defects', () => {
    fuzz(
      fc.property(bodies, placements(4), (mesh, placement) => {
        const body = rounded(placed(mesh, placement));
        const defects = edgeDefects(body);
        expect(defects.watertight).toBe(true);
        withKernel([body], (reference) => {
          expect(reference.status()).toBe('NoError');
          expect(reference.genus()).toBe(defects.genus);
          expect(meshVolume(body) / reference.volume()).toBeCloseTo(1, 6);
          expect(meshArea(body) / reference.surfaceArea()).toBeCloseTo(1, 6);
        });
      }),
      100,
    );
  });

  it('a body it refuses as not manifold has open, doubled or misoriented edges, and the other way round', () => {
    const edits = fc.constantFrom<(triangles: number[], at: number) => number[]>(
      (triangles) => triangles,
      (triangles, at) => triangles.filter((_, i) => i < 3 * at || i >= 3 * at + 3),
      (triangles, at) => triangles.with(3 * at, triangles[3 * at + 1]).with(3 * at + 1, triangles[3 * at]),
      (triangles, at) => [...triangles, ...triangles.slice(3 * at, 3 * at + 3)],
      (triangles, at) => triangles.with(3 * at, (triangles[3 * at] + 40) % 66),
    );
    const seen = { sound: 0, broken: 0 };
    fuzz(
      fc.property(lumps, edits, fc.nat(127), (mesh, edit, at) => {
        const body = rounded({ ...mesh, triangles: Uint32Array.from(edit([...mesh.triangles], at)) });
        const { open, doubled, misoriented } = edgeDefects(body);
        const sound = open + doubled + misoriented === 0;
        if (sound) seen.sound++;
        else seen.broken++;
        expect(statusOf(body)).toBe(sound ? 'NoError' : 'NotManifold');
      }),
      100,
    );
    expect(Math.min(seen.sound, seen.broken)).toBeGreaterThan(3);
  });
});
