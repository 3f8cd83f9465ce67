import { describe, expect, it } from 'vitest';
import { opening } from '../../lib/train/opening.js';

const sizes = { centreDistance: 22.5, planetTipRadius: 12.75, ringTipRadius: 32.7, sunTipRadius: 12.75 };
const even = (count: number) => Array.from({ length: count }, (_, i) => (360 * i) / count);

/** Widest run of directions, in steps of 0.01°, in which a ray from the axis meets no planet. */
function widestFree(places: number[], { centreDistance, planetTipRadius }: typeof sizes): number {
  const steps = 36000;
  const free = Array.from({ length: steps }, (_, i) =>
    places.every((place) => {
      const angle = ((i / 100 - place) * Math.PI) / 180;
      const behind = Math.cos(angle) < 0;
      return behind || Math.abs(centreDistance * Math.sin(angle)) > planetTipRadius;
    }),
  );
  let widest = 0;
  let run = 0;
  // Twice round, so that a run across 0° counts whole.
  for (let i = 0; i < 2 * steps; i++) {
    run = free[i % steps] ? run + 1 : 0;
    widest = Math.max(widest, Math.min(run, steps));
  }
  return widest / 100;
}

/** Where an edge of half-length `half` rests when it is moved towards the axis along `middle`, by points on circles. */
function rest(places: number[], middle: number, half: number, given: typeof sizes): number {
  let highest = 0;
  const touch = (radius: number, distance: number, place: number) => {
    const turn = ((place - middle) * Math.PI) / 180;
    for (let i = 0; i < 36000; i++) {
      const angle = (i * Math.PI) / 18000;
      const along = distance * Math.sin(turn) + radius * Math.sin(angle);
      if (Math.abs(along) <= half)
        highest = Math.max(highest, distance * Math.cos(turn) + radius * Math.cos(angle));
    }
  };
  for (const place of places) touch(given.planetTipRadius, given.centreDistance, place);
  touch(given.sunTipRadius, 0, 0);
  return highest;
}

describe('the widest opening', () => {
  it.each([
    ['five even planets', even(5), 36],
    ['three even planets', even(3), 60],
    ['three planets as near to even as 20/80 lets them', [0, 118.8, 241.2], 180],
    ['four planets, two of them moved', [0, 92.3077, 180, 272.3077], 46.15385],
    ['planets of which none is at 0°', [40, 150, 260], 330],
    ['planets in any order, past a turn', [540, 0, 272.3077, 92.3077], 46.15385],
  ])('%s: arc by rays, drop by points', (_, places, middle) => {
    const found = opening(places, sizes);
    expect(Math.abs(found.arc - widestFree(places, sizes))).toBeLessThan(0.03);
    expect(found.drop).toBeCloseTo(sizes.ringTipRadius - rest(places, middle, 100, sizes), 5);
  });

  it.each([30, 22, 12, 2, 0.1])('an edge of %d mm rests on its ends, or on the sun', (edge) => {
    const found = opening(even(5), sizes, edge);
    expect(found.drop).toBeCloseTo(sizes.ringTipRadius - rest(even(5), 36, edge / 2, sizes), 2);
  });

  it('two planets leave the edge on the sun when the sun stands higher', () => {
    const found = opening(even(2), { ...sizes, sunTipRadius: 14 });
    expect(found.drop).toBeCloseTo(32.7 - 14, 12);
  });

  it('is closed when planets cover the view, and an edge may not get inside the ring at all', () => {
    const many = { centreDistance: 21, planetTipRadius: 7, ringTipRadius: 26, sunTipRadius: 16 };
    expect(opening(even(9), many)).toEqual({ arc: expect.closeTo(40 - 2 * 19.4712, 3), drop: 0 });
    expect(opening(even(10), many).arc).toBe(0);
  });
});
