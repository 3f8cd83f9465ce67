/** Longer words than this are compared by their beginnings, so that no key can cost much time. */
const LONGEST_COMPARED = 48;

/** Number of letters to add, drop or change to get from one word to the other (Levenshtein's distance). */
function editDistance(from: string, to: string): number {
  const a = [...from.slice(0, LONGEST_COMPARED)];
  const b = [...to.slice(0, LONGEST_COMPARED)];
  let row = b.map((_, j) => j + 1);
  for (let i = 0; i < a.length; i++) {
    const next: number[] = [];
    for (let j = 0; j < b.length; j++) {
      const left = j > 0 ? next[j - 1] : i + 1;
      const corner = j > 0 ? row[j - 1] : i;
      next.push(Math.min(left + 1, row[j] + 1, corner + (a[i] === b[j] ? 0 : 1)));
    }
    row = next;
  }
  return b.length ? row[b.length - 1] : a.length;
}

/** The word closest to `wanted`, letter case and the marks - _ . aside; the first of equals. */
export function closest(wanted: string, words: readonly string[]): string | undefined {
  const key = plain(wanted);
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const word of words) {
    const distance = editDistance(key, plain(word));
    if (distance < least) [best, least] = [word, distance];
  }
  return best;
}

/** `value` brought into `least` … `most`. */
export function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** The largest number with three decimals that is not above `value`. */
export function floorThousandth(value: number): number {
  return Math.floor(value * 1000 + ROUNDING) / 1000;
}

/** The smallest number with three decimals that is not below `value`. */
export function ceilThousandth(value: number): number {
  return Math.ceil(value * 1000 - ROUNDING) / 1000;
}

/** Rounding of doubles that no limit is to trip over. */
export const ROUNDING = 1e-9;

/** The number meant by something that is not one: `"1,5"` and `"20 mm"` are understood; NaN when none is. */
export function numberMeant(value: unknown): number {
  if (typeof value === 'number') return value;
  if (typeof value === 'bigint') return Number(value);
  if (typeof value === 'string') return Number.parseFloat(value.slice(0, 40).trim().replace(',', '.'));
  return Number.NaN;
}

function plain(word: string): string {
  return word
    .slice(0, LONGEST_COMPARED)
    .toLowerCase()
    .replace(/[-_. ]/g, '');
}
