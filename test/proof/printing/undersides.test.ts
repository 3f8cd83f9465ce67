import { describe, expect, it } from 'vitest';
import { undersidesOf } from '../../../lib/proof/printing/undersides.js';
import type { Part } from '../../../lib/solid/mesh.js';
import { stackMesh } from '../../../lib/solid/stack/stackMesh.js';
import { atHeight, contourAt, type Point } from '../../../lib/stack/contour.js';

/** Against areas and spans of plain boxes; the rule itself is common practice. */
const limits = { above: 0.2, layer: 0.2, bridge: 10, lineWidth: 0.45 };

const rectangle = (x0: number, x1: number, y0: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

function box(name: string, x: [number, number], y: [number, number], z: [number, number]): Part {
  const bottom = contourAt(rectangle(...x, ...y), z[0]);
  const top = atHeight(bottom, z[1]);
  const mesh = stackMesh({
    walls: [{ from: bottom, to: top, solid: 'inside' }],
    faces: [
      { looks: 'down', outer: bottom, holes: [] },
      { looks: 'up', outer: top, holes: [] },
    ],
  });
  return { name, mesh };
}

/** A table of its own: a slab on two legs, all one body, with `span` between the legs. */
function table(span: number, width: number, leg = 4): Part {
  const feet = [rectangle(0, leg, 0, width), rectangle(leg + span, 2 * leg + span, 0, width)].map((foot) =>
    contourAt(foot, 0),
  );
  const under = feet.map((foot) => atHeight(foot, 5));
  const slab = contourAt(rectangle(-1e-3, 2 * leg + span + 1e-3, -1e-3, width + 1e-3), 5);
  const top = atHeight(slab, 8);
  const mesh = stackMesh({
    walls: [
      ...feet.map((foot, i) => ({ from: foot, to: under[i], solid: 'inside' as const })),
      { from: slab, to: top, solid: 'inside' },
    ],
    faces: [
      ...feet.map((outer) => ({ looks: 'down' as const, outer, holes: [] })),
      { looks: 'down', outer: slab, holes: under },
      { looks: 'up', outer: top, holes: [] },
    ],
  });
  return { name: 'table', mesh };
}

const measure = (part: Part, ...others: Part[]) => undersidesOf(part.mesh, [part, ...others], limits);

describe('flat undersides', () => {
  it('lie on the bed or bridge from leg to leg', () => {
    expect(measure(box('on the bed', [0, 9], [0, 9], [0, 3]))).toEqual({
      area: 0,
      longestBridge: 0,
      at: null,
    });
    const { area, longestBridge } = measure(table(9, 6));
    expect(area).toBe(0);
    expect(longestBridge).toBeCloseTo(9, 0);
  });

  it('hang free where the way is longer than a bridge, but for a line beside each leg', () => {
    const { area, at } = measure(table(14, 6));
    const lines = 2 * limits.lineWidth * 6;
    expect(area).toBeGreaterThan(14 * 6 - 1.5 * lines);
    expect(area).toBeLessThan(14 * 6);
    expect(at![2]).toBeCloseTo(5, 6);
  });

  it('are carried by a body one or two layers below, not by one three layers below', () => {
    const below = box('below', [0, 30], [0, 30], [0, 2]);
    for (const [layers, carried] of [
      [1, true],
      [2, true],
      [3, false],
    ] as const) {
      const z = 2 + layers * limits.layer;
      const { area } = measure(box('over it', [2, 28], [2, 28], [z, z + 2]), below);
      expect(area === 0, `${layers} layers`).toBe(carried);
      if (!carried) expect(area).toBeCloseTo(26 * 26, -1);
    }
  });

  it('hang free where they stand out over the edge of what carries them', () => {
    const below = box('below', [0, 10], [0, 10], [0, 2]);
    const { area } = measure(box('over it', [0, 15], [0, 10], [2.2, 4]), below);
    expect(area).toBeGreaterThan(10 * (5 - 2 * limits.lineWidth));
    expect(area).toBeLessThan(10 * 5);
  });
});
