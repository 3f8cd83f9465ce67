import { clamp } from '../../spec/nearest.js';
import { type Problem, Refusal } from '../../spec/refusal.js';
import type { ShiftCounts, ShiftForm } from './frame.js';

const teeth = { sunTeeth: [5, 400], planetTeeth: [5, 400], ringTeeth: [10, 1000] } as const;
/** As a parameter file has them; the gap in modules. */
const sizes = {
  pressureAngle: [14, 30],
  helixAngle: [0, 45],
  gap: [0, 0.6],
  gapShare: [0, 1],
} as const;
const rackSizes = { addendum: [0.5, 1.5], dedendum: [0.5, 2], fillet: [0, 1] } as const;

/**
 * Checks what shifts are to be found for.
 * @throws Refusal with every problem: counts that are not whole or out of range, angles, rack and gap out of range
 */
export function checkShiftInput(counts: ShiftCounts, form: ShiftForm): void {
  const { gap = 0, gapShare = 0.5, rack, pressureAngle, helixAngle } = form;
  const given = { gap, gapShare, pressureAngle, helixAngle };
  const problems: Problem[] = [];
  const ask = (parameter: string, value: number, [least, most]: readonly [number, number], whole = false) => {
    if (value >= least && value <= most && (!whole || Number.isInteger(value))) return;
    const rule = `must be a ${whole ? 'whole ' : ''}number from ${least} to ${most}`;
    const near = clamp(whole ? Math.round(value) : value, least, most);
    problems.push({ parameter, value, rule, nearest: Number.isNaN(near) ? [] : [near] });
  };
  for (const key of ['sunTeeth', 'planetTeeth', 'ringTeeth'] as const)
    ask(key, counts[key], teeth[key], true);
  for (const key of ['pressureAngle', 'helixAngle', 'gap', 'gapShare'] as const)
    ask(key, given[key], sizes[key]);
  for (const key of ['addendum', 'dedendum', 'fillet'] as const)
    ask(`rack.${key}`, rack?.[key] ?? Number.NaN, rackSizes[key]);
  const [first, ...rest] = problems;
  if (first) throw new Refusal([first, ...rest]);
}
