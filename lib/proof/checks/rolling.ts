import { drawnGap } from '../../fit/compensation.js';
import { allowedGapError } from '../allowedGapError.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { gapAsked } from '../printing/gapAsked.js';

/** The least gap found while the exact outlines roll through a pitch, both flanks, every planet. */
export function rolling({ spec, rolling: { inner, outer } }: ToothFindings): Check {
  const least = Math.min(inner.least, outer.least);
  const limit = drawnGap(spec) - allowedGapError(spec);
  const [where, found] = inner.least <= outer.least ? ['sun and planet', inner] : ['ring and planet', outer];
  return {
    id: 'rolling',
    holds: least >= limit,
    level: 'must',
    value: least,
    limit,
    unit: 'mm',
    says:
      `least gap ${least.toFixed(4)} mm of ${gapAsked(spec)}, between ${where} ${found.planet} at ${found.phase.toFixed(2)} of a pitch; ` +
      `by flank: sun ${pair(inner.bySide)}, ring ${pair(outer.bySide)}`,
  };
}

function pair([a, b]: [number, number]): string {
  return `${a.toFixed(4)} and ${b.toFixed(4)} mm`;
}
