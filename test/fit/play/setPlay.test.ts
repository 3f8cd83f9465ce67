import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motion } from '../../../lib/fit/play/contact.js';
import { axialPlay, backlash, radialPlay, workingDepth } from '../../../lib/fit/play/formulas.js';
import { furthest } from '../../../lib/fit/play/furthest.js';
import type { LooseSet } from '../../../lib/fit/play/looseSet.js';
import { setContacts } from '../../../lib/fit/play/setContacts.js';
import { looseSetOf } from '../../../lib/proof/motion/looseSetOf.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { centreDistance } from '../../../lib/train/pair.js';
import { evenly } from '../../evenly.js';
import { fitted, setNumbers } from '../../planetarySets.js';
import { setOf } from '../../sets.js';

const loose = (spec: PlanetarySpec): LooseSet => looseSetOf(fitted(spec));
const far = (set: LooseSet, direction: Motion, part = 'planet-1'): number =>
  furthest({ [part]: direction }, setContacts(set), [part]).value;

/** Sets that assemble, with a gap, a form, an angle and a hand. */
const anySet = fc
  .record({
    teeth: fc.constantFrom<[number, number, number, number]>(
      [15, 15, 45, 5],
      [12, 24, 60, 3],
      [18, 18, 54, 4],
    ),
    form: fc.constantFrom('spur', 'helical', 'herringbone'),
    angle: fc.integer({ min: 15, max: 35 }),
    gap: evenly(0.1, 0.25),
    faceWidth: fc.integer({ min: 10, max: 25 }),
  })
  .map(({ teeth, form, angle, gap, faceWidth }) => ({
    form,
    make: (more: object = {}, hand = 'right', by = 1) =>
      setOf(...teeth, {
        helix: { form, angle: form === 'spur' ? 0 : angle, hand },
        faceWidth,
        fit: { gap: gap * by },
        bevel: { size: 0 },
        ...more,
      }),
  }));
const RUNS = { numRuns: 8 };

describe('closed forms and the linear program', () => {
  it('agree on axial play between held mates', () => {
    fc.assert(
      fc.property(anySet, ({ form, make }) => {
        const set = loose(make());
        const expected = axialPlay(set);
        for (const part of ['planet-1', 'sun'])
          for (const way of [1, -1]) {
            const found = far(set, [0, 0, way, 0, 0, 0], part);
            if (form === 'herringbone') expect(Math.abs(found / expected - 1)).toBeLessThan(0.02);
            else expect(found).toBe(Number.POSITIVE_INFINITY);
          }
      }),
      RUNS,
    );
  });

  it.each([0.05, 0.08])('agree on radial play where flanks wedge, gap %d', (gap) => {
    // Short tips stay off the root curves, which the formula knows nothing of.
    const rack = { addendum: 0.6, dedendum: 1.25, fillet: 0.2 };
    const set = loose(setOf(20, 30, 80, 4, { fit: { gap }, bevel: { size: 0 }, rack }));
    const { toSun, toRing } = radialPlay(set);
    expect(Math.abs(far(set, [-1, 0, 0, 0, 0, 0]) / toSun - 1)).toBeLessThan(0.02);
    expect(Math.abs(far(set, [1, 0, 0, 0, 0, 0]) / toRing - 1)).toBeLessThan(0.02);
  });

  it('differ where tips reach a root curve before flanks wedge: small planets in a ring', () => {
    const set = loose(setOf(15, 15, 45, 5, { fit: { gap: 0.1 }, bevel: { size: 0 } }));
    expect(far(set, [1, 0, 0, 0, 0, 0])).toBeLessThan(radialPlay(set).toRing);
  });

  it('agree on the lean of a spur planet: 2 gap / (b sin α_wt) to first order', () => {
    const spec = setOf(18, 18, 54, 4, {
      helix: { form: 'spur' },
      fit: { gap: 0.02 },
      bevel: { size: 0 },
    });
    const set = loose(spec);
    // A line of contact lies on one side of the pitch point, so that a turn about the axis lets it lean a little more.
    const expected = (2 * 0.02) / (20 * Math.sin(set.inner.workingPressureAngle));
    const found = far(set, [0, 0, 0, 0, 1, 0]);
    expect(found / expected).toBeGreaterThan(0.97);
    expect(found / expected).toBeLessThan(1.1);
  });

  it('agree on the turn of a planet: gap / (cos β_b r_b)', () => {
    const set = loose(setOf(15, 15, 45, 5, { bevel: { size: 0 } }));
    const { baseRadius, baseHelixAngle } = set.planets[0].profile.sizes;
    const expected = 0.25 / Math.cos(baseHelixAngle) / baseRadius;
    expect(Math.abs(far(set, [0, 0, 0, 0, 0, 1]) / expected - 1)).toBeLessThan(0.02);
  });
});

describe('radial play', () => {
  it('is where the backlash of ISO 21771 vanishes: the centre distance of gears with the gap taken off by shift', () => {
    // Flanks set back by half the gap each are flanks shifted by −gap / (2 sin α_n) together; two such gears mesh
    // without backlash at the centre distance that ISO 21771 gives for that shift.
    const gap = 0.08;
    const spec = setOf(15, 15, 45, 5, { fit: { gap } });
    const set = loose(spec);
    const { sun, planet, ring } = setNumbers(spec).gears;
    const shift = gap / (2 * Math.sin((20 * Math.PI) / 180)) / 1.5;
    const moved = { ...planet, profileShift: planet.profileShift - 2 * shift };
    expect(radialPlay(set).toSun).toBeCloseTo(set.inner.centreDistance - centreDistance(sun, moved), 9);
    expect(radialPlay(set).toRing).toBeCloseTo(centreDistance(moved, ring) - set.outer.centreDistance, 9);
  });
});

describe('backlash', () => {
  it('follows ISO 21771 for a spur pair at 20°: j_wt = j_bn / cos α_wt', () => {
    const set = loose(setOf(15, 15, 45, 5, { helix: { form: 'spur' } }));
    expect(backlash(set.inner, 0.25, 0).circumferential).toBeCloseTo(
      0.5 / Math.cos((20 * Math.PI) / 180),
      12,
    );
  });

  it('leaves two addenda of working depth in a standard pair', () => {
    expect(workingDepth(loose(setOf(15, 15, 45, 5)).inner)).toBeCloseTo(2 * 1.5, 12);
  });
});

describe('any set', () => {
  const directions: Motion[] = [
    [1, 0, 0, 0, 0, 0],
    [0, 1, 0, 0, 0, 0],
    [0, 0, 0, 0, 1, 0],
    [0, 0, 0, 1, 0, 0],
  ];

  it('has no less play with a larger gap', () => {
    fc.assert(
      fc.property(anySet, ({ make }) => {
        const [small, large] = [loose(make()), loose(make({}, 'right', 1.3))];
        // Corners of tips move with the gap as well: what the search leaves over is allowed for.
        for (const direction of directions)
          expect(far(large, direction)).toBeGreaterThan(far(small, direction) * 0.99);
      }),
      RUNS,
    );
  });

  it('has the mirrored play with the other hand', () => {
    fc.assert(
      fc.property(anySet, ({ make }) => {
        const [right, left] = [loose(make()), loose(make({}, 'left'))];
        // Mirrored in the plane through the axes of sun and planet: shifts across it and turns about axes in it flip.
        for (const direction of directions) {
          const mirrored = direction.map((n, i) => ([1, 3, 5].includes(i) ? -n : n)) as unknown as Motion;
          expect(far(left, mirrored) / far(right, direction)).toBeCloseTo(1, 1);
        }
      }),
      RUNS,
    );
  });
});

describe('slopes of every contact', () => {
  it('are those of its gap', () => {
    const set = loose(setOf(12, 24, 60, 3));
    const at = Float64Array.of(
      ...[0.02, -0.03, 0.05, 0.001, -0.002, 0.003],
      ...[-0.01, 0.02, -0.04, 0.002, 0.001, -0.002],
    );
    const slopes = new Float64Array(12);
    const step = 1e-6;
    for (const contact of setContacts(set, 3).filter(({ smooth }) => smooth)) {
      expect(contact.read(contact.place, at, 0, 6, slopes)).toBe(contact.read(contact.place, at, 0, 6));
      for (let k = 0; k < 12; k++) {
        const nudged = (by: number) =>
          contact.read(
            contact.place,
            at.map((n, j) => (j === k ? n + by : n)),
            0,
            6,
          );
        const slope = (nudged(step) - nudged(-step)) / (2 * step);
        expect(Math.abs(slopes[k] - slope), `${contact.feature} ${k}`).toBeLessThan(
          0.02 * (1 + Math.abs(slope)),
        );
      }
    }
  });
});
