import type { FittedTrain } from '../../fit/train/fitTrain.js';
import { gearIn } from '../../fit/train/train.js';
import type { Check } from '../check.js';
import { overlapOf } from '../contact.js';
import { leastBy } from '../leastBy.js';
import { sidesOf } from '../meshWords.js';

/** Below this a pair of teeth lets go before the next one takes over. */
const LEAST = 1;

/** Total contact ratio (transverse plus overlap) of the poorest mesh. Source: ISO 21771. */
export function contactRatio(train: FittedTrain): Check {
  const { spec, meshes } = train;
  const totals = meshes.map((mesh) => {
    const transverse = mesh.transverseContactRatio;
    const overlap = overlapOf(spec, gearIn(train, mesh.between[0]).gear);
    return { where: sidesOf(train, mesh).join(' and '), transverse, overlap, total: transverse + overlap };
  });
  const poorest = leastBy(totals, ({ total }) => total);
  const broken = !(poorest.total >= LEAST);
  const limit = broken ? LEAST : spec.limits.contactRatio;
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
