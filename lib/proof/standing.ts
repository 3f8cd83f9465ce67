import type { Check } from './check.js';

/** How a check stands, in a word: a note that does not hold informs, it does not fail. */
export function standing({ holds, level }: Check): 'holds' | 'fails' | 'noted' {
  if (holds) return 'holds';
  return level === 'note' ? 'noted' : 'fails';
}
