import type { Check } from '../check.js';
import { meshContact } from '../contact.js';
import type { ToothFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/** Below this a pair of teeth lets go before the next one takes over. */
const LEAST = 1;

/** Total contact ratio (transverse plus overlap) of the poorer mesh. Source: ISO 21771. */
export function contactRatio({ spec, gears, inner, outer }: ToothFindings): Check {
  const totals = [
    { where: 'sun and planets', ...meshContact(spec, gears.sun, inner) },
    { where: 'planets and ring', ...meshContact(spec, gears.planet, outer) },
  ];
  return contactRatioOf(totals, spec.limits.contactRatio);
}

/** The same of any meshes, by their contact ratios. */
export function contactRatioOf(
  meshes: readonly { where: string; transverse: number; overlap: number }[],
  asked: number,
): Check {
  const totals = meshes.map((mesh) => ({ ...mesh, total: mesh.transverse + mesh.overlap }));
  const poorest = leastBy(totals, ({ total }) => total);
  const broken = !(poorest.total >= LEAST);
  const limit = broken ? LEAST : asked;
  return {
    id: 'contact-ratio',
    holds: poorest.total >= limit,
    level: broken ? 'must' : 'should',
    value: poorest.total,
    limit,
    unit: '1',
    says:
      `between ${poorest.where}: transverse ${poorest.transverse.toFixed(3)} + overlap ${poorest.overlap.toFixed(3)}` +
      (!(poorest.total >= limit)
        ? '; more teeth, a larger helix angle or a larger face width raises it'
        : ''),
  };
}
