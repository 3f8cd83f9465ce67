import { boreProblems } from '../../features/bore.js';
import { type Problem, problemOf } from '../../refusal.js';
import { usualMate } from '../kinds/gear.js';
import { barLean, barPitch, lengthOf, teethIn } from '../kinds/rack.js';
import { barOf, gearsOf } from '../kinds.js';
import { ceilThousandth, ROUNDING } from '../nearest.js';
import { LARGEST, ranges } from '../ranges.js';
import type { CommonSpec, ExternalGear, TrainSpec } from '../types.js';
import { madeRootRadius, rootProblems, rootsFollow } from './roots.js';
import { gears, lines, type Rule, toothSizes } from './rule.js';
import { sizeProblems } from './sizes.js';

/** Gears with teeth outside have a body inside them, and two lines of wall around a bore. */
export const trainBodies: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [...toothSizes, 'fit.gap', ...gears, ...lines],
  find: (spec) => externalGears(spec).flatMap(([part, gear]) => externalProblems(spec, part, gear)),
};

/** What is wrong with the body of a gear with teeth outside; only what its teeth are for while its roots are to be found. */
function externalProblems(spec: TrainSpec, part: string, gear: ExternalGear): Problem[] {
  const roots = rootProblems(spec, part, gear);
  if (roots.length || !rootsFollow(spec)) return roots;
  return gearBodyProblems(spec, part, gear);
}

/** What is wrong with the body of a gear with teeth outside and a shift, its roots made as `madeRootRadius` has them. */
export function gearBodyProblems(spec: CommonSpec, part: string, gear: ExternalGear): Problem[] {
  const roots = rootProblems(spec, part, gear);
  if (roots.length) return roots;
  const root = madeRootRadius(spec, { ...gear, internal: false });
  return boreProblems(part, gear.bore, root, spec.printer.lineWidth);
}

/** The gears of a file with teeth outside, by their keys. */
export function externalGears(spec: TrainSpec): [string, ExternalGear][] {
  return gearsOf(spec).flatMap((gear) => (gear.internal ? [] : [[gear.part, gear]]));
}

/** A wheel around a pinion has more teeth than it. */
export const ringedWheel: Rule<'pair'> = {
  needs: ['pinion.teeth', 'wheel'],
  find({ pinion, wheel }) {
    if (!wheel.internal || wheel.teeth > pinion.teeth) return [];
    const rule = `must be more than pinion.teeth, ${pinion.teeth}, where wheel.internal is true`;
    const nearest = [Math.min(ranges.ringTeeth[1], 3 * pinion.teeth)];
    return [problemOf('no-mesh', 'wheel.teeth', wheel.teeth, rule, nearest)];
  },
};

/** One gear by itself with teeth inside has more of them than the smallest that runs in it. */
export const ringedMate: Rule<'gear'> = {
  needs: ['gear'],
  find({ gear }) {
    if (!gear.internal || gear.teeth > gear.mateTeeth) return [];
    const rule = `must be less than gear.teeth, ${gear.teeth}`;
    return [problemOf('no-mesh', 'gear.mateTeeth', gear.mateTeeth, rule, [usualMate(gear.teeth)])];
  },
};

/** All the teeth of a bar stand between its ends. */
export const barLength: Rule<'rack'> = {
  needs: ['module', 'helix', 'faceWidth', 'bar.teeth', 'bar.length'],
  find(spec, file) {
    const { teeth, length } = spec.bar;
    const least = ceilThousandth(lengthOf(teeth, spec));
    if (length >= lengthOf(teeth, spec) - ROUNDING) return [];
    const most = teethIn(length, spec);
    // A length without room for a single tooth is no matter of how many there are.
    if (file.bar.teeth === undefined || least > LARGEST || lengthOf(most, spec) > length + ROUNDING) {
      const rule = `has no room for ${teeth === 1 ? 'a tooth' : `${teeth} teeth`} of pitch ${barPitch(spec).toFixed(3)} mm${lean(spec)}`;
      return [problemOf('no-room', 'bar.length', length, rule, [least])];
    }
    const rule = `must be at most ${most}, which is what bar.length ${length} has room for${lean(spec)}`;
    return [problemOf('no-room', 'bar.teeth', teeth, rule, [most])];
  },
};

function lean(spec: CommonSpec): string {
  return spec.helix.form === 'spur' ? '' : ` leaning by ${barLean(spec).toFixed(3)} mm`;
}

/** No part is larger than the largest that is ever made. */
export const trainSize: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [...toothSizes, 'fit.gap', 'faceWidth', ...gears, 'bar'],
  find: (spec, file) => sizeProblems(spec, file, 'a part more than', 'long', largestOf),
};

function largestOf(spec: TrainSpec): number {
  const teeth = 2 * (spec.rack.addendum + spec.rack.dedendum) * spec.module;
  const across = gearsOf(spec).map((gear) => {
    const root = madeRootRadius(spec, gear);
    return gear.internal ? 2 * (root + gear.rim) : 2 * root + teeth;
  });
  return Math.max(...across, barOf(spec)?.length ?? 0);
}
