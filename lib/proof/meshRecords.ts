import { drawnGap } from '../fit/compensation.js';
import { backlash } from '../fit/play/formulas.js';
import { degrees, gearSizes } from '../tooth/gear.js';
import { type BodyGap, gapsBetween } from './bodies.js';
import { meshContact } from './contact.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';
import type { MeshRecord } from './sheetTypes.js';

/** The sheet's record of each kind of mesh; what was not measured is null. */
export function meshRecords(found: PlanFindings & Partial<ToothFindings & AllFindings>): MeshRecord[] {
  const { spec, gears, inner, outer, rolling, bodies } = found;
  const record = (
    between: MeshRecord['between'],
    pair: typeof inner,
    rolled: { least: number; curve: number[] } | undefined,
    measured: readonly BodyGap[] | undefined,
  ): MeshRecord => {
    const { transverse, overlap } = meshContact(spec, gears.planet, pair);
    const { normal, circumferential } = backlash(pair, spec.fit.gap, gearSizes(gears.planet).baseHelixAngle);
    return {
      between,
      centreDistance: pair.centreDistance,
      workingPressureAngle: degrees(pair.workingPressureAngle),
      transverseContactRatio: transverse,
      overlapRatio: overlap,
      gap: {
        asked: spec.fit.gap,
        drawn: drawnGap(spec),
        rollingLeast: rolled?.least ?? null,
        ...(rolled ? { rollingCurve: rolled.curve } : {}),
        bodies: measured ? leastOf(measured) : null,
      },
      normalBacklash: normal,
      circumferentialBacklash: circumferential,
    };
  };
  return [
    record(['sun', 'planet'], inner, rolling?.inner, bodies && gapsBetween(bodies, 'sun', 'planet')),
    record(['planet', 'ring'], outer, rolling?.outer, bodies && gapsBetween(bodies, 'planet', 'ring')),
  ];
}

function leastOf(gaps: readonly BodyGap[]): number | null {
  const distances = gaps.map(({ distance }) => distance).filter((distance) => distance !== null);
  return distances.length ? Math.min(...distances) : null;
}
