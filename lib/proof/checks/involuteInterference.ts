import { largestMateTipRadius, leastRingTipRadius } from '../../train/interference.js';
import type { PairSizes } from '../../train/pair.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

const ROUNDING = 1e-9;

/**
 * No tip reaches below the true involute of its mate. Margins are radii, mm: how much farther the tip could reach.
 * Where the rack has undercut a root it has also cleared the way for an external mate, so only whole roots count
 * between sun and planet; the ring's tips, which dig deeper than a rack, always count.
 * Source: interference tests of handbooks and DIN 3993 (from memory), with the form radius as made.
 */
export function involuteInterference({ set, inner, outer }: ToothFindings): Check {
  const { sun, planet } = set.profiles;
  const margins = [
    { where: 'ring tips on the planets', margin: outer.tipRadius2 - leastRingTipRadius(outer) },
    ...externalMargins(inner, ['sun', 'planets'], [sun.undercut, planet.undercut], 'planet'),
  ];
  const cleared = [sun.undercut && 'sun', planet.undercut && 'planets'].filter((one) => one !== false);
  return involuteInterferenceOf(margins, cleared);
}

/** How much farther a tip could reach, mm. */
export interface TipMargin {
  where: string;
  margin: number;
}

/**
 * Margins of both gears of an external pair on each other; an undercut root has been cleared by the rack.
 * @param undercut of gear 1 and gear 2
 * @param second name of gear 2 where its tips are meant
 */
export function externalMargins(
  pair: PairSizes,
  [name1, name2]: readonly [string, string],
  undercut: readonly [boolean, boolean],
  second = name2,
): TipMargin[] {
  const on1 = largestMateTipRadius(pair) - pair.tipRadius2;
  const on2 = largestMateTipRadius(swapped(pair)) - pair.tipRadius1;
  return [
    ...(undercut[0] ? [] : [{ where: `${second} tips on the ${name1}`, margin: on1 }]),
    ...(undercut[1] ? [] : [{ where: `${name1} tips on the ${name2}`, margin: on2 }]),
  ];
}

/** The same of any margins; where there are none, every root has been cleared by the rack. */
export function involuteInterferenceOf(margins: readonly TipMargin[], cleared: readonly string[]): Check {
  const none: TipMargin = { where: 'no tips below an involute', margin: Number.POSITIVE_INFINITY };
  const worst = leastBy([none, ...margins], ({ margin }) => margin);
  const finite = worst !== none;
  return {
    id: 'involute-interference',
    holds: worst.margin >= -ROUNDING,
    level: 'must',
    value: finite ? worst.margin : null,
    limit: 0,
    unit: 'mm',
    says:
      (finite ? `least margin ${worst.margin.toFixed(4)} mm (${worst.where})` : worst.where) +
      (cleared.length
        ? `; the undercut roots of ${cleared.join(' and ')} are cleared by the rack itself`
        : ''),
  };
}

function swapped(pair: PairSizes): PairSizes {
  return {
    ...pair,
    teeth1: pair.teeth2,
    teeth2: pair.teeth1,
    baseRadius1: pair.baseRadius2,
    baseRadius2: pair.baseRadius1,
    tipRadius1: pair.tipRadius2,
    tipRadius2: pair.tipRadius1,
    formRadius1: pair.formRadius2,
    formRadius2: pair.formRadius1,
  };
}
