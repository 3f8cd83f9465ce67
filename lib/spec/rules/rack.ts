import type { ProblemCode } from '../../problemCode.js';
import { type Problem, problemOf } from '../../refusal.js';
import { radians } from '../../tooth/gear.js';
import { largestFillet, pointedDepth, type RackName, standardRacks } from '../../tooth/racks.js';
import { clamp, floorThousandth, ROUNDING } from '../nearest.js';
import { ranges } from '../ranges.js';
import type { Rule } from './rule.js';

/** Room kept between addendum and pointed depth, for a dedendum in between, in modules. */
const LEAST_CLEARANCE = 0.05;
/** Bottom clearance of the standard profiles A, B and C (ISO 53). */
const USUAL_CLEARANCE = 0.25;

/** The basic rack can exist: its teeth do not come to a point, there is clearance, and the fillet fits. */
export const rackShape: Rule = {
  needs: ['rack', 'pressureAngle'],
  find({ rack, pressureAngle }, file) {
    const alpha = radians(pressureAngle);
    const deepest = Math.min(ranges.dedendum[1], floorThousandth(pointedDepth(alpha)));
    if (typeof file.rack === 'string') return namedProblems(file.rack, rack.dedendum, deepest);

    const problem = (
      code: ProblemCode,
      key: 'addendum' | 'dedendum' | 'fillet',
      rule: string,
      near: number,
    ) => problemOf(code, `rack.${key}`, rack[key], rule, [near]);
    const highest = floorThousandth(deepest - LEAST_CLEARANCE);
    if (rack.addendum > highest + ROUNDING)
      return [
        problem('pointed-tooth', 'addendum', `must be at most ${highest} at this pressure angle`, highest),
      ];
    if (rack.dedendum <= rack.addendum) {
      const next = clamp(rack.addendum + USUAL_CLEARANCE, 0, deepest);
      const rule = `must be more than rack.addendum, ${rack.addendum}`;
      return [problem('beyond-limit', 'dedendum', rule, floorThousandth(next))];
    }
    if (rack.dedendum > deepest + ROUNDING) {
      const rule = `must be at most ${deepest}: deeper rack teeth come to a point`;
      return [problem('pointed-tooth', 'dedendum', rule, deepest)];
    }
    const largest = largestFillet(rack, alpha);
    if (rack.fillet <= largest + ROUNDING) return [];
    const most = floorThousandth(largest);
    return [
      problem('no-fillet-room', 'fillet', `must be at most ${most}: no larger one fits this rack`, most),
    ];
  },
};

function namedProblems(name: RackName, dedendum: number, deepest: number): Problem[] {
  if (dedendum <= deepest) return [];
  const nearest = (Object.keys(standardRacks) as RackName[]).filter(
    (other) => standardRacks[other].dedendum <= deepest,
  );
  const rule = `its teeth come to a point at this pressure angle: dedendum at most ${deepest}`;
  return [problemOf('pointed-tooth', 'rack', name, rule, nearest)];
}
