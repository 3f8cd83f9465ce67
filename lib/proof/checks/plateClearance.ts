import { allowedGapError } from '../allowedGapError.js';
import type { Check } from '../check.js';
import type { AllFindings } from '../findings.js';

/** Least distance of a carrier from sun and ring, measured on the meshes; no record where there is no carrier. */
export function plateClearance({ spec, bodies }: AllFindings): Check[] {
  const gaps = bodies.gaps.filter(
    ({ between, least }) =>
      least !== undefined && between[1] === 'carrier' && !between[0].startsWith('planet'),
  );
  if (!gaps.length) return [];
  const asked = Math.min(...gaps.map(({ least }) => least!));
  const measured = gaps.map(({ distance }) => distance).filter((distance) => distance !== null);
  const value = measured.length ? Math.min(...measured) : null;
  const limit = asked - allowedGapError(spec);
  const each = gaps
    .map(
      ({ between: [gear], distance }) =>
        `${distance === null ? 'far' : `${distance.toFixed(3)} mm`} from the ${gear}`,
    )
    .join(', ');
  return [
    {
      id: 'plate-clearance',
      holds: value === null || value >= limit,
      level: 'must',
      value,
      limit,
      unit: 'mm',
      says: `the carrier stands ${each}; ${asked.toFixed(3)} mm drawn between them at least`,
    },
  ];
}
