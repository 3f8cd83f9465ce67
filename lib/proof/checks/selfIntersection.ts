import type { Check } from '../check.js';
import type { Measured } from '../findings.js';

/** No body's surface crosses itself. */
export function selfIntersection({ bodies: { bodies } }: Measured): Check {
  const crossings = bodies.reduce((sum, body) => sum + body.crossings, 0);
  const bad = bodies.filter((body) => body.crossings > 0).map((body) => body.name);
  return {
    id: 'self-intersection',
    holds: crossings === 0,
    level: 'must',
    value: crossings,
    limit: 0,
    unit: 'crossings',
    says:
      crossings === 0
        ? 'no surface crosses itself'
        : `triangles cross in ${bad.join(', ')}; where teeth cross themselves, a smaller tolerance draws them finer`,
  };
}
