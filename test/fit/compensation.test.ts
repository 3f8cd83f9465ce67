import { describe, expect, it } from 'vitest';
import { drawnGap } from '../../lib/fit/compensation.js';
import { drawnTrain } from '../../lib/fit/train/drawnTrain.js';
import { fitDrawn } from '../../lib/fit/train/fitTrain.js';
import { gearIn } from '../../lib/fit/train/train.js';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import { proveSet } from '../../lib/proof/proveSet.js';
import { Refusal } from '../../lib/refusal.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { pointOn } from '../../lib/tooth/segments.js';
import { fitted } from '../planetarySets.js';
import { referenceSet, setOf } from '../sets.js';
import { soleProblem, spinner, withValue } from '../spec/table.js';

const drawn = (spec: PlanetarySpec) => fitDrawn(fitted(spec));

describe('compensation', () => {
  it('does nothing at all where nothing is asked', () => {
    const spec = referenceSet();
    const set = fitted(spec);
    expect(fitDrawn(set)).toBe(set);
    expect(set.spec).toBe(spec);
    expect(drawnGap(spec)).toBe(0.25);
  });

  it('is applied once: the drawn set has nothing left to compensate', () => {
    const spec = referenceSet({ printer: { growth: 0.1 }, filament: { shrinkage: 1 } });
    const once = drawnTrain(trainNumbers(spec));
    expect(drawnTrain(once)).toBe(once);
    expect(drawnGap(once.spec)).toBeCloseTo(drawnGap(spec), 12);
    const made = drawn(spec);
    expect(fitDrawn(made)).toBe(made);
    // What a shrunk print needs, by hand: 0.45 mm / 0.99.
    expect(drawnGap(spec)).toBeCloseTo(0.45 / 0.99, 12);
  });

  it('does not touch what the file says', () => {
    const spec = referenceSet({ printer: { growth: 0.1 }, filament: { shrinkage: 1 } });
    const before = structuredClone(spec);
    const { resolved } = proveSet(spec).sheet;
    expect(spec).toEqual(before);
    expect(resolveSpec(resolved)).toEqual(before);
  });

  it.each(['sun', 'planet'] as const)(
    'moves the outline of a spur %s along its normal by the growth',
    (part) => {
      const growth = 0.12;
      const spec = setOf(15, 15, 45, 5, { helix: { form: 'spur' }, printer: { growth } });
      const [asked, back] = [fitted(spec), drawn(spec)].map((train) => gearIn(train, part).profile.segments);
      // Every point of the drawn outline, but near its corners at the tip, is the growth away from the asked one.
      const line = asked.flatMap((segment) =>
        Array.from({ length: 400 }, (_, i) =>
          pointOn(segment, segment.from + ((segment.to - segment.from) * i) / 400),
        ),
      );
      for (const segment of back.slice(0, 3))
        for (const share of [0.1, 0.5, 0.9]) {
          const [x, y] = pointOn(segment, segment.from + (segment.to - segment.from) * share);
          const away = Math.min(...line.map(([u, v]) => Math.hypot(u - x, v - y)));
          expect(Math.abs(away - growth)).toBeLessThan(0.0015);
        }
    },
  );

  it('refuses growth by which walls or teeth are lost', () => {
    expect(soleProblem(withValue('printer.growth', 0.3))).toMatchObject({ nearest: [0.225] });
    expect(soleProblem(withValue('printer.growth', -0.2))).toMatchObject({ nearest: [-0.115] });
    expect(soleProblem({ ...spinner(), ring: { rim: 0.5 }, printer: { growth: 0.2 } })).toMatchObject({
      nearest: [0.125],
    });
    const fine = setOf(15, 15, 45, 5, { module: 0.4, fit: { gap: 0.2 }, printer: { growth: 0.2 } });
    expect(proveSet(fine).sheet.checks).toContainEqual(
      expect.objectContaining({ id: 'tip-thickness', level: 'must', holds: false }),
    );
    expect(() => drawn(fine)).toThrow(Refusal);
    expect(() => drawn(fine)).toThrow(/^printer.growth: 0.2: /);
  });
});

describe('the sheet', () => {
  const spec = referenceSet({ printer: { growth: 0.1 }, filament: { shrinkage: 0.5 } });
  const { sheet } = proveSet(spec);

  it('says both gaps, and measures the drawn one', () => {
    for (const { gap } of sheet.meshes) {
      expect(gap.asked).toBe(0.25);
      expect(gap.drawn).toBeCloseTo(0.45 / 0.995, 12);
      expect(Math.abs(gap.bodies! - gap.drawn)).toBeLessThanOrEqual(0.03 * gap.drawn);
      expect(Math.abs(gap.rollingLeast! - gap.drawn)).toBeLessThanOrEqual(0.03 * gap.drawn);
    }
    for (const id of ['rolling', 'body-gap', 'helix-accuracy'])
      expect(sheet.checks).toContainEqual(expect.objectContaining({ id, holds: true }));
  });

  it('says drawn and expected sizes: shrunk, then grown on each wall', () => {
    const { scale, growth, sizes } = sheet.printing;
    expect(scale).toBeCloseTo(1 / 0.995, 12);
    const outward: Record<string, number> = { sun: 1, planet: 1, ring: -1 };
    const sign = { bore: -1, 'outer diameter': 1 };
    for (const { part, feature, drawn, expected } of sizes) {
      if (feature === 'over pins') continue; // A pin follows the flank: see below.
      const walls =
        2 *
        growth *
        (feature in sign ? sign[feature as keyof typeof sign] : outward[part as keyof typeof outward]);
      expect(drawn / scale + walls).toBeCloseTo(expected, 9);
    }
    const names = sizes.map(({ part, feature }) => `${part} ${feature}`);
    expect(names).toEqual([
      'sun tip diameter',
      'sun root diameter',
      'sun base tangent length',
      'sun over pins',
      'planet tip diameter',
      'planet root diameter',
      'planet base tangent length',
      'planet over pins',
      'ring tip diameter',
      'ring root diameter',
      'ring over pins',
      'sun bore',
      'ring outer diameter',
    ]);
  });

  // Openings close by the growth on either side, what stands up gains it; everything shrinks.
  it('draws features otherwise too, and their bodies as it says', () => {
    const spec = setOf(15, 15, 45, 5, {
      printer: { growth: 0.1 },
      filament: { shrinkage: 0.5 },
      sun: { teeth: 15, knob: { diameter: 14, height: 8, grips: 0 }, nut: { size: 'M3', at: 'bottom' } },
      planets: { teeth: 15, count: 5, hole: { diameter: 14 } },
      ring: { rim: 6, mount: { hole: 98, panel: 12 } },
    });
    const { sheet: made, parts } = proveSet(spec);
    const standing = ['knob', 'flange', 'outer diameter', 'peg'];
    const sizes = made.printing.sizes.slice(
      made.printing.sizes.findIndex(({ feature }) => feature === 'outer diameter'),
    );
    expect(sizes.length).toBeGreaterThan(8);
    for (const { feature, drawn, expected } of sizes)
      expect(drawn * 0.995 + (standing.includes(feature) ? 0.2 : -0.2), feature).toBeCloseTo(expected, 9);
    const radii = (name: string, centre: [number, number]) => {
      const { positions } = parts.find((part) => part.name === name)!.mesh;
      return Array.from({ length: positions.length / 3 }, (_, i) =>
        Math.hypot(positions[3 * i] - centre[0], positions[3 * i + 1] - centre[1]),
      );
    };
    const [{ centreDistance }] = drawn(spec).meshes;
    expect(2 * Math.min(...radii('planet-1', [centreDistance, 0]))).toBeCloseTo(14.2 / 0.995, 9);
    expect(2 * Math.max(...radii('ring', [0, 0]))).toBeCloseTo((spec.ring.flange!.diameter - 0.2) / 0.995, 9);
    expect(made.checks.filter(({ level, holds }) => level === 'must' && !holds)).toEqual([]);
  });

  it('expects over pins what the gears read, and draws it smaller on a sun, larger in a ring', () => {
    for (const gear of sheet.gears) {
      const size = sheet.printing.sizes.find((s) => s.part === gear.part && s.feature === 'over pins')!;
      expect(size.expected).toBe(gear.overPins.withGap);
      expect(Math.sign(size.drawn - size.expected)).toBe(gear.part === 'ring' ? 1 : -1);
    }
  });

  it('has drawn and expected alike where nothing is compensated', () => {
    for (const { drawn, expected } of proveSet(referenceSet()).sheet.printing.sizes)
      expect(drawn).toBe(expected);
  });
});
