import { traps } from './checks/fingerGaps.js';
import type { FingerGap } from './safety/fingerGaps.js';
import type { SmallPart } from './safety/smallParts.js';

/** What was computed on a set that its cautions speak of; what is missing was not computed. */
export interface SafetyFindings {
  smallParts?: readonly SmallPart[];
  fingerGaps?: readonly FingerGap[];
}

/** What is known of the filament. Temperatures in °C. */
export interface Filament {
  name?: string;
  glassTransition?: number;
  dryingTemperature?: number;
}

/**
 * What a maker must be told with every set, with what was computed on this one. Plain words; local codes and
 * licensed practice decide.
 * Small parts: 16 CFR 1501.4 (children under 3). Drying below the glass transition: common practice, no source.
 */
export function cautions(found: SafetyFindings = {}, filament: Filament = {}): string[] {
  return [
    smallPartsCaution(found.smallParts),
    fingerCaution(found.fingerGaps),
    'Not for lifting, holding people, vehicles or powered machines: printed gears break without warning, and the forces named here are estimates, not ratings. Such uses need a licensed engineer and your local codes.',
    'Not for food: printed grooves hold germs, and filament and nozzle are seldom food safe. Where food is near, your local food rules decide.',
    dryingCaution(filament),
  ];
}

function smallPartsCaution(parts: readonly SmallPart[] | undefined): string {
  const rule =
    'Parts that break off count too; a maker who gives or sells it must have it tested by the local rule.';
  if (!parts)
    return `Small parts: keep away from children under 3 years. Loose parts were not held against the small-parts cylinder of 16 CFR 1501.4. ${rule}`;
  const fitting = parts.filter(({ fits }) => fits).map(({ part }) => part);
  return fitting.length
    ? `Small parts: keep away from children under 3 years. A loose ${fitting.join(' or ')} fits the small-parts cylinder of 16 CFR 1501.4 and may choke a child. ${rule}`
    : `Small parts: no whole part was found to fit the small-parts cylinder of 16 CFR 1501.4; this is a computation, no test. ${rule}`;
}

function fingerCaution(gaps: readonly FingerGap[] | undefined): string {
  const bad = gaps?.filter(traps) ?? [];
  const where = bad.map(({ where, diameter }) => `${where} (${diameter.toFixed(1)} mm)`).join(', ');
  return (
    'Fingers and hair: turning teeth pinch.' +
    (bad.length ? ` A child's finger enters and may be caught ${where}.` : '') +
    ' Cover the teeth where children turn the set, and let no one turn it under power while it is open. Local toy and machine rules decide.'
  );
}

function dryingCaution({ name = 'filament', glassTransition, dryingTemperature }: Filament): string {
  const rule =
    'only in a dryer made for it, never in an oven that cooks food; hot filament and fumes can harm.';
  if (glassTransition === undefined)
    return dryingTemperature === undefined
      ? `Dry ${name} below its glass transition and ${rule}`
      : `Dry ${name} at ${dryingTemperature} °C if that is below its glass transition, and ${rule}`;
  if (dryingTemperature === undefined)
    return `Dry ${name} below its glass transition of ${glassTransition} °C and ${rule}`;
  return dryingTemperature < glassTransition
    ? `Dry ${name} at ${dryingTemperature} °C, below its glass transition of ${glassTransition} °C, and ${rule}`
    : `Do not dry ${name} at ${dryingTemperature} °C: its glass transition is ${glassTransition} °C, where the spool softens and sticks. Stay below it, and dry ${rule}`;
}
