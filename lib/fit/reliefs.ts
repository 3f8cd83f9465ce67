import type { Fit } from '../spec/types.js';

/** Normal distance, mm, that each flank of a kind of gear is set back into its tooth. */
export interface Reliefs {
  sun: number;
  planet: number;
  ring: number;
}

/** The gap is one number, shared between the two sides of every mesh: `gapShare` of it from sun and ring. */
export function reliefs({ gap, gapShare }: Fit): Reliefs {
  return { sun: gap * gapShare, planet: gap * (1 - gapShare), ring: gap * gapShare };
}
