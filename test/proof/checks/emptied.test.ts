import { describe, expect, it } from 'vitest';
import type { BodyFindings } from '../../../lib/proof/bodies.js';
import { bodyGap } from '../../../lib/proof/checks/bodyGap.js';
import { contactRatio } from '../../../lib/proof/checks/contactRatio.js';
import { helixAccuracy } from '../../../lib/proof/checks/helixAccuracy.js';
import { involuteInterference } from '../../../lib/proof/checks/involuteInterference.js';
import { lineWidth } from '../../../lib/proof/checks/lineWidth.js';
import { rolling } from '../../../lib/proof/checks/rolling.js';
import { rootSpace } from '../../../lib/proof/checks/rootSpace.js';
import { trochoidInterference } from '../../../lib/proof/checks/trochoidInterference.js';
import { leastBy } from '../../../lib/proof/leastBy.js';
import { trochoidMargin } from '../../../lib/train/interference.js';
import type { PairSizes } from '../../../lib/train/pair.js';
import { outlinesOf } from '../../planetarySets.js';
import { referenceSet } from '../../sets.js';

const spec = referenceSet();
const found = outlinesOf(spec);
const { asked } = found;
const gapsOf = (gaps: BodyFindings['gaps']): BodyFindings => ({ bodies: [], gaps, trees: new Map() });
const pair = (a: string, b: string, distance: number | null, more = {}) => ({
  between: [a, b] as [string, string],
  as: 'mates' as const,
  distance,
  ...more,
});
const good = [pair('sun', 'planet-1', 0.25), pair('planet-1', 'ring', 0.25)];
const gap = (gaps: BodyFindings['gaps']) => bodyGap({ ...found, bodies: gapsOf(gaps) });

describe('a check cannot be emptied', () => {
  it('body-gap, where mates were not measured, not found or no number came of it', () => {
    expect(gap(good).holds).toBe(true);
    expect(gap([good[0]])).toMatchObject({
      holds: false,
      says: expect.stringMatching(/nothing was measured between planets and ring/),
    });
    expect(gap([good[0], pair('planet-1', 'ring', null)]).holds).toBe(false);
    expect(gap([...good, pair('planet-2', 'ring', Number.NaN)]).holds).toBe(false);
    const apart = (distance: number | null) => pair('planet-1', 'planet-2', distance, { as: 'apart' });
    expect(gap([...good, apart(null)]).holds).toBe(true);
    expect(gap([...good, apart(5)]).holds).toBe(true);
    expect(gap([...good, apart(0.1)]).holds).toBe(false);
    expect(gap([...good, apart(0)]).holds).toBe(false);
    expect(gap([...good, apart(Number.NaN)]).holds).toBe(false);
    expect(() => gap([])).toThrow(RangeError);
  });

  it('helix-accuracy, where no body or no triangle was measured', () => {
    const body = (measured: number) => ({
      ...{ name: 'sun', volume: 1, edges: {} as never, crossings: 0, teethLost: 0 },
      deviation: { worst: 0, astray: 0, measured, area: 0 } as never,
    });
    const held = (bodies: BodyFindings['bodies']) =>
      helixAccuracy({ spec, bodies: { bodies, gaps: [], trees: new Map() } }).holds;
    expect(held([body(10)])).toBe(true);
    expect(held([body(0)])).toBe(false);
    expect(held([body(10), body(0)])).toBe(false);
    expect(held([])).toBe(false);
    expect(held([{ ...body(10), deviation: null }])).toBe(false);
  });

  it('any figure of teeth, where one of several is no number', () => {
    const nan = Number.NaN;
    const [inner, outer] = asked.meshes;
    const [sun, planet, ring] = asked.gears;
    const ratio = contactRatio({ ...asked, meshes: [inner, { ...outer, transverseContactRatio: nan }] });
    expect(ratio).toMatchObject({ holds: false, level: 'must' });
    const lost = { ...outer, pair: { ...outer.pair!, tipRadius2: nan } };
    expect(involuteInterference({ ...asked, meshes: [inner, lost] }).holds).toBe(false);
    const gears = [sun, planet, { ...ring, relief: nan }];
    expect(lineWidth({ ...found, drawnNumbers: { ...asked, gears } }).holds).toBe(false);
    const segments = ring.profile.segments.map((one) => ({ ...one, from: nan })) as unknown;
    const profile = { ...ring.profile, segments: segments as typeof ring.profile.segments };
    expect(rootSpace({ ...asked, gears: [sun, planet, { ...ring, profile }] }).holds).toBe(false);
    const [rolled, other] = found.rolling;
    expect(rolling({ ...found, rolling: [rolled, { ...other, least: nan }] }).holds).toBe(false);
  });

  it('trochoid-interference, where a pinion is too large to lie in its ring at all', () => {
    // Tip radii 30 and 20 on axes 5 apart: the pinion's tip circle encloses the ring's.
    const enclosed = { centreDistance: 5, tipRadius1: 30, tipRadius2: 20 } as PairSizes;
    expect(trochoidMargin(enclosed)).toBe(Number.NEGATIVE_INFINITY);
    expect(trochoidInterference({ ...asked.meshes[1], pair: enclosed })).toMatchObject({
      holds: false,
      value: null,
    });
    const apart = { ...enclosed, tipRadius1: 10 };
    expect(trochoidInterference({ ...asked.meshes[1], pair: apart }).holds).toBe(true);
  });

  it('finds the least, no number before all others, and nothing of nothing', () => {
    expect(leastBy([3, 1, 2], (x) => x)).toBe(1);
    expect(leastBy([3, Number.NaN, -5], (x) => x)).toBeNaN();
    expect(() => leastBy([], () => 0)).toThrow(RangeError);
  });
});
