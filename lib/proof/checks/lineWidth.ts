import type { Train } from '../../fit/train/train.js';
import { gearSizes } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import { barThickness } from '../barThickness.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/**
 * The thinnest tooth, in the normal section at its reference circle (or datum line) as drawn, with the relief taken off,
 * holds two lines: one for each flank. Common practice, no source.
 */
export function lineWidth({ spec, drawnNumbers }: PlanFindings): Check {
  const limit = spec.limits.wall;
  const thinnest = leastBy(thicknesses(drawnNumbers), ({ thickness }) => thickness);
  const holds = thinnest.thickness >= limit;
  return {
    id: 'line-width',
    holds,
    level: 'should',
    value: thinnest.thickness,
    limit,
    unit: 'mm',
    says:
      `the thinnest tooth is ${thinnest.thickness.toFixed(3)} mm at its reference circle (${thinnest.part})` +
      (holds ? '' : '; a larger module, a smaller gap or a finer nozzle makes it printable'),
  };
}

/** Teeth in the normal section on their reference circles, or on the datum line. */
function thicknesses({ gears, bar }: Train): { part: string; thickness: number }[] {
  const teeth: { part: string; thickness: number }[] = gears.map(({ part, gear, relief }) => {
    const { referenceRadius, helixAngle } = gearSizes(gear);
    return { part, thickness: transverseThickness(gear, referenceRadius, relief) * Math.cos(helixAngle) };
  });
  return bar ? [...teeth, { part: 'bar', thickness: barThickness(bar, 0) }] : teeth;
}
