import { drawnNumbers } from '../../fit/compensation.js';
import { reliefs } from '../../fit/reliefs.js';
import { gearSizes } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/** Thickness of the thinnest tooth tip in the normal section, as drawn, relief taken off: above zero, and a line wide. */
export function tipThickness(found: PlanFindings): Check {
  const { spec, gears, radii } = drawnNumbers(found);
  const relief = reliefs(spec.fit);
  const tips = (['sun', 'planet', 'ring'] as const).map((part) => {
    const radius = radii[part].tip;
    const { referenceRadius, helixAngle } = gearSizes(gears[part]);
    const cosHere = Math.cos(Math.atan((Math.tan(helixAngle) * radius) / referenceRadius));
    return { part, thickness: transverseThickness(gears[part], radius, relief[part]) * cosHere };
  });
  const thinnest = tips.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const pointed = !(thinnest.thickness > 0);
  const limit = pointed ? 0 : spec.limits.toothFeature;
  return {
    id: 'tip-thickness',
    holds: !pointed && thinnest.thickness >= limit,
    level: pointed ? 'must' : 'should',
    value: thinnest.thickness,
    limit,
    unit: 'mm',
    says: pointed
      ? `fit.gap ${found.spec.fit.gap}: the teeth of the ${thinnest.part} come to a point below their tip circle; a smaller gap or profile shift, or a larger module, leaves a tip`
      : `the thinnest tooth tip is ${thinnest.thickness.toFixed(3)} mm (${thinnest.part})`,
  };
}
