import { allowsEqualSpacing } from '../../train/assembly.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { refusalOffer } from '../offer.js';

/**
 * Equally spaced planets mesh with sun and ring at once only when (sun + ring teeth) / planets is whole.
 * Source: assembly condition of simple planetary sets (AGMA 6123 and handbooks, from memory).
 */
export function assembly({ spec }: PlanFindings): Check {
  const { sun, planets, ring } = spec;
  const sum = sun.teeth + ring.teeth;
  const holds = allowsEqualSpacing(sun.teeth, ring.teeth, planets.count);
  const quotient = sum / planets.count;
  return {
    id: 'assembly',
    holds,
    level: 'must',
    value: quotient,
    limit: Math.round(quotient),
    unit: '1',
    says: holds
      ? `(sun ${sun.teeth} + ring ${ring.teeth}) / ${planets.count} planets = ${quotient}, whole: all planets go in equally spaced`
      : `planets.count ${planets.count}: (sun ${sun.teeth} + ring ${ring.teeth}) / ${planets.count} = ${quotient.toFixed(3)} must be whole ` +
        `for equally spaced planets. ${refusalOffer(spec)}`,
  };
}
