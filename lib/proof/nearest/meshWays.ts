import { unlessRefused } from '../../refusal.js';
import { buildSet } from '../../solid/buildSet.js';
import { ceilThousandth, floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { Spec } from '../../spec/types.js';
import { keepBudget } from '../meshBudget.js';
import { singly, tried, type Ways } from './changes.js';

/** What is tried in place of a tolerance that takes too many triangles: so many times as coarse. */
const COARSER = [1.25, 1.6, 2, 3, 5, 10];
/** Shares of other sizes that are tried. */
const LESS = [0.9, 0.75, 0.5, 0.25];

/** What may be changed about a set whose meshes grow too large: how fine they are first, then what makes them large. */
export function meshWays(spec: Spec): Ways {
  const { tolerance, bevel, helix, faceWidth } = spec;
  const less = (path: string, value: number) =>
    tried(path, value > 0 ? LESS.map((share) => floorThousandth(share * value)) : []);
  const lips = 'lips' in spec && spec.lips;
  return singly([
    tried(
      'tolerance',
      COARSER.map((times) => ceilThousandth(times * tolerance)).filter(
        (value) => value <= ranges.tolerance[1],
      ),
    ),
    ...(lips ? [tried('retention', [helix.form === 'herringbone' ? 'herringbone' : 'none'])] : []),
    less('bevel.size', bevel.size),
    ...(helix.form === 'spur' ? [] : [less('helix.angle', helix.angle)]),
    less('faceWidth', faceWidth),
  ]);
}

/** Whether all meshes of a file can be made within what a set may have. Some tenths of a second where they are large. */
export function isMeshed(spec: Spec): boolean {
  return unlessRefused(() => {
    keepBudget(spec, buildSet(spec));
    return true;
  }, false);
}
