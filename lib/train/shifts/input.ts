import { codeOfNumber } from '../../problemCode.js';
import { type Problem, problemOf, refuseAll } from '../../refusal.js';
import { clamp } from '../../spec/nearest.js';
import { MOST_GAP_PER_MODULE, type Range, ranges } from '../../spec/ranges.js';
import { usual } from '../../spec/usual.js';
import type { ShiftCounts, ShiftForm } from './frame.js';

const teeth = { sunTeeth: ranges.teeth, planetTeeth: ranges.teeth, ringTeeth: ranges.ringTeeth };
const { pressureAngle, helixAngle, gapShare } = ranges;
/** As a parameter file has them; the gap in modules, and none at all where teeth are looked at without. */
const sizes = { pressureAngle, helixAngle, gap: [0, MOST_GAP_PER_MODULE], gapShare } as const;

/**
 * Checks what shifts are to be found for.
 * @throws Refusal with every problem: counts that are not whole or out of range, angles, rack and gap out of range
 */
export function checkShiftInput(counts: ShiftCounts, form: ShiftForm): void {
  const { gap = 0, gapShare = usual.gapShare, rack, pressureAngle, helixAngle } = form;
  const given = { gap, gapShare, pressureAngle, helixAngle };
  const problems: Problem[] = [];
  const ask = (parameter: string, value: number, [least, most]: Range, whole = false) => {
    if (value >= least && value <= most && (!whole || Number.isInteger(value))) return;
    const rule = `must be a ${whole ? 'whole ' : ''}number from ${least} to ${most}`;
    const near = clamp(whole ? Math.round(value) : value, least, most);
    problems.push(
      problemOf(codeOfNumber(value, whole), parameter, value, rule, Number.isNaN(near) ? [] : [near]),
    );
  };
  for (const key of ['sunTeeth', 'planetTeeth', 'ringTeeth'] as const)
    ask(key, counts[key], teeth[key], true);
  for (const key of ['pressureAngle', 'helixAngle', 'gap', 'gapShare'] as const)
    ask(key, given[key], sizes[key]);
  for (const key of ['addendum', 'dedendum', 'fillet'] as const)
    ask(`rack.${key}`, rack?.[key] ?? Number.NaN, ranges[key]);
  refuseAll(problems);
}
