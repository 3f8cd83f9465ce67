import type { Change } from './changes.js';

/** Ways as one sentence for a message: `Nearest that works: fit.gap 0.2; module 1.8.` Empty where there are none. */
export function nearestSentence(ways: readonly Change[]): string {
  return ways.length ? `Nearest that works: ${sayWays(ways)}.` : '';
}

/** Ways without a beginning: `fit.gap 0.2; module 1.8`. */
export function sayWays(ways: readonly Change[], between = '; '): string {
  return ways.map((way) => Object.entries(way).map(sayOne).join(', ')).join(between);
}

/** Other tooth counts: `Nearest sets that work (sun / planets / ring teeth × planets): 15 / 15 / 45 × 5`. */
export function saySets(sets: readonly Change[], does: 'work' | 'pass'): string {
  const shifted = sets.some(({ profileShift }) => profileShift === 'solve');
  const how = shifted ? ' with profileShift: solve' : '';
  return `Nearest sets that ${does}${how} (sun / planets / ring teeth × planets): ${sets.map(saySet).join('; ')}`;
}

/** What is said, and after it help as a sentence of its own. */
export function withHelp(says: string, help: string): string {
  return `${says}${says.endsWith('.') ? '' : '.'} ${help}`;
}

function saySet(set: Change): string {
  return `${set['sun.teeth']} / ${set['planets.teeth']} / ${set['ring.teeth']} × ${set['planets.count']}`;
}

function sayOne([path, value]: [string, unknown]): string {
  const said = typeof value === 'object' ? JSON.stringify(value) : value;
  return value === undefined ? `${path} left out` : `${path} ${said}`;
}
