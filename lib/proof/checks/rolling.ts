import { drawnGap } from '../../fit/compensation.js';
import type { CommonSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { gapAsked } from '../printing/gapAsked.js';
import { leastRolled } from '../rolling/rollingError.js';

/** The least gap found while the exact outlines roll through a pitch, both flanks, every planet. */
export function rolling({ spec, rolling: { inner, outer } }: ToothFindings): Check {
  const [where, found] = inner.least <= outer.least ? ['sun and planet', inner] : ['ring and planet', outer];
  return rollingOf(
    spec,
    { least: found.least, phase: found.phase, where: `${where} ${found.planet}` },
    `sun ${bothFlanks(inner.bySide)}, ring ${bothFlanks(outer.bySide)}`,
  );
}

/**
 * The same judgement for any mesh.
 * @param found the least gap, mm, between which parts, and at which share of a pitch
 * @param byFlank least gaps of either flank, in words
 */
export function rollingOf(
  spec: CommonSpec,
  { least, phase, where }: { least: number; phase: number; where: string },
  byFlank: string,
): Check {
  const limit = leastRolled(drawnGap(spec));
  return {
    id: 'rolling',
    holds: least >= limit,
    level: 'must',
    value: least,
    limit,
    unit: 'mm',
    says: `least gap ${least.toFixed(4)} mm of ${gapAsked(spec)}, between ${where} at ${phase.toFixed(2)} of a pitch; by flank: ${byFlank}`,
  };
}

/** Least gaps of the two flanks, mm, in words. */
export function bothFlanks([one, other]: readonly [number, number]): string {
  return `${one.toFixed(4)} and ${other.toFixed(4)} mm`;
}
