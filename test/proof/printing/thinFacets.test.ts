import { booleans, extrusions, hulls, primitives, text, transforms } from '@jscad/modeling';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { thinPieces } from '../../../lib/proof/printing/thinFacets.js';
import { tallestWall, thinnestPlace } from '../../../lib/proof/printing/thinPlaces.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { fromGeom3, type Geom3 } from '../../../lib/solid/geom3.js';
import type { Mesh } from '../../../lib/solid/mesh.js';
import { evenly } from '../../evenly.js';
import { referenceSet, setOf } from '../../sets.js';

/** Against closed forms: the thickness of plain solids, however they are turned. */
const limits = { wall: 0.45, slot: 0.25, layer: 0.2, tall: 0 };
const piecesOf = (mesh: Mesh, more: object = {}) =>
  thinPieces(triangleTree(mesh), () => true, { ...limits, ...more });
const thinnest = (solid: Geom3, more: object = {}) => thinnestPlace(piecesOf(fromGeom3(solid), more));
const box = (...size: [number, number, number]) => primitives.cuboid({ size });
const turned = (solid: Geom3, [a, b, c]: readonly number[]) => transforms.rotate([a, b, c], solid) as Geom3;

const angles = fc.tuple(
  ...([0, 1, 2].map(() => evenly(-Math.PI, Math.PI)) as [
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
    fc.Arbitrary<number>,
  ]),
);

describe('thin walls', () => {
  test('of fins are found at every angle, with their thickness', () => {
    const fin = fc.tuple(evenly(0.05, 0.3), evenly(0.6, 8), evenly(0.6, 8), angles);
    fc.assert(
      fc.property(fin, ([thickness, wide, high, turn]) => {
        const solid = turned(box(thickness, wide, high), turn);
        const found = thinnest(solid);
        const normal = turned(box(1, 1, 1), turn).transforms.slice(0, 3);
        const least = limits.wall * Math.hypot(normal[0], normal[1]) + limits.layer * Math.abs(normal[2]);
        // A level plate of more than a layer is printed as layers.
        if (thickness >= least) return;
        expect(found).toMatchObject({ between: 'wall' });
        expect(found!.thickness).toBeCloseTo(thickness, 9);
        expect(found!.least).toBeCloseTo(least, 6);
      }),
      { numRuns: 300 },
    );
  });

  test('are those that hold no line: a box as wide as one and as high as a layer', () => {
    expect(thinnest(box(0.449, 5, 3))).toMatchObject({ between: 'wall' });
    expect(thinnest(box(0.45, 5, 3))).toBeNull();
    expect(thinnest(box(5, 5, 0.199))).toMatchObject({ between: 'wall' });
    expect(thinnest(box(5, 5, 0.2))).toBeNull();
    expect(thinnest(turned(box(0.45, 5, 3), [0, Math.PI / 4, 0]))).toMatchObject({ between: 'wall' });
    const both = (0.45 + 0.2) / Math.SQRT2;
    expect(thinnest(turned(box(both + 1e-6, 5, 3), [0, Math.PI / 4, 0]))).toBeNull();
  });

  test('of curved shells are found too', () => {
    const tube = (outer: number, wall: number, segments: number) =>
      booleans.subtract(
        primitives.cylinder({ radius: outer, height: 5, segments }),
        primitives.cylinder({ radius: outer - wall, height: 9, segments }),
      );
    for (const segments of [12, 48, 180]) {
      // Between the sides of two like polygons stands the wall times the cosine of half a side's angle.
      const wall = (thickness: number) => thickness / Math.cos(Math.PI / segments);
      expect(thinnest(tube(6, wall(0.3), segments))!.thickness).toBeCloseTo(0.3, 4);
      expect(thinnest(tube(6, wall(0.46), segments))).toBeNull();
    }
    expect(thinnest(primitives.cylinder({ radius: 0.15, height: 5, segments: 48 }))!.thickness).toBeLessThan(
      0.3,
    );
  });

  test('are none on thick solids, however they are turned', () => {
    const thick = fc.oneof(
      fc.tuple(evenly(1, 9), evenly(1, 9), evenly(1, 9)).map((size) => box(...size)),
      fc
        .tuple(evenly(0.6, 5), evenly(1, 9), fc.integer({ min: 5, max: 40 }))
        .map(([radius, height, segments]) => primitives.cylinder({ radius, height, segments })),
      fc
        .tuple(evenly(0.7, 5), fc.integer({ min: 8, max: 40 }))
        .map(([radius, segments]) => primitives.sphere({ radius, segments })),
      // Tips of cones and blunt wedges are no fins: half an angle of 12° and more.
      fc
        .tuple(evenly(1, 5), evenly(1, 4.7), fc.integer({ min: 6, max: 40 }))
        .map(([radius, slope, segments]) =>
          primitives.cylinderElliptic({
            height: slope * radius,
            startRadius: [radius, radius],
            endRadius: [1e-3, 1e-3],
            segments,
          }),
        ),
      fc
        .tuple(evenly(2, 9), evenly(1, 9))
        .map(
          ([side, high]) =>
            hulls.hull(
              box(side, high, 1),
              transforms.translate([0, 0, side], box(1e-3, high, 1e-3)),
            ) as Geom3,
        ),
    );
    fc.assert(
      fc.property(thick, angles, (solid, turn) => {
        expect(thinnest(turned(solid, turn))).toBeNull();
      }),
      { numRuns: 300 },
    );
  });

  test('are found in letters by the width of their strokes', () => {
    const written = (stroke: number) => {
      const dot = primitives.circle({ radius: stroke / 2, segments: 12 });
      const outlines = text
        .vectorText({ height: 8 }, 'GEAR 7')
        .map((line) =>
          hulls.hullChain(line.map((point) => transforms.translate([...point, 0] as never, dot))),
        );
      return booleans.union(outlines.map((outline) => extruded(outline as never))) as Geom3;
    };
    expect(thinnest(written(0.8))).toBeNull();
    expect(thinnest(written(0.3))!.thickness).toBeLessThan(0.3 + 1e-9);
  });

  test('are none on gears as they are swept: tips, bevels, lips, bores and finger holes', () => {
    const sets = [
      referenceSet({ planets: { teeth: 15, count: 5, hole: { diameter: 9 } } }),
      setOf(12, 18, 48, 3, { helix: { form: 'spur' }, retention: 'lips', ring: { teeth: 48, rim: 6 } }),
      setOf(12, 12, 36, 4, { module: 1, faceWidth: 8, carrier: { plates: 'both' } }),
    ];
    for (const spec of sets)
      for (const { mesh } of buildSet(spec))
        expect(
          thinnestPlace(piecesOf(mesh, { wall: spec.printer.lineWidth, slot: spec.fit.gap })),
        ).toBeNull();
  });
});

describe('slots', () => {
  const slotted = (wide: number) => booleans.subtract(box(8, 8, 8), box(wide, 9, 5)) as Geom3;

  test('fuse where they are narrower than the gap', () => {
    const open = (wide: number) =>
      booleans.subtract(box(8, 8, 8), transforms.translate([0, 0, 3], box(wide, 9, 5))) as Geom3;
    expect(thinnest(open(0.1))).toMatchObject({ between: 'slot', thickness: expect.closeTo(0.1, 6) });
    expect(thinnest(open(0.2499))).toMatchObject({ between: 'slot' });
    expect(thinnest(open(0.2501))).toBeNull();
    expect(thinnest(slotted(0.3))).toBeNull();
  });

  test('that lie level fuse where they are lower than a layer', () => {
    const level = (high: number) => booleans.subtract(box(8, 8, 8), box(5, 9, high)) as Geom3;
    expect(thinnest(level(0.15))).toMatchObject({ between: 'slot' });
    expect(thinnest(level(0.21))).toBeNull();
  });

  test('are none where a notch comes to an edge', () => {
    const notch = (half: number) => {
      const wide = 4 * Math.tan((half * Math.PI) / 180);
      const wedge = hulls.hull(transforms.translate([0, 0, 4], box(2 * wide, 9, 1e-3)), box(1e-3, 9, 1e-3));
      return booleans.subtract(box(8, 8, 8), wedge) as Geom3;
    };
    expect(thinnest(notch(8))).toBeNull();
    expect(thinnest(notch(2))).toMatchObject({ between: 'slot' });
  });
});

describe('walls too high for their thickness', () => {
  const tallest = (solid: Geom3) => {
    const mesh = fromGeom3(solid);
    return tallestWall(mesh, piecesOf(mesh, { tall: 1 }));
  };

  test('are measured by their own height, not by the height of what they stand on', () => {
    const wall = transforms.translate([0, 0, 8], box(0.6, 6, 10));
    const block = transforms.translate([0, 0, 1.5], box(6, 6, 3));
    const found = tallest(booleans.union(block, wall))!;
    expect(found.thickness).toBeCloseTo(0.6, 6);
    expect(found.height).toBeCloseTo(10, 6);
  });

  test('are none where walls are thicker than is looked for', () => {
    expect(tallest(box(1.1, 6, 10))).toBeNull();
  });
});

function extruded(outline: never): Geom3 {
  return extrusions.extrudeLinear({ height: 1 }, outline) as Geom3;
}
