import { describe, expect, it } from 'vitest';
import { cautions } from '../../../lib/proof/cautions.js';
import { smallParts as check } from '../../../lib/proof/checks/smallParts.js';
import { smallParts } from '../../../lib/proof/safety/smallParts.js';
import { marginAt } from '../../../lib/proof/safety/smallPartsCylinder.js';
import { buildSet } from '../../../lib/solid/buildSet.js';
import { referenceSet, setOf } from '../../sets.js';

const found = smallParts(buildSet(referenceSet()));

describe('parts of the reference set', () => {
  it('sun and planet of 28.98 mm tip diameter go in, the ring does not', () => {
    expect(found.map(({ part, fits }) => [part, fits])).toEqual([
      ['sun', true],
      ['planet', true],
      ['ring', false],
    ]);
    // Upright, the tip circle 15 m_t + 2 m_n leaves (31.75 − 28.98) / 2 of wall.
    expect(found[1].margin).toBeCloseTo((31.75 - (15 * 1.5) / Math.cos(Math.PI / 6) - 3) / 2, 2);
  });

  it('a part said to go in has every vertex inside in the pose given', () => {
    const [, planet] = buildSet(referenceSet());
    const { orientation } = found[1];
    const [u, e] = [orientation!.axis, orientation!.deepSide];
    const side = [u[1] * e[2] - u[2] * e[1], u[2] * e[0] - u[0] * e[2], u[0] * e[1] - u[1] * e[0]];
    const points = planet.mesh.positions;
    // The axis of the cylinder through the middle of the planet is a place that must do, near enough.
    const middle = [15 * (1.5 / Math.cos(Math.PI / 6)), 0, 10];
    const along = (row: number[]) => row[0] * middle[0] + row[1] * middle[1] + row[2] * middle[2];
    const pose = Float64Array.of(...e, ...side, ...u);
    expect(marginAt(points, pose, along(e), along(side))).toBeGreaterThan(1);
  });

  it('gives the same answer every time', () => {
    expect(smallParts(buildSet(referenceSet()))).toEqual(found);
  });
});

describe('the check', () => {
  it('is a note that names the parts which go in', () => {
    const failed = check({ smallParts: found });
    expect(failed).toMatchObject({ id: 'small-parts', holds: false, level: 'note', limit: 0 });
    expect(failed.says).toContain('a loose sun');
    expect(failed.says).toContain('a loose planet');
    expect(failed.says).not.toContain('a loose ring');
  });

  it('holds for gears too large for the cylinder', () => {
    const large = smallParts(buildSet(setOf(24, 24, 72, 4)));
    expect(check({ smallParts: large })).toMatchObject({ holds: true, level: 'note' });
  });
});

describe('cautions', () => {
  const about = (start: string, ...given: Parameters<typeof cautions>) =>
    cautions(...given).find((one) => one.startsWith(start))!;

  it('say what was computed, and say so when nothing was', () => {
    expect(about('Small parts', { smallParts: found })).toContain('A loose sun or planet fits');
    expect(about('Small parts', { smallParts: found.slice(2) })).toContain('no whole part was found to fit');
    expect(about('Small parts')).toContain('were not held against');
    const gaps = [{ where: "the sun's bore", diameter: 8 }];
    expect(about('Fingers', { fingerGaps: gaps })).toContain("the sun's bore (8.0 mm)");
    expect(about('Fingers')).not.toContain('may be caught');
  });

  it('warn of drying at or above the glass transition', () => {
    const pla = { name: 'PLA', glassTransition: 60 };
    expect(about('Dry PLA', {}, pla)).toContain('below its glass transition of 60 °C');
    expect(about('Dry PLA', {}, { ...pla, dryingTemperature: 45 })).toContain('at 45 °C, below');
    expect(about('Do not dry', {}, { ...pla, dryingTemperature: 65 })).toContain('65 °C');
  });
});
