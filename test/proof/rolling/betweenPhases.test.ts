import { describe, expect, it } from 'vitest';
import { drawnGap } from '../../../lib/fit/compensation.js';
import { fitDrawn, fitTrain } from '../../../lib/fit/train/fitTrain.js';
import { trainNumbers } from '../../../lib/fit/train/trainNumbers.js';
import { betweenPhases } from '../../../lib/proof/rolling/betweenPhases.js';
import { type Going, leastAround } from '../../../lib/proof/rolling/leastAround.js';
import { nearnesses } from '../../../lib/proof/rolling/nearnesses.js';
import { chunkBoxes, type Strand } from '../../../lib/proof/rolling/outlineDistance.js';
import { rollTrain } from '../../../lib/proof/rolling/rollTrain.js';
import { preparedOutline, strandsNear } from '../../../lib/proof/rolling/strandsNear.js';
import type { PairSpec } from '../../../lib/spec/types.js';
import { rackOf, ringPairOf } from '../../trains.js';

/** A short line on no flank, standing for a corner. */
function strand(x: number, y: number, length = 1e-6): Strand {
  const points = Float64Array.of(x, y, x + length, y);
  const shortening = Float64Array.of(1);
  return {
    points,
    segment: 3,
    shortening,
    leastShortening: 1,
    boxes: chunkBoxes(points),
    x,
    y,
    radius: length,
  };
}

describe('between the phases', () => {
  // Closed form: a corner on a circle of radius 10 passes a fixed one that lies 0.05 outside the circle.
  it.each([0.137, 0.51, 0.97, 0.002])('a corner that passes another at %d of a pitch is met', (when) => {
    const turn = 1;
    const going: Going = { turn, x: 0, y: 0, slide: 0, reach: 10 };
    const still: Going = { turn: 0, x: 0, y: 0, slide: 0, reach: 0 };
    const fixed = [strand(10.05 * Math.cos(turn * when), 10.05 * Math.sin(turn * when))];
    const at = (phase: number) => [strand(10 * Math.cos(turn * phase), 10 * Math.sin(turn * phase))];
    // Twenty-four phases alone come no nearer than some tenths of a millimetre.
    const sampled = Math.min(...Array.from({ length: 24 }, (_, i) => nearnesses(at(i / 24), fixed, 5)[0]));
    const found = betweenPhases(24, { least: sampled, phase: 0 }, 1e-3, (phase, half, bound) => ({
      value: nearnesses(at(phase), fixed, bound)[0],
      around: leastAround(at(phase), fixed, going, still, half, bound),
    }));
    expect(found.least).toBeLessThanOrEqual(0.05 + 1e-3);
    expect(found.least).toBeGreaterThan(0.05 - 1e-5);
    expect(Math.abs(found.phase - when)).toBeLessThan(2e-3);
  });

  it('stops at once where outlines meet', () => {
    let looked = 0;
    const found = betweenPhases(24, { least: 0, phase: 0.5 }, 1e-3, () => {
      looked++;
      return { value: 0, around: 0 };
    });
    expect(found).toEqual({ least: 0, phase: 0.5 });
    expect(looked).toBe(0);
  });

  // Rings of few teeth more than their pinions, whose tips pass each other closely: looked at by brute force.
  it.each([
    [26, 33, {}],
    [20, 29, {}],
    [16, 26, { helix: { form: 'spur' } }],
  ])('the least of a %d/%d pair in a ring is that of four thousand phases', (one, two, more) => {
    const spec: PairSpec = ringPairOf(one, two, { module: 1.46, profileShift: 'solve', ...more });
    const drawn = fitDrawn(fitTrain(trainNumbers(spec)));
    const gap = drawnGap(spec);
    const [rolled] = rollTrain(drawn);
    const [pinion, wheel] = drawn.gears.map((gear) => ({ ...gear, ...gear.places[0] }));
    const outlines = [pinion, wheel].map(({ profile }) => preparedOutline(profile, 0.003 * gap));
    let least = 2 * gap;
    for (let i = 0; i < 4000; i++) {
      const turn = (2 * Math.PI * i) / 4000;
      const near = strandsNear(outlines[0], pinion.rotation + turn / one, 0, 0, {
        ...{ kind: 'beyond', x: wheel.centre[0], y: 0, radius: wheel.profile.tipRadius - least },
      });
      const mates = strandsNear(outlines[1], wheel.rotation + turn / two, ...wheel.centre, {
        ...{ kind: 'within', x: 0, y: 0, radius: pinion.profile.tipRadius + least },
      });
      least = Math.min(least, nearnesses(near, mates, least)[0]);
    }
    expect(rolled.least).toBeLessThanOrEqual(least + 0.002 * gap);
    expect(rolled.least).toBeGreaterThan(least - 0.002 * gap);
  });

  it.each([5, 8, 10, 15])(
    'a bar keeps the gap to the undercut roots of %d teeth, but for chords',
    (teeth) => {
      for (const rack of ['A', 'B', 'C', 'D']) {
        const spec = rackOf(teeth, 6, { rack, helix: { form: 'spur' } });
        const least = rollTrain(fitDrawn(fitTrain(trainNumbers(spec))))[0].least;
        expect(least).toBeGreaterThanOrEqual(spec.fit.gap * (1 - 0.006));
      }
    },
  );
});
