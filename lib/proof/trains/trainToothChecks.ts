import type { FittedTrain } from '../../fit/trains/fitTrain.js';
import { gearSizes } from '../../tooth/gear.js';
import { leastRingTipRadius } from '../../train/interference.js';
import type { Check } from '../check.js';
import { contactRatioOf } from '../checks/contactRatio.js';
import { externalMargins, involuteInterferenceOf, type TipMargin } from '../checks/involuteInterference.js';
import { bothFlanks, rollingOf } from '../checks/rolling.js';
import { rootSpaceOf, rootSpaceWidth } from '../checks/rootSpace.js';
import { trochoidInterferenceOf } from '../checks/trochoidInterference.js';
import { overlapOf } from '../contact.js';
import type { TrainRolling } from './rollTrain.js';
import type { TrainTeeth } from './trainFindings.js';

/** Checks on the outlines of a train's teeth; one gear by itself has no mate to interfere with. */
export function trainToothChecks({ asked, rolling }: TrainTeeth): Check[] {
  return [...outlineChecks(asked), ...(asked.mesh && rolling ? [rollingCheck(asked, rolling)] : [])];
}

/** Those of them that need nothing rolled. */
export function outlineChecks(asked: FittedTrain): Check[] {
  const { spec, gears, mesh } = asked;
  const spaces = rootSpaceOf(spacesOf(asked), spec.limits.toothFeature);
  if (!mesh) return [spaces];
  const contact = {
    where: mesh.between.join(' and '),
    transverse: mesh.transverseContactRatio,
    overlap: overlapOf(spec, gears[0].gear),
  };
  return [
    spaces,
    interference(asked),
    ...(mesh.pair?.internal ? [trochoidInterferenceOf(mesh.pair, 'pinion', 'wheel')] : []),
    contactRatioOf([contact], spec.limits.contactRatio),
  ];
}

function spacesOf({ gears, bar }: FittedTrain): { part: string; width: number }[] {
  const spaces: { part: string; width: number }[] = gears.map(({ part, profile }) => ({
    part,
    width: rootSpaceWidth(profile),
  }));
  if (!bar) return spaces;
  const { normalPitch, round, normalPressureAngle } = bar.profile;
  const flankEnd = round.u - round.radius * Math.cos(normalPressureAngle);
  return [...spaces, { part: 'bar', width: normalPitch - 2 * flankEnd }];
}

/** No tip reaches below the true involute of its mate; a bar's flanks are straight as far down as they go. */
function interference({ gears, bar, mesh }: FittedTrain): Check {
  const [pinion, wheel] = gears;
  const cleared = gears.filter(({ profile }) => profile.undercut).map(({ part }) => part);
  const { pair } = mesh!;
  const margins: TipMargin[] = pair?.internal
    ? [{ where: 'wheel tips on the pinion', margin: pair.tipRadius2 - leastRingTipRadius(pair) }]
    : pair
      ? externalMargins(pair, ['pinion', 'wheel'], [pinion.profile.undercut, wheel.profile.undercut])
      : barMargins(pinion, bar!);
  return involuteInterferenceOf(margins, pair?.internal ? [] : cleared);
}

/**
 * How much higher a bar's tips, and how much larger a pinion's, could be, mm. Source: as `rackMesh`, the tangent
 * length at which each meets the other.
 */
function barMargins(
  { gear, profile }: FittedTrain['gears'][number],
  bar: NonNullable<FittedTrain['bar']>,
): TipMargin[] {
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

/** The least gap found while the exact outlines roll through a pitch, both flanks. */
function rollingCheck({ spec, mesh }: FittedTrain, { least, bySide, phase }: TrainRolling): Check {
  return rollingOf(spec, { least, phase, where: mesh!.between.join(' and ') }, bothFlanks(bySide));
}
