import type { Check } from '../check.js';
import type { Measured } from '../findings.js';

/** Area of teeth that a script's solids may take or cover, mm²: a tenth of a millimetre squared is less than prints show. */
const MOST_LOST = 0.01;

/**
 * Largest distance of the toothed surfaces from the exact helicoids, sampled on every triangle; and nothing that a
 * script joined or cut may take any of them away. Where those surfaces are not the ones the file alone would make, it says
 * of which parts.
 */
export function helixAccuracy({ spec, bodies: { bodies }, adjustments = [] }: Measured): Check {
  const toothed = bodies.flatMap(({ name, deviation }) => (deviation ? [{ name, ...deviation }] : []));
  const worst = Math.max(...toothed.map((one) => one.worst));
  // Nothing measured is nothing proved.
  const blank = toothed.filter((one) => one.measured === 0).map(({ name }) => name);
  const astray = toothed.reduce((sum, one) => sum + one.astray, 0);
  const measured = toothed.reduce((sum, one) => sum + one.measured, 0);
  const each = toothed.map((one) => `${one.name} ${one.worst.toFixed(4)}`).join(', ');
  const adjusted = [...new Set(adjustments.map(({ part }) => part))];
  const lost = bodies.filter(({ teethLost }) => teethLost > MOST_LOST);
  return {
    id: 'helix-accuracy',
    holds:
      toothed.length > 0 &&
      blank.length === 0 &&
      astray === 0 &&
      lost.length === 0 &&
      worst <= spec.tolerance,
    level: 'must',
    value: Number.isFinite(worst) ? worst : null,
    limit: spec.tolerance,
    unit: 'mm',
    says:
      `largest distance from the exact surface on ${measured} triangles: ${each} mm` +
      (adjusted.length ? `; that of ${adjusted.join(' and ')} is the adjusted one (see adjustments)` : '') +
      (toothed.length ? '' : '; no toothed surface was found') +
      (blank.length ? `; none on ${blank.join(', ')}` : '') +
      (astray ? `; ${astray} triangles lie on no exact surface` : '') +
      lost
        .map(({ name, teethLost }) => `; ${teethLost.toFixed(2)} mm² of teeth cut away or covered on ${name}`)
        .join(''),
  };
}
