import { describe, expect, it } from 'vitest';
import { boreOutline, boreRadius } from '../../lib/features/bore.js';
import { meshVolume } from '../../lib/proof/mesh/volume.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Bore } from '../../lib/spec/types.js';
import { gearOf } from '../trains.js';

/** What is left of a circle beyond a chord, mm². Source: the circular segment, r² acos(h/r) − h √(r² − h²). */
const segment = (r: number, h: number) => r * r * Math.acos(h / r) - h * Math.sqrt(r * r - h * h);

// Area; half width towards +x, where flats face; radius of the farthest corner.
const bores: [string, Bore, number, number, number][] = [
  ['round', { shape: 'round', diameter: 7 }, Math.PI * 3.5 ** 2, 3.5, 3.5],
  ['hexagon', { shape: 'hexagon', acrossFlats: 6 }, (Math.sqrt(3) / 2) * 36, 3, 6 / Math.sqrt(3)],
  ['square', { shape: 'square', acrossFlats: 6 }, 36, 3, 3 * Math.SQRT2],
  // Shafts of common small motors: 5 mm with 4.5 mm from the flat to the far side; and one half of a circle.
  ['D', { shape: 'D', diameter: 5, acrossFlat: 4.5 }, Math.PI * 2.5 ** 2 - segment(2.5, 2), 2, 2.5],
  ['half a D', { shape: 'D', diameter: 8, acrossFlat: 4 }, (Math.PI * 16) / 2, 0, 4],
];

describe.each(bores)('a %s bore', (_, bore, area, towardsX, farthest) => {
  it('is cut as wide as asked', () => {
    const points = boreOutline(bore, 1e-5);
    const twice = points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length];
      return sum + x * ny - nx * y;
    }, 0);
    expect(twice / 2 / area).toBeCloseTo(1, 4);
    expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(towardsX, 4);
    expect(Math.max(...points.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(farthest, 9);
    expect(boreRadius(bore)).toBeCloseTo(farthest, 9);
  });

  it('takes its area times the height off a gear', () => {
    const spur = { helix: { form: 'spur' }, tolerance: 0.002 };
    const [whole, bored] = [{ shape: 'none' } as Bore, bore].map((of) =>
      meshVolume(buildSet(gearOf({ teeth: 24, bore: of }, spur))[0].mesh),
    );
    expect((whole - bored) / (12 * area)).toBeCloseTo(1, 2);
  });
});
