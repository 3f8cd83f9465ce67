import { drawnGap } from '../fit/compensation.js';
import { backlash } from '../fit/play/formulas.js';
import { gearIn, type Train, type TrainMesh } from '../fit/train/train.js';
import { kindOf } from '../solid/partKinds.js';
import { degrees, gearSizes } from '../tooth/gear.js';
import { gapsBetween } from './bodies.js';
import { overlapOf } from './contact.js';
import type { AllFindings, PlanFindings } from './findings.js';
import type { MotionFindings, MotionGap } from './freeToTurn/freeToTurn.js';
import type { MeshRecord } from './sheetTypes.js';

/** The sheet's record of each kind of mesh; what was not measured is null. */
export function meshRecords(found: PlanFindings & Partial<AllFindings>): MeshRecord[] {
  const train = found.asked ?? found.numbers;
  return train.meshes.map((mesh, i) => meshRecord(found, train, mesh, i));
}

function meshRecord(
  { rolling, bodies, motion }: Partial<AllFindings>,
  train: Train,
  mesh: TrainMesh,
  index: number,
): MeshRecord {
  const { spec } = train;
  const { between } = mesh;
  const { gear } = gearIn(train, between[0]);
  const measured = bodies && gapsBetween(bodies, between);
  const rolled = rolling?.[index];
  const { normal, circumferential } = backlash(mesh, spec.fit.gap, gearSizes(gear).baseHelixAngle);
  return {
    between,
    centreDistance: mesh.centreDistance,
    workingPressureAngle: degrees(mesh.workingPressureAngle),
    transverseContactRatio: mesh.transverseContactRatio,
    overlapRatio: overlapOf(spec, gear),
    gap: {
      asked: spec.fit.gap,
      drawn: drawnGap(spec),
      rollingLeast: rolled?.least ?? null,
      ...(rolled ? { rollingCurve: rolled.curve } : {}),
      bodies: measured ? leastOf(measured) : null,
      motionLeast: measured && motion ? leastOf([...measured, ...gapsOf(motion, between)]) : null,
    },
    normalBacklash: normal,
    circumferentialBacklash: circumferential,
  };
}

/** Gaps between two kinds of parts while they moved. */
function gapsOf({ pairs }: MotionFindings, [one, two]: MeshRecord['between']): MotionGap[] {
  return pairs.filter(({ between }) => {
    const kinds = between.map(kindOf);
    return kinds.includes(one) && kinds.includes(two);
  });
}

function leastOf(gaps: readonly { distance: number | null }[]): number | null {
  const distances = gaps.map(({ distance }) => distance).filter((distance) => distance !== null);
  return distances.length ? Math.min(...distances) : null;
}
