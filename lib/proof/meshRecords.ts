import { drawnGap } from '../fit/compensation.js';
import { backlash } from '../fit/play/formulas.js';
import { kindOf } from '../solid/partKinds.js';
import type { CommonSpec } from '../spec/types.js';
import { degrees, type Gear, gearSizes } from '../tooth/gear.js';
import type { PairSizes } from '../train/pair.js';
import { type BodyGap, gapsBetween } from './bodies.js';
import { meshContact } from './contact.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';
import type { MotionFindings, MotionGap } from './freeToTurn/freeToTurn.js';
import type { MeshRecord } from './sheetTypes.js';

/** What rolling came to, mm: the least gap, and the least at each phase. */
type Rolled = { least: number; curve: number[] };

/** The sheet's record of each kind of mesh; what was not measured is null. */
export function meshRecords(found: PlanFindings & Partial<ToothFindings & AllFindings>): MeshRecord[] {
  const { spec, gears, inner, outer, rolling, bodies, motion } = found;
  const record = (
    between: MeshRecord['between'],
    pair: typeof inner,
    rolled: Rolled | undefined,
    measured: readonly BodyGap[] | undefined,
  ): MeshRecord => {
    return meshRecord(spec, {
      between,
      pair,
      helixOf: gears.planet,
      contact: meshContact(spec, gears.planet, pair),
      rolled,
      measured,
      motion,
    });
  };
  return [
    record(['sun', 'planet'], inner, rolling?.inner, bodies && gapsBetween(bodies, 'sun', 'planet')),
    record(['planet', 'ring'], outer, rolling?.outer, bodies && gapsBetween(bodies, 'planet', 'ring')),
  ];
}

/** The sheet's record of one kind of mesh. */
export function meshRecord(
  spec: CommonSpec,
  found: {
    between: MeshRecord['between'];
    pair: Pick<PairSizes, 'centreDistance' | 'workingPressureAngle'>;
    /** Any of its gears: they have one base helix angle. */
    helixOf: Gear;
    contact: { transverse: number; overlap: number };
    rolled: Rolled | undefined;
    measured: readonly BodyGap[] | undefined;
    motion: MotionFindings | undefined;
  },
): MeshRecord {
  const { between, pair, contact, rolled, measured } = found;
  const { normal, circumferential } = backlash(pair, spec.fit.gap, gearSizes(found.helixOf).baseHelixAngle);
  return {
    between,
    centreDistance: pair.centreDistance,
    workingPressureAngle: degrees(pair.workingPressureAngle),
    transverseContactRatio: contact.transverse,
    overlapRatio: contact.overlap,
    gap: {
      asked: spec.fit.gap,
      drawn: drawnGap(spec),
      rollingLeast: rolled?.least ?? null,
      ...(rolled ? { rollingCurve: rolled.curve } : {}),
      bodies: measured ? leastOf(measured) : null,
      motionLeast: measured && found.motion ? leastOf([...measured, ...gapsOf(found.motion, between)]) : null,
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
