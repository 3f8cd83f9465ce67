import { drawnTrain } from '../../fit/trains/drawnTrain.js';
import type { Train } from '../../fit/trains/train.js';
import { trainNumbers } from '../../fit/trains/trainNumbers.js';
import { boreRadius } from '../../solid/bore.js';
import { Refusal } from '../../spec/refusal.js';
import type { TrainSpec } from '../../spec/types.js';
import { gearSizes, radians } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import type { Check } from '../check.js';
import { layersOf } from '../checks/layers.js';
import { lineWidthOf } from '../checks/lineWidth.js';
import { rimOf } from '../checks/rim.js';
import { type ThinWall, thinFeaturesOf } from '../checks/thinFeatures.js';
import { normalTip, tipOffer, tipThicknessOf } from '../checks/tipThickness.js';
import { undercutOf } from '../checks/undercut.js';
import { leastBy } from '../leastBy.js';

/** Checks on the numbers of a train alone; one that has nothing to look at is left out. */
export function trainPlanChecks(asked: Train, drawn: Train): Check[] {
  const { limits } = asked.spec;
  const outside = asked.gears.filter(({ gear }) => !gear.internal);
  const walls = wallsOf(drawn);
  return [
    ...(outside.length ? [undercutOf(asked.spec, outside)] : []),
    tipThicknessOf(thinnestTip(drawn), asked.spec, () => tipOffer<TrainSpec>(asked.spec, leavesTip)),
    lineWidthOf(thicknesses(drawn), limits.wall),
    ...rimChecks(asked),
    ...(walls.length ? [thinFeaturesOf(walls, drawn.spec.faceWidth, limits.thinness)] : []),
    layersOf(drawn.spec),
  ];
}

/** The thinnest of the tooth tips of a train as drawn, mm in the normal section. */
export function thinnestTip({ gears, bar }: Train): { part: string; thickness: number } {
  const tips: { part: string; thickness: number }[] = gears.map(({ part, gear, radii, relief }) => ({
    part,
    thickness: normalTip(gear, radii.tip, relief),
  }));
  if (bar) tips.push({ part: 'bar', thickness: barThickness(bar, bar.tip) });
  return leastBy(tips, ({ thickness }) => thickness);
}

function leavesTip(spec: TrainSpec): boolean {
  try {
    return thinnestTip(drawnTrain(trainNumbers(spec))).thickness > 0;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

/** Teeth in the normal section on their reference circles, or on the datum line. */
function thicknesses({ gears, bar }: Train): { part: string; thickness: number }[] {
  const teeth: { part: string; thickness: number }[] = gears.map(({ part, gear, relief }) => {
    const { referenceRadius, helixAngle } = gearSizes(gear);
    return { part, thickness: transverseThickness(gear, referenceRadius, relief) * Math.cos(helixAngle) };
  });
  return bar ? [...teeth, { part: 'bar', thickness: barThickness(bar, 0) }] : teeth;
}

/** Thickness of a bar's tooth at a height, normal section, mm. Source: ISO 53, half the pitch on the datum line. */
function barThickness({ bar, relief }: NonNullable<Train['bar']>, height: number): number {
  const alpha = radians(bar.pressureAngle);
  return (Math.PI * bar.module) / 2 - (2 * relief) / Math.cos(alpha) - 2 * height * Math.tan(alpha);
}

function rimChecks({ spec, gears, bar }: Train): Check[] {
  const limit = spec.limits.rim;
  const ring = gears.find(({ gear }) => gear.internal);
  if (ring) {
    // Scallops take their depth off.
    const left = ring.rim - (ring.features.grip?.depth ?? 0);
    return [rimOf(`the ${ring.part}'s rim`, `${ring.part}.rim`, left, limit)];
  }
  return bar ? [rimOf("the bar's backing", 'bar.backing', bar.backing, limit)] : [];
}

function wallsOf({ gears, bar }: Train): ThinWall[] {
  const walls = gears.flatMap(({ part, gear, radii, rim, bore, features }): ThinWall[] => {
    const thinnest = rim - (features.grip?.depth ?? 0);
    if (gear.internal)
      return [{ what: `the ${part}'s rim`, thickness: thinnest, mend: `a thicker ${part}.rim` }];
    if (bore.shape === 'none') return [];
    const thickness = radii.root - boreRadius(bore);
    return [{ what: `the ${part}'s wall around its bore`, thickness, mend: 'a smaller bore' }];
  });
  if (bar) walls.push({ what: "the bar's backing", thickness: bar.backing, mend: 'a thicker bar.backing' });
  return walls;
}
