import type { Drawn } from './feature.js';

/** How far printed walls stand out, mm, and how many times larger than printed everything is drawn. */
export interface Compensated {
  growth: number;
  scale: number;
}

/** How many times the growth of a wall each kind of size is drawn wider. */
const WIDER = { opening: 2, standing: -2, gap: 4, length: 0 };

/**
 * Sizes as they are drawn so that they come out as asked: openings wider and what stands up narrower by the growth on
 * either side, everything larger by the scale; heights and depths grow by no walls.
 */
export function drawnSizes<T extends object>(
  own: T,
  drawn: Readonly<Record<string, Drawn>>,
  { growth, scale }: Compensated,
): T {
  const sizes = Object.entries(own).flatMap(([key, value]) => {
    const by = drawn[key];
    if (by === undefined || by === 'asked' || typeof value !== 'number') return [];
    return [[key, (value + WIDER[by] * growth) * scale]];
  });
  return { ...own, ...Object.fromEntries(sizes) };
}
