import { drawnNumbers } from '../../fit/compensation.js';
import { reliefs } from '../../fit/reliefs.js';
import { gearSizes } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/**
 * The thinnest tooth, in the normal section at its reference circle as drawn, with the relief taken off, holds two lines:
 * one for each flank. Common practice, no source.
 */
export function lineWidth(found: PlanFindings): Check {
  const { spec, gears } = drawnNumbers(found);
  const relief = reliefs(spec.fit);
  const teeth = (['sun', 'planet', 'ring'] as const).map((part) => {
    const { referenceRadius, helixAngle } = gearSizes(gears[part]);
    const thickness = transverseThickness(gears[part], referenceRadius, relief[part]) * Math.cos(helixAngle);
    return { part, thickness };
  });
  return lineWidthOf(teeth, spec.limits.wall);
}

/** The same of any teeth, by their thickness as drawn, mm. */
export function lineWidthOf(teeth: readonly { part: string; thickness: number }[], limit: number): Check {
  const thinnest = leastBy(teeth, ({ thickness }) => thickness);
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
