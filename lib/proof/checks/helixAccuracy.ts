import type { Check } from '../check.js';
import type { AllFindings } from '../findings.js';

/** Largest distance of the toothed surfaces from the exact helicoids, sampled on every triangle. */
export function helixAccuracy({ spec, bodies: { bodies } }: AllFindings): Check {
  const worst = bodies.reduce((a, b) => (b.deviation.worst > a.deviation.worst ? b : a));
  const astray = bodies.reduce((sum, body) => sum + body.deviation.astray, 0);
  const measured = bodies.reduce((sum, body) => sum + body.deviation.measured, 0);
  const each = bodies.map(({ name, deviation }) => `${name} ${deviation.worst.toFixed(4)}`).join(', ');
  return {
    id: 'helix-accuracy',
    holds: astray === 0 && worst.deviation.worst <= spec.tolerance,
    level: 'must',
    value: worst.deviation.worst,
    limit: spec.tolerance,
    unit: 'mm',
    says:
      `largest distance from the exact surface on ${measured} triangles: ${each} mm` +
      (astray ? `; ${astray} triangles lie on no exact surface` : ''),
  };
}
