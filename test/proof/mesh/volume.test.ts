import { describe, expect, it } from 'vitest';
import { meshArea, meshBounds, meshCentroid, meshVolume } from '../../../lib/proof/mesh/volume.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { box, meshOf, type Point, sphere, tetrahedron, torus, turnedOver } from './fixtures.js';
import { PLACEMENTS, placed, placedPoint } from './placement.js';

describe('volume, area and centroid', () => {
  const cases: { name: string; mesh: Mesh; volume: number; area: number; centroid: Point }[] = [
    { name: 'box', mesh: box([1, 2, 3], [3, 5, 8]), volume: 30, area: 62, centroid: [2, 3.5, 5.5] },
    {
      name: 'corner tetrahedron',
      mesh: tetrahedron([0, 0, 0], [1, 0, 0], [0, 2, 0], [0, 0, 3]),
      volume: 1,
      area: (2 + 6 + 3) / 2 + Math.sqrt(36 + 9 + 4) / 2,
      centroid: [0.25, 0.5, 0.75],
    },
    {
      name: 'octahedron',
      mesh: sphere(0),
      volume: 4 / 3,
      area: 4 * Math.sqrt(3),
      centroid: [0, 0, 0],
    },
    {
      name: 'regular tetrahedron of side √8',
      mesh: tetrahedron([1, 1, 1], [-1, 1, -1], [1, -1, -1], [-1, -1, 1]),
      volume: 8 / 3,
      area: 8 * Math.sqrt(3),
      centroid: [0, 0, 0],
    },
  ];
  for (const { name, mesh, volume, area, centroid } of cases)
    it(`match the closed forms of a ${name}`, () => {
      for (const placement of PLACEMENTS) {
        const { scale } = placement;
        const body = placed(mesh, placement);
        expect(meshVolume(body) / scale ** 3).toBeCloseTo(volume, 10);
        expect(meshVolume(turnedOver(body)) / scale ** 3).toBeCloseTo(-volume, 10);
        expect(meshArea(body) / scale ** 2).toBeCloseTo(area, 10);
        const expected = placedPoint(centroid, placement);
        for (const each of [body, turnedOver(body)])
          meshCentroid(each).forEach((value, axis) => {
            expect((value - expected[axis]) / scale).toBeCloseTo(0, 10);
          });
      }
    });

  it('come close to a true sphere and torus as steps grow', () => {
    expect(meshVolume(sphere(6)) / ((4 / 3) * Math.PI)).toBeCloseTo(1, 2);
    expect(meshArea(sphere(6)) / (4 * Math.PI)).toBeCloseTo(1, 3);
    expect(meshVolume(torus(5, 1, 200, 100)) / (2 * Math.PI ** 2 * 5)).toBeCloseTo(1, 2);
    expect(meshArea(torus(5, 1, 200, 100)) / (4 * Math.PI ** 2 * 5)).toBeCloseTo(1, 3);
  });

  it('keep their digits far from the origin', () => {
    const far = placed(box([0, 0, 0], [1, 1, 1]), {
      turns: [0, 0, 0],
      scale: 1,
      mirrored: false,
      shift: [2 ** 30, -(2 ** 30), 2 ** 30],
    });
    expect(meshVolume(far)).toBe(1);
    expect(meshCentroid(far)).toEqual([2 ** 30 + 0.5, -(2 ** 30) + 0.5, 2 ** 30 + 0.5]);
  });
});

describe('meshBounds', () => {
  it('holds used vertices only', () => {
    const mesh = meshOf(
      [
        [1, 2, 3],
        [-4, 2, 3],
        [1, 5, -6],
        [99, 99, 99],
      ],
      [[0, 1, 2]],
    );
    expect(meshBounds(mesh)).toEqual({ min: [-4, 2, -6], max: [1, 5, 3] });
  });
});
