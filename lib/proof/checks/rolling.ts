import { drawnGap } from '../../fit/compensation.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';
import { gapAsked } from '../printing/gapAsked.js';
import { leastRolled } from '../rolling/rollingError.js';

/** The least gap found while the exact outlines roll through a pitch, both flanks, every planet. */
export function rolling({
  spec,
  rolling: found,
  drawn,
}: Pick<ToothFindings, 'spec' | 'rolling' | 'drawn'>): Check {
  const { least, phase, mates } = leastBy(found, (mesh) => mesh.least);
  const limit = leastRolled(drawnGap(spec));
  const byFlank = found.map(({ of, bySide }) =>
    drawn.meshes.length > 1 ? `${of} ${bothFlanks(bySide)}` : bothFlanks(bySide),
  );
  return {
    id: 'rolling',
    holds: least >= limit,
    level: 'must',
    value: least,
    limit,
    unit: 'mm',
    says: `least gap ${least.toFixed(4)} mm of ${gapAsked(spec)}, between ${mates.join(' and ')} at ${phase.toFixed(2)} of a pitch; by flank: ${byFlank.join(', ')}`,
  };
}

/** Least gaps of the two flanks, mm, in words. */
function bothFlanks([one, other]: readonly [number, number]): string {
  return `${one.toFixed(4)} and ${other.toFixed(4)} mm`;
}
