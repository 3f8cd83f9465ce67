import { Refusal, refuse, unlessRefused } from '../../refusal.js';
import { clamp } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';

/** Fewest and most stations of a coupon: one tells nothing of where the boundary lies; common practice for the most. */
export const STATIONS = { least: 2, most: 12 } as const;
/** Gaps of a coupon are whole hundredths, so that the numbers beside them say them exactly, mm. */
const STEP = 0.01;
/** Gaps of a coupon of which nothing is said: they reach from fused to loose on most printers. Common practice. */
export const USUAL_GAPS = '0.10:0.40:0.05';
/** As `fit.gap` allows, mm. */
const [LEAST, MOST] = ranges.gap;

/**
 * The gaps that are asked for, ascending, mm: from A to B in steps, `0.10:0.40:0.05`, or one by one, `0.1,0.2,0.3`.
 * Whole hundredths within the range of `fit.gap`, as many as `STATIONS` says.
 * @throws Refusal for the parameter `gaps`, with the nearest gaps that work
 */
export function readGaps(text: string): number[] {
  try {
    return gapsIn(text);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const nearest = error.nearest.map(String).filter(works);
    refuse(error.code, 'gaps', text, error.rule, nearest.length ? nearest : [USUAL_GAPS]);
  }
}

/** An offer is tried before it is made. */
function works(text: string): boolean {
  return unlessRefused(() => gapsIn(text).length > 0, false);
}

function gapsIn(text: string): number[] {
  const words = text.split(text.includes(':') ? ':' : ',').map((word) => word.trim());
  const numbers = words.map((word) => (/^\d*\.?\d+$/.test(word) ? Number(word) : Number.NaN));
  const rule = 'must be FIRST:LAST:STEP or a list with commas, mm';
  if (numbers.some(Number.isNaN) || (text.includes(':') && numbers.length !== 3))
    refuse('wrong-form', 'gaps', text, rule, [USUAL_GAPS, '0.15,0.2,0.3']);
  return checkedGaps(text.includes(':') ? stepped(text, numbers) : numbers, text);
}

function stepped(text: string, [first, last, step]: number[]): number[] {
  if (last <= first) {
    const by = step >= STEP ? step : 0.05;
    const nearest = last < first ? range(last, first, by) : range(first, first + 2 * by, by);
    refuse('reversed', 'gaps', text, 'the last gap must be more than the first', [nearest]);
  }
  const count = Math.floor((last - first) / step + 1e-9) + 1;
  if (step === 0 || count > STATIONS.most) {
    const wider = Math.ceil((last - first) / (STATIONS.most - 1) / STEP - 1e-9) * STEP;
    refuse('wrong-count', 'gaps', text, `makes more than ${STATIONS.most} stations`, [
      range(first, last, wider),
    ]);
  }
  const rule = `makes fewer than ${STATIONS.least} stations: the step is longer than the way`;
  if (count < STATIONS.least) refuse('wrong-count', 'gaps', text, rule, [range(first, last, last - first)]);
  return Array.from({ length: count }, (_, i) => first + i * step);
}

/**
 * Gaps as a coupon can have them, ascending.
 * @param asked as they were typed, for the refusal
 * @throws Refusal for the parameter `gaps`
 */
export function checkedGaps(gaps: readonly number[], asked: unknown): number[] {
  const offer = (list: readonly number[]) => {
    const some = [...new Set(list)].sort((a, b) => a - b).slice(0, STATIONS.most);
    const near = some[0] + (some[0] < MOST ? 0.05 : -0.05);
    return [[...some, ...(some.length < STATIONS.least ? [near] : [])].map(shown).join(',')];
  };
  const whole = gaps.map((gap) => Math.round(gap / STEP) / 100);
  const inRange = whole.map((gap) => clamp(gap, LEAST, MOST));
  const rule = 'must be whole hundredths of a millimetre, as the numbers beside them show';
  if (whole.some((gap, i) => Math.abs(gap - gaps[i]) > 1e-6))
    refuse('not-whole', 'gaps', asked, rule, offer(inRange));
  if (whole.some((gap, i) => gap !== inRange[i]))
    refuse('out-of-range', 'gaps', asked, `must be from ${LEAST} to ${MOST} mm`, offer(inRange));
  const sorted = [...new Set(whole)].sort((a, b) => a - b);
  if (sorted.length < gaps.length) refuse('given-twice', 'gaps', asked, 'has a gap twice', offer(sorted));
  if (sorted.length < STATIONS.least)
    refuse('wrong-count', 'gaps', asked, `must be ${STATIONS.least} gaps at least`, offer(sorted));
  if (sorted.length > STATIONS.most)
    refuse('wrong-count', 'gaps', asked, `must be ${STATIONS.most} gaps at most`, offer(sorted));
  return sorted;
}

/** A range as it is typed, brought into what gaps may be. */
function range(first: number, last: number, step: number): string {
  const [from, to] = [first, last].map((gap) => clamp(gap, LEAST, MOST));
  return [from, to, Math.max(STEP, step)].map(shown).join(':');
}

/** A gap as it stands beside its station. */
export function shown(gap: number): string {
  return gap.toFixed(2);
}
