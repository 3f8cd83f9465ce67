import { refuse } from './refusal.js';
import type { PlanetarySpec, Spec } from './types.js';

/**
 * The file of a planetary set, the only kind that this version makes.
 * @throws Refusal for any other kind, which `resolveSpec` does not let through
 */
export function planetaryOnly(spec: Spec): PlanetarySpec {
  if (spec.kind === 'planetary') return spec;
  refuse('kind', spec.kind, 'is not made by this version', ['planetary']);
}
