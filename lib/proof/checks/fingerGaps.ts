import type { PlanetarySpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { AllFindings, PlanFindings } from '../findings.js';
import { type FingerGap, fingerGaps as gapsOf } from '../safety/fingerGaps.js';

/**
 * A gap that lets a child's finger in must let it out again: when a rod of 5 mm (3/16 in) enters, one of 12 mm
 * (EN 71-1) or 13 mm (1/2 in, ASTM F963) must enter too. The stricter figure of each end is taken.
 * Source: ASTM F963 4.18.1 and the EN 71-1 clearance between moving parts, both for children under 96 months, read
 * in secondary copies; CEN/TR 13387 gives the same band for openings that do not move. Clause numbers change
 * between editions.
 */
const TRAP = { from: 5, below: 13 };

/** True for an opening that a small finger enters and may not leave. */
export function traps({ diameter }: FingerGap): boolean {
  return diameter >= TRAP.from && diameter < TRAP.below;
}

/** Of two openings the one that is worse: one that traps before one that does not, then the larger one, mm. */
export function isWorse(diameter: number, other: number): boolean {
  const rank = (one: number) => (traps({ where: '', diameter: one }) ? 1 : 0);
  return rank(diameter) > rank(other) || (rank(diameter) === rank(other) && diameter > other);
}

/** No opening of the set lies in the band in which fingers are caught. */
export function fingerGaps(
  found: PlanFindings<PlanetarySpec> & Pick<Partial<AllFindings>, 'addedHoles'>,
): Check {
  const gaps = gapsOf(found);
  const bad = gaps.filter(traps);
  const shown = bad.length ? bad : gaps;
  const largest = shown.reduce<FingerGap | null>((a, b) => (a && a.diameter >= b.diameter ? a : b), null);
  return {
    id: 'finger-gaps',
    holds: bad.length === 0,
    level: 'note',
    value: largest?.diameter ?? null,
    limit: TRAP.from,
    unit: 'mm',
    says:
      (shown.length
        ? `a rod enters ${shown.map(({ where, diameter }) => `${where} up to ${diameter.toFixed(1)} mm`).join(', ')}`
        : 'no rod enters between the gears') +
      (bad.length
        ? `: between ${TRAP.from} and ${TRAP.below} mm a child's finger may be caught (ASTM F963, EN 71-1); cover it, or choose other teeth, planets or bore`
        : `; none lies between ${TRAP.from} and ${TRAP.below} mm, where a child's finger may be caught`),
  };
}
