import { shown } from '../../fit/coupon/readGaps.js';
import type { Check } from '../check.js';

/**
 * One record of each check for all stations: one that fails before one that holds, the weightier and then the one
 * with the least to spare before others; it says of which station it speaks.
 * @param perStation checks of each station
 */
export function worstStation(perStation: readonly { gap: number; checks: readonly Check[] }[]): Check[] {
  const ids = [...new Set(perStation.flatMap(({ checks }) => checks.map(({ id }) => id)))];
  return ids.map((id) => {
    const found = perStation.flatMap(({ gap, checks }) =>
      checks.filter((check) => check.id === id).map((check) => ({ gap, check })),
    );
    const [worst] = found.toSorted(
      (a, b) => rank(a.check) - rank(b.check) || spare(a.check) - spare(b.check),
    );
    const failing = found.filter(({ check }) => !check.holds).map(({ gap }) => shown(gap));
    const where =
      failing.length > 1 ? `at ${failing.join(', ')}; at ${shown(worst.gap)}` : `at ${shown(worst.gap)}`;
    return { ...worst.check, says: `${where}: ${worst.check.says}` };
  });
}

function rank({ holds, level }: Check): number {
  return (holds ? 3 : 0) + { must: 0, should: 1, note: 2 }[level];
}

function spare({ value, limit }: Check): number {
  return value === null || limit === null ? 0 : Math.abs(value - limit);
}
