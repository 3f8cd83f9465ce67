import { describe, expect, it } from 'vitest';
import { meshBounds } from '../../lib/proof/mesh/volume.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Mesh } from '../../lib/solid/mesh.js';
import { rackOf } from '../trains.js';

const ALPHA = (20 * Math.PI) / 180;
const GAP = 0.3;

/** A spur bar of module 2 without bevels: 6 teeth, 9 mm of backing, 74 mm long. */
const barOf = (more: object = {}): Mesh =>
  buildSet(
    rackOf(20, 6, {
      ...{
        module: 2,
        helix: { form: 'spur' },
        bevel: { size: 0 },
        rack: 'B',
        fit: { gap: GAP, gapShare: 0.5 },
      },
      bar: { teeth: 6, backing: 9, length: 74 },
      ...more,
    }),
  )[1].mesh;

/**
 * What calipers read on a bar: from its back to the tips and to the roots, its length, and how thick a tooth is at a height
 * under its tip.
 */
function readings({ positions, triangles }: Mesh) {
  const { min, max } = meshBounds({ positions, triangles });
  const corners = Array.from({ length: positions.length / 3 }, (_, i) => [
    positions[3 * i],
    positions[3 * i + 1],
  ]);
  // Corners of one tip, the one nearest to the middle of the bar.
  const tip = corners.filter(([, y]) => Math.abs(y - max[1]) < 1e-9).map(([x]) => x);
  const sides = [...new Set(tip.map((x) => Math.round(x * 1e9) / 1e9))].sort((a, b) => a - b);
  const tipWidth = sides[1] - sides[0];
  const roots = corners
    .map(([, y]) => y)
    .filter((y) => y > min[1] + 1e-9)
    .reduce((a, b) => Math.min(a, b));
  return {
    whole: max[1] - min[1],
    backing: roots - min[1],
    length: max[0] - min[0],
    pitch: sides[2] - sides[0],
    thickAt: (depth: number) => tipWidth + 2 * depth * Math.tan(ALPHA),
  };
}

// Thickness on the datum line, ISO 53: half a pitch, π m / 2; a flank set back by half the gap along its normal takes
// gap / 2 / cos α off, on either side.
const THICKNESS = Math.PI - GAP / Math.cos(ALPHA);

describe('a bar', () => {
  it('has the backing and length asked for, tips an addendum over the datum line and teeth thinner by their relief', () => {
    const { whole, backing, length, pitch, thickAt } = readings(barOf());
    expect(backing).toBeCloseTo(9, 9);
    expect(length).toBeCloseTo(74, 9);
    expect(pitch).toBeCloseTo(2 * Math.PI, 8);
    expect(thickAt(2)).toBeCloseTo(THICKNESS, 8);
    // Dedendum and addendum of profile B.
    expect(whole - backing).toBeCloseTo(2 * 2.25, 9);
  });

  it('takes the rest of the gap that its pinion leaves it', () => {
    for (const gapShare of [0, 0.3, 1]) {
      const { thickAt } = readings(barOf({ fit: { gap: GAP, gapShare } }));
      expect(thickAt(2)).toBeCloseTo(Math.PI - (2 * GAP * (1 - gapShare)) / Math.cos(ALPHA), 8);
    }
  });

  it('comes out of a print that grows and shrinks as it was asked for', () => {
    const growth = 0.06;
    const drawn = readings(barOf({ printer: { growth }, filament: { shrinkage: 2 } }));
    const printed = (size: number) => 0.98 * size + 2 * growth;
    expect(printed(drawn.whole)).toBeCloseTo(9 + 4.5, 9);
    expect(printed(drawn.backing)).toBeCloseTo(9, 9);
    expect(printed(drawn.length)).toBeCloseTo(74, 9);
    expect(0.98 * drawn.pitch).toBeCloseTo(2 * Math.PI, 8);
    // The datum line is an addendum under the printed tip; a flank moves out along its normal.
    const onDatum = 0.98 * drawn.thickAt((2 - growth) / 0.98) + (2 * growth) / Math.cos(ALPHA);
    expect(onDatum).toBeCloseTo(THICKNESS, 8);
  });
});
