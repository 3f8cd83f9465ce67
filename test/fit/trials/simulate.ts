import { outcomes, type Trial } from '../../../lib/fit/trials/trialSchema.js';

/** Random numbers from 0 to 1, the same for the same seed (mulberry32). */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal number (Box and Muller). */
export function normal(next: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** How prints really come out: where outcomes change, and over what width, mm. */
export interface Truth {
  boundaries: [number, number, number];
  width: number;
}

/** A print at a gap: the outcome is by how many boundaries the gap, off by a logistic error, has passed. */
export function printed({ boundaries, width }: Truth, gap: number, next: () => number): Trial {
  const u = next();
  const felt = gap + width * Math.log(u / (1 - u));
  return { gap, outcome: outcomes[boundaries.filter((boundary) => boundary < felt).length] };
}

/** Counts that `count` draws with the chance `chance` stay within, but for four in 100 000 (normal approximation). */
export function bounds(count: number, chance: number): [number, number] {
  const wide = 4.1 * Math.sqrt(count * chance * (1 - chance));
  return [count * chance - wide, count * chance + wide];
}
