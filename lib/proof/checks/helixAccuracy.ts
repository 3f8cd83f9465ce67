import type { Check } from '../check.js';
import type { AllFindings } from '../findings.js';

/** Largest distance of the toothed surfaces from the exact helicoids, sampled on every triangle. */
export function helixAccuracy({ spec, bodies: { bodies } }: AllFindings): Check {
  const toothed = bodies.flatMap(({ name, deviation }) => (deviation ? [{ name, ...deviation }] : []));
  const worst = Math.max(...toothed.map((one) => one.worst));
  const astray = toothed.reduce((sum, one) => sum + one.astray, 0);
  const measured = toothed.reduce((sum, one) => sum + one.measured, 0);
  const each = toothed.map((one) => `${one.name} ${one.worst.toFixed(4)}`).join(', ');
  return {
    id: 'helix-accuracy',
    holds: astray === 0 && worst <= spec.tolerance,
    level: 'must',
    value: worst,
    limit: spec.tolerance,
    unit: 'mm',
    says:
      `largest distance from the exact surface on ${measured} triangles: ${each} mm` +
      (astray ? `; ${astray} triangles lie on no exact surface` : ''),
  };
}
