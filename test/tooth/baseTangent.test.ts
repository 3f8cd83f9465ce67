import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import {
  baseTangentContactRadius,
  baseTangentFaceWidth,
  baseTangentLength,
  teethSpanned,
} from '../../lib/tooth/baseTangent.js';
import { type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { transverseThickness } from '../../lib/tooth/thickness.js';
import { evenly } from '../evenly.js';
import { gear, ring } from './gears.js';

const anyGear = fc
  .record({
    teeth: fc.integer({ min: 8, max: 200 }),
    helixAngle: evenly(0, 40),
    profileShift: evenly(-0.3, 0.8),
    module: evenly(0.5, 5),
  })
  .map(({ teeth, ...changes }) => gear(teeth, changes));

describe('base tangent length', () => {
  it('is a tooth and whole pitches on the base circle, relief or not', () => {
    fc.assert(
      fc.property(anyGear, evenly(0, 0.1), (measured, relief) => {
        const { baseRadius, baseHelixAngle } = gearSizes(measured);
        const spanned = teethSpanned(measured);
        const pitch = (2 * Math.PI * baseRadius) / measured.teeth;
        const onBase = transverseThickness(measured, baseRadius, relief) + (spanned - 1) * pitch;
        expect(baseTangentLength(measured, spanned, relief)).toBeCloseTo(
          onBase * Math.cos(baseHelixAngle),
          9,
        );
      }),
    );
  });

  // Anvils that touch on the circle d + 2 x m are a chord apart that is tangent to the base circle, and that long seen
  // along the ruling; no other number of teeth comes nearer to it.
  const expectNearest = (measured: Gear) => {
    const { referenceRadius, baseRadius, baseHelixAngle, normalPressureAngle } = gearSizes(measured);
    const touched = referenceRadius + measured.profileShift * measured.module;
    const wanted = (2 * Math.sqrt(Math.max(0, touched ** 2 - baseRadius ** 2))) / Math.cos(baseHelixAngle);
    const halfPitch = (Math.PI * measured.module * Math.cos(normalPressureAngle)) / 2;
    const spanned = teethSpanned(measured);
    const long = baseTangentLength(measured, spanned) - wanted;
    expect(long).toBeGreaterThan(-halfPitch - 1e-6);
    // Two teeth are the fewest that anvils can span.
    if (spanned > 2) expect(long).toBeLessThan(halfPitch + 1e-6);
  };

  it('spans the teeth that put the anvils nearest to the circle d + 2 x m', () => {
    fc.assert(fc.property(anyGear, expectNearest));
  });

  // z α / 180° + 0.5 is 5.494 and 5.575: just short of a half, and past it.
  it.each([
    [62, 5],
    [63, 6],
  ])('of %d teeth at 14.5° %d are spanned', (teeth, spanned) => {
    const measured = gear(teeth, { pressureAngle: 14.5 });
    expect(teethSpanned(measured)).toBe(spanned);
    expectNearest(measured);
  });

  it('across the spaces of a spur ring it is that of the same external gear, and grows with relief', () => {
    const [outer, same] = [ring(45, { profileShift: 0.2 }), gear(45, { profileShift: 0.2 })];
    const spanned = teethSpanned(outer);
    expect(spanned).toBe(teethSpanned(same));
    expect(baseTangentLength(outer, spanned)).toBe(baseTangentLength(same, spanned));
    expect(baseTangentLength(outer, spanned, 0.1) - baseTangentLength(outer, spanned)).toBeCloseTo(0.2, 12);
    const contact = baseTangentContactRadius(outer, spanned);
    expect(contact).toBeGreaterThan(gearSizes(outer).tipRadius);
    expect(contact).toBeLessThan(gearSizes(outer).rootRadius);
  });

  it('asks for no face width on a spur gear', () => {
    expect(baseTangentFaceWidth(gear(20), 3)).toBe(0);
  });

  it('refuses an internal helical gear', () => {
    const helical = ring(45, { helixAngle: 30 });
    expect(() => teethSpanned(helical)).toThrow(Refusal);
    expect(() => baseTangentLength(helical, 3)).toThrow(/flat anvils/);
  });
});
