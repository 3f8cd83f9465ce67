import { drawnGap } from '../../fit/compensation.js';
import { allowedGapError } from '../allowedGapError.js';
import type { BodyGap } from '../bodies.js';
import type { Check } from '../check.js';
import type { AllFindings } from '../findings.js';
import { gapAsked } from '../printing/gapAsked.js';

/** Least distances between the finished meshes: mates keep the gap that was drawn, neighbouring planets at least that. */
export function bodyGap({ spec, bodies }: AllFindings): Check {
  const gap = drawnGap(spec);
  const allowed = allowedGapError(spec);
  const mates = [...bodies.sunPlanet, ...bodies.planetRing].map((pair) => ({
    pair,
    error: pair.distance === null ? Number.POSITIVE_INFINITY : Math.abs(pair.distance - gap),
  }));
  const others = bodies.planets.map((pair) => ({
    pair,
    error: pair.distance === null ? 0 : Math.max(0, gap - pair.distance),
  }));
  const worst = [...mates, ...others].reduce((a, b) => (b.error > a.error ? b : a));
  return {
    id: 'body-gap',
    holds: worst.error <= allowed,
    level: 'must',
    value: Number.isFinite(worst.error) ? worst.error : null,
    limit: allowed,
    unit: 'mm',
    says:
      `${gapAsked(spec)}; measured ${range(bodies.sunPlanet)} between sun and planets, ${range(bodies.planetRing)} between planets and ring` +
      (worst.error > allowed ? `; farthest off: ${worst.pair.between.join(' and ')}` : ''),
  };
}

function range(pairs: readonly BodyGap[]): string {
  const distances = pairs.map(({ distance }) => distance).filter((d) => d !== null);
  if (distances.length < pairs.length) return 'more than was looked for';
  const [least, most] = [Math.min(...distances), Math.max(...distances)];
  return most - least < 5e-5 ? `${least.toFixed(4)} mm` : `${least.toFixed(4)} to ${most.toFixed(4)} mm`;
}
