import { largestMateTipRadius, leastRingTipRadius } from '../../train/interference.js';
import type { PairSizes } from '../../train/pair.js';
import type { Check } from '../check.js';
import type { ToothFindings } from '../findings.js';

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
    ...(sun.undercut
      ? []
      : [{ where: 'planet tips on the sun', margin: largestMateTipRadius(inner) - inner.tipRadius2 }]),
    ...(planet.undercut
      ? []
      : [
          {
            where: 'sun tips on the planets',
            margin: largestMateTipRadius(swapped(inner)) - inner.tipRadius1,
          },
        ]),
  ];
  const worst = margins.reduce((a, b) => (b.margin < a.margin ? b : a));
  const cleared = [sun.undercut && 'sun', planet.undercut && 'planets'].filter(Boolean).join(' and ');
  return {
    id: 'involute-interference',
    holds: worst.margin >= -ROUNDING,
    level: 'must',
    value: worst.margin,
    limit: 0,
    unit: 'mm',
    says:
      `least margin ${worst.margin.toFixed(4)} mm (${worst.where})` +
      (cleared ? `; the undercut roots of ${cleared} are cleared by the rack itself` : ''),
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
