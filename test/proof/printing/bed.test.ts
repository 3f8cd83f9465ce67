import { describe, expect, it } from 'vitest';
import { bed } from '../../../lib/proof/checks/bed.js';
import { layers } from '../../../lib/proof/checks/layers.js';
import { thinFeatures } from '../../../lib/proof/checks/thinFeatures.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { planOf } from '../../planetarySets.js';
import { referenceSet } from '../../sets.js';

const small = { bed: { width: 90, depth: 200, height: 100 } };

describe('the bed', () => {
  const check = (more: object) => {
    const spec = referenceSet({ tolerance: 0.05, ...more });
    return bed({ spec, parts: buildSet(spec) });
  };

  it('has room for the reference set, whose size is that of its ring', () => {
    // ISO 21771: root circle of the ring z m_t + 2 h_f = 45 · 1.5 / cos 30° + 2 · 1.25 · 1.5; and a rim of 5 mm.
    const outer = (45 * 1.5) / Math.cos(Math.PI / 6) + 3.75 + 10;
    const { holds, level, value, limit } = check({});
    expect([holds, level, limit]).toEqual([true, 'should', 220]);
    expect(value).toBeCloseTo(outer, 1);
  });

  it('is too narrow for it, and the module offered fits', () => {
    const failed = check({ printer: small });
    expect(failed).toMatchObject({ holds: false, level: 'must', limit: 90 });
    expect(failed.says).toContain('90 mm across would fit');
    const module = Number(/module ([\d.]+) or less/.exec(failed.says)![1]);
    expect(check({ printer: small, module }).holds).toBe(true);
    expect(check({ printer: small, module: module + 0.02 }).holds).toBe(false);
  });

  it('is too low for it, and the face width offered fits', () => {
    const low = { bed: { ...small.bed, width: 200, height: 20 } };
    const failed = check({ faceWidth: 26, printer: low });
    expect(failed).toMatchObject({ holds: false, limit: 20, value: expect.closeTo(26, 9) });
    expect(failed.says).toMatch(/; a height of 20 mm would fit: .*faceWidth 20 or less$/);
    expect(failed.says).not.toContain('across would fit');
    expect(check({ printer: low, faceWidth: 20 }).holds).toBe(true);
    // Both at once are said together.
    const printer = { bed: { ...small.bed, height: 20 } };
    const { says } = check({ faceWidth: 26, printer });
    const ways =
      /90 mm across would fit; a height of 20 mm would fit: .*module ([\d.]+) and faceWidth 20 or less$/;
    expect(check({ printer, faceWidth: 20, module: Number(ways.exec(says)![1]) }).holds).toBe(true);
  });

  it('counts what is drawn, and height too', () => {
    const { bed: room } = small;
    const low = { bed: { ...room, width: 200, height: 20 } };
    expect(check({ printer: low }).holds).toBe(true);
    expect(check({ printer: low, filament: { shrinkage: 0.5 } })).toMatchObject({
      holds: false,
      limit: 20,
      value: expect.closeTo(20 / 0.995, 9),
    });
  });
});

describe('thin features', () => {
  const check = (more: object) => thinFeatures(planOf(referenceSet(more)))[0];

  it('hold the tallest wall for its thickness', () => {
    expect(check({})).toMatchObject({ holds: true, level: 'should', value: expect.closeTo(20 / 5, 12) });
    // Root circle of the sun: 15 · 1.5 / cos 30° − 2 · 1.25 · 1.5.
    const root = ((15 * 1.5) / Math.cos(Math.PI / 6) - 3.75) / 2;
    const sun = { teeth: 15, bore: { shape: 'round', diameter: 19 } };
    expect(check({ sun })).toMatchObject({ holds: true, value: expect.closeTo(20 / (root - 9.5), 9) });
  });

  it('fail for a thin rim, and the rim offered passes', () => {
    const failed = check({ ring: { teeth: 45, rim: 0.5 } });
    expect(failed).toMatchObject({ holds: false, value: expect.closeTo(40, 12), limit: 25 });
    const rim = Number(/leaves ([\d.]+) mm/.exec(failed.says)![1]);
    expect(check({ ring: { teeth: 45, rim } }).holds).toBe(true);
    const faceWidth = Number(/faceWidth ([\d.]+) would/.exec(failed.says)![1]);
    expect(check({ ring: { teeth: 45, rim: 0.5 }, faceWidth }).holds).toBe(true);
  });

  it('count walls as they are drawn', () => {
    expect(check({ printer: { growth: 0.1 } }).value).toBeCloseTo(20 / 4.8, 12);
  });
});

describe('layers', () => {
  const check = (more: object) => layers(planOf(referenceSet(more)));

  it('make up the face width', () => {
    expect(check({})).toMatchObject({ holds: true, level: 'note', value: expect.closeTo(0, 9) });
    const half = check({ faceWidth: 20.1 });
    expect(half).toMatchObject({
      holds: false,
      value: expect.closeTo(0.1, 9),
      limit: expect.closeTo(0.02, 12),
    });
    expect(check({ faceWidth: 20.1, printer: { layer: 0.15 } }).holds).toBe(true);
  });

  it('are several to a bevel, or there is none', () => {
    expect(check({ bevel: { size: 0.3 } }).holds).toBe(false);
    expect(check({ bevel: { size: 0.4 } }).holds).toBe(true);
    expect(check({ bevel: { size: 0 } }).holds).toBe(true);
  });
});
