import { type Problem, problemOf } from '../../refusal.js';
import { floorThousandth, ROUNDING } from '../nearest.js';
import { ranges } from '../ranges.js';
import type { Bore } from '../types.js';

/** Lines of wall around a bore. Common practice. */
const BORE_LINES = 2;

/**
 * Whether two lines of wall stay between a bore and the root circle of its gear.
 * @param part key of the gear in the file
 * @param rootRadius as made, mm
 * @param lineWidth mm
 */
export function boreProblems(part: string, bore: Bore, rootRadius: number, lineWidth: number): Problem[] {
  if (bore.shape === 'none') return [];
  const room = floorThousandth(rootRadius - BORE_LINES * lineWidth);
  const size = sizeOf(part, bore);
  const most = floorThousandth(room * size.perRadius);
  if (most < ranges.bore[0]) {
    const rule = `no bore leaves two lines of wall inside the root circle of this ${part}`;
    return [problemOf('no-room', `${part}.bore`, bore, rule, [{ shape: 'none' }])];
  }
  if (size.value > most + ROUNDING) {
    const rule = `must be at most ${most} mm: two lines of wall inside the ${part}'s root circle`;
    return [problemOf('no-room', size.parameter, size.value, rule, [most])];
  }
  return bore.shape === 'D' ? flatProblem(part, bore.diameter, bore.acrossFlat) : [];
}

/** The size that a bore is made larger or smaller by, and how it goes with the radius of its outermost corner. */
function sizeOf(part: string, bore: Exclude<Bore, { shape: 'none' }>) {
  switch (bore.shape) {
    case 'round':
    case 'D':
      return { parameter: `${part}.bore.diameter`, value: bore.diameter, perRadius: 2 };
    case 'hexagon':
      return { parameter: `${part}.bore.acrossFlats`, value: bore.acrossFlats, perRadius: Math.sqrt(3) };
    case 'square':
      return { parameter: `${part}.bore.acrossFlats`, value: bore.acrossFlats, perRadius: Math.SQRT2 };
  }
}

/** The flat of a D lies between the middle and just inside the far side, or it is no D. */
function flatProblem(part: string, diameter: number, acrossFlat: number): Problem[] {
  const [least, most] = [diameter / 2, 0.98 * diameter];
  if (acrossFlat >= least - ROUNDING && acrossFlat <= most + ROUNDING) return [];
  const [low, high] = [Math.ceil(least * 1000) / 1000, floorThousandth(most)];
  const rule = `must be from ${low} to ${high} mm: half the diameter to 0.98 × the diameter`;
  return [
    problemOf('beyond-limit', `${part}.bore.acrossFlat`, acrossFlat, rule, [acrossFlat < least ? low : high]),
  ];
}
