import { problemOf } from '../../refusal.js';
import { radians } from '../../tooth/gear.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../nearest.js';
import { fromTo, LEAST_HELIX, ranges } from '../ranges.js';
import type { Rule } from './rule.js';

/** Spur teeth have no helix angle; helices have one that is worth the name. */
export const helixAngle: Rule = {
  needs: ['helix'],
  find({ helix: { form, angle } }) {
    if (form === 'spur') {
      const rule = 'must be 0 where helix.form is spur';
      return angle === 0 ? [] : [problemOf('excluded', 'helix.angle', angle, rule, [0])];
    }
    if (angle >= LEAST_HELIX) return [];
    const rule = `must be from ${LEAST_HELIX} to ${ranges.helixAngle[1]} deg where helix.form is ${form}`;
    return [problemOf('beyond-limit', 'helix.angle', angle, rule, [LEAST_HELIX])];
  },
};

/** Only herringbone teeth hold their mates along the axis by themselves. */
export const retentionForm: Rule<'planetary'> = {
  needs: ['helix', 'retention'],
  find({ helix: { form }, retention }) {
    if (form === 'herringbone' || retention === 'none' || retention === 'lips') return [];
    const rule = `must be none or lips where helix.form is ${form}: its teeth hold nothing along the axis`;
    return [
      problemOf('no-hold', 'retention', retention, rule, retention === 'both' ? ['lips'] : ['none', 'lips']),
    ];
  },
};

/** Lips are sized only where there are any. */
export const lipsAsked: Rule<'planetary'> = {
  needs: ['retention', 'lips', 'helix'],
  find({ helix: { form }, retention, lips }) {
    if (!lips || retention === 'lips' || retention === 'both') return [];
    const rule = 'must be lips or both where lips are given';
    const nearest = [form === 'herringbone' ? 'both' : 'lips'];
    return [problemOf('excluded', 'retention', retention, rule, nearest)];
  },
};

/** The normal module that a transverse module gives has the range of a normal module. */
export const transverseModule: Rule = {
  needs: ['transverseModule', 'helix'],
  find({ module, helix }, { transverseModule: given }) {
    const [least, most] = ranges.module;
    if (given === undefined || (module >= least - ROUNDING && module <= most + ROUNDING)) return [];
    const cos = Math.cos(radians(helix.angle));
    const [low, high] = [ceilThousandth(least / cos), floorThousandth(most / cos)];
    const rule = `must be from ${low} to ${high} mm at this helix angle: the normal module is ${fromTo(ranges.module)}`;
    return [problemOf('beyond-limit', 'transverseModule', given, rule, [module < least ? low : high])];
  },
};
