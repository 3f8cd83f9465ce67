import { describe, expect, it } from 'vitest';
import { couponLayout } from '../../../lib/fit/coupon/layout.js';
import { stationsLike } from '../../../lib/fit/coupon/stations.js';
import { printTime, printTimeCheck } from '../../../lib/proof/coupon/printTime.js';
import { proveCoupon } from '../../../lib/proof/coupon/proveCoupon.js';
import { stationPlay } from '../../../lib/proof/coupon/stationPlay.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { meshBounds } from '../../../lib/proof/mesh/volume.js';
import { buildCoupon } from '../../../lib/solid/coupon/buildCoupon.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';

const set = {
  kind: 'planetary',
  module: 1.5,
  faceWidth: 20,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 5 },
};
const usual = resolveSpec(set);

describe('a coupon', () => {
  it('of the usual gaps prints in an hour and says how that was estimated', () => {
    const made = stationsLike(usual, [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4]);
    const { parts } = buildCoupon(made.stations, couponLayout(made));
    const time = printTime(parts, usual);
    expect(printTimeCheck(time, 7)).toMatchObject({ holds: true, unit: 'min' });
    expect(time.how).toMatch(/5\.4 mm³\/s.*common practice/);
    // Nothing is extruded that is not there, and half the flow takes twice the time.
    expect(time.extruded).toBeLessThan(time.volume);
    expect(printTime(parts, usual, 2.7).minutes / time.minutes).toBeCloseTo(2, 9);
    const slow = printTimeCheck(printTime(parts, usual, 2.7), 7);
    expect(slow.holds).toBe(false);
    expect(slow.says).toMatch(/3 gaps would take about an hour/);
  });

  it('is drawn for the growth and shrinkage of its printer, and its gauge with it', () => {
    const like = resolveSpec({
      ...set,
      helix: { form: 'spur' },
      printer: { growth: 0.05 },
      filament: { shrinkage: 0.5 },
    });
    const { sheet, parts } = proveCoupon(like, [0.2, 0.3]);
    expect(sheet.checks.filter(({ level, holds }) => level === 'must' && !holds)).toEqual([]);
    expect(sheet.adjustments.join()).toMatch(/herringbone teeth at 30°/);
    const scale = 1 / 0.995;
    sheet.stations.forEach(({ gap }) => {
      expect(gap.drawn).toBeCloseTo((gap.asked + 0.1) * scale, 9);
      expect(Math.abs(gap.body! - gap.drawn)).toBeLessThan(0.03 * gap.drawn);
    });
    const gauge = meshBounds(parts[parts.length - 1].mesh);
    expect(gauge.max[0] - gauge.min[0]).toBeCloseTo((30 - 0.1) * scale, 9);
    expect(sheet.printing.sizes.map(({ feature, drawn }) => [feature, Number(drawn.toFixed(6))])).toEqual([
      ['bar', Number((29.9 * scale).toFixed(6))],
      ['bar', Number((15.9 * scale).toFixed(6))],
      ['hole', Number((10.1 * scale).toFixed(6))],
    ]);
  }, 30_000);

  it('is not called captured where nothing holds a pinion', () => {
    const made = stationsLike(usual, [0.2, 0.3]);
    const layout = couponLayout(made);
    const { parts } = buildCoupon(made.stations, layout);
    const [frame, pinion, , gauge] = parts.map(({ mesh }) => triangleTree(mesh));
    expect(stationPlay(made.stations[0], pinion, frame, layout.axes[0])).toMatchObject({
      clear: true,
      blocked: true,
    });
    expect(stationPlay(made.stations[0], pinion, gauge, layout.axes[0]).blocked).toBe(false);
    // A wider gap than the sheet says lets it move farther.
    const [, , looser] = parts.map(({ mesh }) => triangleTree(mesh));
    expect(stationPlay({ ...made.stations[1], gap: 0.2 }, looser, frame, layout.axes[1]).blocked).toBe(false);
  });

  it('finds first layers that run into each other where nothing is cut back there', () => {
    const firstLayer = (bevel: object, printer: object) => {
      const { sheet } = proveCoupon(resolveSpec({ ...set, bevel, printer }), [0.1, 0.3]);
      return sheet.checks.find(({ id }) => id === 'first-layer')!;
    };
    const plain = firstLayer({ size: 0 }, { firstLayerGrowth: 0.1 });
    // Flanks a gap apart, less what two walls stand out.
    expect(plain.value).toBeCloseTo(0.1 - 0.2, 2);
    expect(plain).toMatchObject({
      holds: false,
      says: expect.stringMatching(/run into each other at 0\.10, by/),
    });
    // As deep as the teeth, bevels take the flanks out of each other's way there.
    expect(firstLayer({ size: 1.6 }, { firstLayerGrowth: 0.08 }).holds).toBe(true);
  }, 30_000);

  it('holds what it must for other teeth too, with more of them where tips or roots ask for it', () => {
    const teeth: [object, number, number[]][] = [
      [{ pressureAngle: 14, rack: 'A' }, 16, [0.1, 0.3]],
      [{ helix: { angle: 45, hand: 'left' }, pressureAngle: 25, rack: 'D' }, 9, [0.2, 0.25]],
      [{ module: 0.6, helix: { angle: 5 } }, 19, [0.05, 0.1]],
      [{ module: 3, printer: 'large' }, 9, [0.3, 0.5]],
    ];
    for (const [other, count, gaps] of teeth) {
      const { sheet, parts } = proveCoupon(resolveSpec({ ...set, ...other }), gaps);
      const failing = sheet.checks.filter(({ level, holds }) => level === 'must' && !holds);
      expect(failing, JSON.stringify(other)).toEqual([]);
      expect(parts).toHaveLength(4);
      expect(sheet.resolved.pinion.teeth, JSON.stringify(other)).toBe(count);
      for (const { play } of sheet.stations) expect(play).toMatchObject({ clear: true, blocked: true });
    }
  }, 30_000);

  it('says that gaps do not fit the teeth by the name of its own flag', () => {
    expect(() => stationsLike(usual, [0.2, 1.2])).toThrow(/^gaps: 1\.20: .*nearest that works: 1\.12$/);
  });
});
