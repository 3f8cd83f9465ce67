import { drawnGap } from '../../fit/compensation.js';
import { allowedGapError } from '../allowedGapError.js';
import { type BodyGap, gapsBetween } from '../bodies.js';
import type { Check } from '../check.js';
import type { AllFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';
import { sidesOf } from '../meshWords.js';
import { gapAsked } from '../printing/gapAsked.js';

/** Least distances between the finished meshes: mates keep the gap that was drawn, neighbouring planets at least that. */
export function bodyGap({ spec, bodies, drawn }: Pick<AllFindings, 'spec' | 'bodies' | 'drawn'>): Check {
  const mates = drawn.meshes.map((mesh) => ({
    name: `between ${sidesOf(drawn, mesh).join(' and ')}`,
    kinds: mesh.between,
  }));
  const gap = drawnGap(spec);
  const allowed = allowedGapError(spec);
  const errors = bodies.gaps.map((pair) => ({ pair, error: errorOf(pair, gap) }));
  const worst = leastBy(errors, ({ error }) => -error);
  const unmeasured = mates.filter(
    ({ kinds }) => !gapsBetween(bodies, kinds).some(({ as }) => as === 'mates'),
  );
  return {
    id: 'body-gap',
    holds: worst.error <= allowed && unmeasured.length === 0,
    level: 'must',
    value: Number.isFinite(worst.error) ? worst.error : null,
    limit: allowed,
    unit: 'mm',
    says:
      `${gapAsked(spec)}; measured ${mates.map(({ name, kinds }) => `${range(gapsBetween(bodies, kinds))} ${name}`).join(', ')}` +
      (worst.error <= allowed ? '' : `; farthest off: ${worst.pair.between.join(' and ')}`) +
      unmeasured.map(({ name }) => `; nothing was measured ${name}`).join(''),
  };
}

/** How far a distance is from what it must be, mm. */
function errorOf({ as, least, distance }: BodyGap, gap: number): number {
  if (as === 'apart') return distance === null ? 0 : Math.max(0, (least ?? gap) - distance);
  return distance === null ? Number.POSITIVE_INFINITY : Math.abs(distance - gap);
}

function range(pairs: readonly BodyGap[]): string {
  const distances = pairs.map(({ distance }) => distance).filter((d) => d !== null);
  if (distances.length < pairs.length) return 'more than was looked for';
  const [least, most] = [Math.min(...distances), Math.max(...distances)];
  return most - least < 5e-5 ? `${least.toFixed(4)} mm` : `${least.toFixed(4)} to ${most.toFixed(4)} mm`;
}
