import { refuse } from '../refusal.js';

/** Two members whose teeth mesh. */
export interface Link {
  between: readonly [string, string];
  teeth: readonly [number, number];
  /** Whether one of them has its teeth inside. */
  internal: boolean;
  /** Member that carries their axes around [the frame]. */
  about?: string;
}

/** Less than this share of the largest pivot is rounding. */
const ROUNDING = 1e-9;

/**
 * Speeds of all members of a train, in any one unit, positive counter-clockwise, seen from the frame.
 *
 * One linear equation a mesh: seen from what carries their axes two members pass as many teeth,
 * z_1 (n_1 − n_c) + z_2 (n_2 − n_c) = 0, or a difference where one has its teeth inside.
 * @param known speeds of as many members as leave one answer; a held one has speed 0
 * @throws Refusal where too few or too many are known
 * Source: Willis equation.
 */
export function speeds(
  links: readonly Link[],
  known: Readonly<Record<string, number>>,
): Record<string, number> {
  const named = links.flatMap(({ between, about }) => (about === undefined ? between : [...between, about]));
  const members = [...new Set([...named, ...Object.keys(known)])];
  const at = (name: string) => members.indexOf(name);
  const row = (entries: readonly (readonly [string, number])[], right: number) => {
    const numbers = new Array<number>(members.length + 1).fill(0);
    for (const [name, value] of entries) numbers[at(name)] += value;
    numbers[members.length] = right;
    return numbers;
  };
  const rows = [
    ...Object.entries(known).map(([name, speed]) => row([[name, 1]], speed)),
    ...links.map(({ between: [one, two], teeth: [z1, z2], internal, about }) => {
      const sign = internal ? -1 : 1;
      const carried: [string, number][] = about === undefined ? [] : [[about, -(z1 + sign * z2)]];
      return row([[one, z1], [two, sign * z2], ...carried], 0);
    }),
  ];
  const found = solved(rows, members.length);
  const rule = `must be speeds of as many members as leave one answer for ${members.join(', ')}`;
  if (!found) refuse('wrong-count', 'known', known, rule);
  return Object.fromEntries(members.map((name, i) => [name, found[i]]));
}

/** Gaussian elimination with the largest pivot; null where there is no answer, or more than one. */
function solved(rows: number[][], size: number): number[] | null {
  const left = rows.map((row) => [...row]);
  if (left.length !== size || !left.flat().every(Number.isFinite)) return null;
  const largest = Math.max(...left.flat().map(Math.abs));
  for (let k = 0; k < size; k++) {
    const pivot = left.slice(k).reduce((a, b) => (Math.abs(b[k]) > Math.abs(a[k]) ? b : a));
    if (Math.abs(pivot[k]) <= ROUNDING * largest) return null;
    left.splice(left.indexOf(pivot), 1);
    left.splice(k, 0, pivot);
    for (const row of left.filter((other) => other !== pivot)) {
      const share = row[k] / pivot[k];
      for (let j = k; j <= size; j++) row[j] -= share * pivot[j];
    }
  }
  return left.map((row, k) => row[size] / row[k]);
}
