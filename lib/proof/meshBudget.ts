import { refuse } from '../refusal.js';
import type { Part } from '../solid/mesh.js';
import { MOST_TRIANGLES } from '../spec/rules/workload.js';
import type { CommonSpec } from '../spec/types.js';

/**
 * Holds finished parts to the triangles that a set may have: the rule of the file only estimates them, and knows nothing of
 * features.
 * @throws Refusal of the tolerance where there are more
 */
export function keepBudget({ tolerance }: CommonSpec, parts: readonly Part[]): void {
  const triangles = parts.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  if (triangles <= MOST_TRIANGLES) return;
  const found = Math.ceil(triangles / 1e4) / 100;
  const rule = `is too fine for this set: ${found} million triangles, at most ${MOST_TRIANGLES / 1e6}`;
  refuse('too-much-work', 'tolerance', tolerance, rule);
}
