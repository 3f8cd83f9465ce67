import type { FittedTrain, PlacedBar, PlacedGear } from '../../fit/train/fitTrain.js';
import { gearIn, type TrainMesh } from '../../fit/train/train.js';
import { gearSizes } from '../../tooth/gear.js';
import { largestMateTipRadius, leastRingTipRadius } from '../../train/interference.js';
import type { PairSizes } from '../../train/pair.js';
import type { Check } from '../check.js';
import { leastBy } from '../leastBy.js';

const ROUNDING = 1e-9;

/** How much farther a tip could reach, mm. */
interface TipMargin {
  where: string;
  margin: number;
}

/**
 * No tip reaches below the true involute of its mate. Margins are radii, mm: how much farther the tip could reach.
 * Where the rack has undercut a root it has also cleared the way for a mate with teeth outside, so only whole roots count
 * there; a ring's tips, which dig deeper than a rack, always count.
 * Source: interference tests of handbooks and DIN 3993 (from memory), with the form radius as made.
 */
export function involuteInterference(train: FittedTrain): Check {
  const inRings = train.meshes.filter(({ pair }) => pair?.internal);
  const beside = train.meshes.filter(({ pair }) => !pair?.internal);
  const margins = [...inRings, ...beside].flatMap((mesh) => marginsOf(train, mesh));
  const cleared = train.gears
    .filter(
      ({ part, profile }) =>
        profile.undercut && beside.some(({ between }) => (between as readonly string[]).includes(part)),
    )
    .map(({ key }) => key);
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

function marginsOf(train: FittedTrain, { between, pair }: TrainMesh): TipMargin[] {
  const one = gearIn(train, between[0]);
  if (!pair) return barMargins(one, train.bar!);
  const two = gearIn(train, between[1]);
  return pair.internal
    ? [{ where: `${two.part} tips on the ${one.key}`, margin: pair.tipRadius2 - leastRingTipRadius(pair) }]
    : externalMargins(pair, one, two);
}

/** Margins of both gears of an external pair on each other; an undercut root has been cleared by the rack. */
function externalMargins(pair: PairSizes, one: PlacedGear, two: PlacedGear): TipMargin[] {
  const on1 = largestMateTipRadius(pair) - pair.tipRadius2;
  const on2 = largestMateTipRadius(swapped(pair)) - pair.tipRadius1;
  return [
    ...(one.profile.undercut ? [] : [{ where: `${two.part} tips on the ${one.key}`, margin: on1 }]),
    ...(two.profile.undercut ? [] : [{ where: `${one.part} tips on the ${two.key}`, margin: on2 }]),
  ];
}

/**
 * How much higher a bar's tips, and how much larger a pinion's, could be, mm; a bar's flanks are straight as far down as
 * they go. Source: as `rackMesh`, the tangent length at which each meets the other.
 */
function barMargins({ gear, profile }: PlacedGear, bar: PlacedBar): TipMargin[] {
  const { referenceRadius, baseRadius, transversePressureAngle } = gearSizes(gear);
  const sin = Math.sin(transversePressureAngle);
  const shift = gear.profileShift * gear.module;
  const formReach = Math.sqrt(Math.max(0, profile.formRadius ** 2 - baseRadius ** 2));
  const highest = shift + (referenceRadius * sin - formReach) * sin;
  const farthest = referenceRadius * sin - (bar.profile.form - shift) / sin;
  const pinionTips = {
    where: 'pinion tips on the bar',
    margin: Math.hypot(baseRadius, farthest) - profile.tipRadius,
  };
  if (profile.undercut) return [pinionTips];
  return [{ where: 'bar tips on the pinion', margin: highest - bar.tip }, pinionTips];
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
