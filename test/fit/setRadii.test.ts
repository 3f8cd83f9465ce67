import { describe, expect, it } from 'vitest';
import { sentences } from '../../lib/fit/adjustment.js';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import { rollTrain } from '../../lib/proof/rolling/rollTrain.js';
import { gearSizes } from '../../lib/tooth/gear.js';
import { fitSet, fitted, setNumbers } from '../planetarySets.js';
import { referenceSet, setOf } from '../sets.js';

describe('root roundings', () => {
  // A mate's tip that stands off by the gap has its nearest point g sin α deeper than its own height; with many teeth
  // (nearly a rack) that is below the straight flank of profile B, 1.0526 m, from a gap of 0.15 m on.
  it.each([
    [100, 100, 0, 0.25],
    [100, 100, 45, 0.25],
    [60, 40, 30, 0.45],
    [40, 100, 20, 0.4],
  ])('of %d and %d teeth at %d° give way to tips that keep a gap of %f mm', (sun, planet, angle, gap) => {
    const spec = setOf(sun, planet, sun + 2 * planet, 2, {
      module: 1,
      helix: { form: angle ? 'herringbone' : 'spur', angle },
      fit: { gap },
    });
    const rolled = rollTrain(fitted(spec));
    expect(rolled.map(({ of }) => of)).toEqual(['sun', 'ring']);
    for (const { least } of rolled) expect(least / gap).toBeGreaterThan(0.98);
  });

  it('keep the rack’s radius where nothing comes near', () => {
    const { sun } = fitSet(setOf(15, 15, 45, 5)).profiles;
    const rounding = sun.segments[1];
    expect(rounding.kind === 'trochoid' && rounding.root.radius).toBeCloseTo(0.3 * 1.5, 12);
  });
});

it('says by how much tips of a ring are cut back, and to where', () => {
  const { gears, radii } = setNumbers(referenceSet());
  const cut = radii.ring.tip - gearSizes(gears.ring).tipRadius;
  expect(cut).toBeGreaterThan(0);
  expect(sentences(trainNumbers(referenceSet()).adjustments)).toContain(
    `tips of the ring cut back by ${cut.toFixed(3)} mm to where the planet's involute begins (involute interference)`,
  );
});
