// What checks advise is something that a file can hold.
import { describe, expect, it } from 'vitest';
import { overhang } from '../../../lib/proof/checks/overhang.js';
import { thinWalls } from '../../../lib/proof/checks/thinFeatures.js';
import { tipOffer } from '../../../lib/proof/checks/tipThickness.js';
import { inspectSet } from '../../../lib/proof/proveSet.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import { setOf } from '../../sets.js';
import { type File, problemsOf, spinner, withValue } from '../../spec/table.js';

describe('advice', () => {
  it('for a tip names no gap and no module beyond a file’s', () => {
    const like = (module: number, gap: number) => setOf(15, 15, 45, 5, { module, fit: { gap } });
    const never = (spec: { module: number; fit: { gap: number } }, most: number) =>
      tipOffer(spec as never, (tried: { module: number; fit: { gap: number } }) => {
        expect(tried.fit.gap).toBeGreaterThanOrEqual(0.02);
        expect(tried.module).toBeLessThanOrEqual(20);
        return tried.module >= most;
      });
    expect(never(like(15, 0.02), 19)).toContain('module 19.0');
    expect(never(like(15, 0.5), 21)).not.toMatch(/module \d|fit\.gap \d/);
    // Only next to nothing would do: no gap that a file can hold.
    expect(tipOffer(like(1, 0.3), (tried) => tried.fit.gap < 0.0201)).not.toContain('fit.gap 0.01');
  });

  it('for overhangs names no helix flatter than there is', () => {
    const spec = setOf(12, 12, 36, 3, { faceWidth: 4, limits: { overhangAngle: 0.5 }, bevel: { size: 0 } });
    const { says, holds } = overhang({ spec, parts: buildSet(spec) });
    expect(holds).toBe(false);
    expect(says).toContain('helix.form spur would pass');
  });

  it('for thin walls names no face width below the least', () => {
    const wall = (thickness: number) => [{ what: 'rim', thickness, mend: 'a thicker rim' }];
    expect(thinWalls(wall(0.4), 5, 2).says).not.toContain('faceWidth');
    expect(thinWalls(wall(0.6), 5, 2).says).toContain('faceWidth 1.2 would pass');
  });

  it('against undercut goes into the file as it stands, the ring’s shift left to follow', () => {
    const file = {
      ...spinner(),
      helix: { form: 'spur' },
      ring: { profileShift: 0 },
      faceWidth: 4,
      tolerance: 0.1,
    };
    const undercut = (given: File) =>
      inspectSet(resolveSpec(given as { kind: 'planetary' })).checks.find(({ id }) => id === 'undercut')!;
    const found = undercut(structuredClone(file));
    expect(found.holds).toBe(false);
    const [, sun, planets] =
      /sun\.profileShift ([\d.]+), planets\.profileShift ([\d.]+), ring\.profileShift left out/.exec(
        found.says,
      )!;
    // x_min = 1 − z sin² 20° / 2 for the standard rack (DIN 3960, from memory): 0.1227 for 15 teeth.
    expect(Number(sun)).toBeCloseTo(0.123, 9);
    const shifted = withValue('sun.profileShift', Number(sun), structuredClone(file));
    withValue('planets.profileShift', Number(planets), shifted);
    withValue('ring.profileShift', undefined, shifted);
    expect(problemsOf(shifted)).toEqual([]);
    expect(undercut(shifted).holds).toBe(true);
  });
});
