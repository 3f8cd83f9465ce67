import { barLean, barPitch, lengthOf, teethIn } from '../bar.js';
import { complete } from '../complete.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../nearest.js';
import { LARGEST, ranges } from '../ranges.js';
import { type Problem, problemOf } from '../refusal.js';
import type { CommonSpec, ExternalGear, TrainSpec } from '../types.js';
import { boreProblems } from './bores.js';
import { madeRootRadius, rootProblems, rootsFollow } from './gears.js';
import { moduleParameter, type Rule, toothSizes } from './rule.js';

/** Gears with teeth outside have a body inside them, and two lines of wall around a bore. */
export const trainBodies: Rule<'pair' | 'rack' | 'gear'> = {
  needs: [...toothSizes, 'fit.gap', 'pinion', 'wheel', 'gear', 'printer.nozzle', 'printer.lineWidth'],
  find: (spec) => externalGears(spec).flatMap(([part, gear]) => externalProblems(spec, part, gear)),
};

/** What is wrong with the body of a gear with teeth outside; only what its teeth are for while its roots are to be found. */
function externalProblems(spec: TrainSpec, part: string, gear: ExternalGear): Problem[] {
  const roots = rootProblems(spec, part, gear);
  if (roots.length || (spec.kind === 'pair' && !rootsFollow(spec))) return roots;
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
  switch (spec.kind) {
    case 'pair':
      return [
        ['pinion', spec.pinion],
        ...(spec.wheel.internal ? [] : [['wheel', spec.wheel] as [string, ExternalGear]]),
      ];
    case 'rack':
      return [['pinion', spec.pinion]];
    case 'gear':
      return spec.gear.internal ? [] : [['gear', spec.gear]];
  }
}

/** A wheel around a pinion has more teeth than it; so has one gear by itself than the smallest that runs in it. */
export const ringedTeeth: Rule<'pair' | 'gear'> = {
  needs: ['pinion.teeth', 'wheel', 'gear'],
  find(spec) {
    if (spec.kind === 'gear') {
      if (!spec.gear.internal || spec.gear.teeth > spec.gear.mateTeeth) return [];
      const { mateTeeth: value, teeth } = spec.gear;
      const rule = `must be less than gear.teeth, ${teeth}`;
      return [
        problemOf('no-mesh', 'gear.mateTeeth', value, rule, [
          Math.max(ranges.teeth[0], Math.round(teeth / 3)),
        ]),
      ];
    }
    if (!spec.wheel.internal || spec.wheel.teeth > spec.pinion.teeth) return [];
    const rule = `must be more than pinion.teeth, ${spec.pinion.teeth}, where wheel.internal is true`;
    return [
      problemOf('no-mesh', 'wheel.teeth', spec.wheel.teeth, rule, [
        Math.min(ranges.ringTeeth[1], 3 * spec.pinion.teeth),
      ]),
    ];
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
  needs: [...toothSizes, 'fit.gap', 'faceWidth', 'pinion', 'wheel', 'gear', 'bar'],
  find(spec, file) {
    if (largestOf(spec) <= LARGEST) return [];
    const parameter = moduleParameter(file);
    const value = file[parameter]!;
    // Bisection: walls and the lean of a bar's teeth do not grow with the module, and the least module always fits.
    let [fits, misses] = [ranges.module[0], value];
    for (let step = 0; step < 60; step++) {
      const middle = (fits + misses) / 2;
      const other = complete({ ...file, [parameter]: middle }, '') as TrainSpec;
      if (largestOf(other) <= LARGEST) fits = middle;
      else misses = middle;
    }
    const rule = `makes a part more than ${LARGEST} mm long`;
    return [problemOf('too-big', parameter, value, rule, [floorThousandth(fits)])];
  },
};

function largestOf(spec: TrainSpec): number {
  const outside = externalGears(spec).map(
    ([, gear]) =>
      2 * madeRootRadius(spec, { ...gear, internal: false }) +
      2 * (spec.rack.addendum + spec.rack.dedendum) * spec.module,
  );
  const ring = spec.kind === 'pair' ? spec.wheel : spec.kind === 'gear' ? spec.gear : undefined;
  if (ring?.internal) outside.push(2 * (madeRootRadius(spec, { ...ring, internal: true }) + ring.rim));
  return Math.max(...outside, spec.kind === 'rack' ? spec.bar.length : 0);
}
