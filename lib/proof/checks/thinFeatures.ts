import { drawnNumbers } from '../../fit/compensation.js';
import { boreRadius } from '../../solid/bore.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';

/**
 * The tallest wall for its thickness, as drawn: the ring's rim outside its root circle, and the sun's wall between
 * bore and root circle, each as high as the face is wide. Common practice, no source.
 */
export function thinFeatures(found: PlanFindings): Check {
  const { spec, radii } = drawnNumbers(found);
  const walls = [{ what: "the ring's rim", thickness: spec.ring.rim, mend: 'a thicker ring.rim' }];
  if (spec.sun.bore.shape !== 'none') {
    const thickness = radii.sun.root - boreRadius(spec.sun.bore);
    walls.push({ what: "the sun's wall around its bore", thickness, mend: 'a smaller bore' });
  }
  return thinFeaturesOf(walls, spec.faceWidth, spec.limits.thinness);
}

/** A wall that stands by itself. */
export interface ThinWall {
  what: string;
  /** As drawn, mm. */
  thickness: number;
  /** What in the file would make it thicker. */
  mend: string;
}

/** The same of any walls as high as the face is wide, mm. */
export function thinFeaturesOf(walls: readonly ThinWall[], height: number, limit: number): Check {
  const thinnest = walls.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const ratio = height / thinnest.thickness;
  const holds = ratio <= limit;
  return {
    id: 'thin-features',
    holds,
    level: 'should',
    value: ratio,
    limit,
    unit: '1',
    says:
      `${thinnest.what} is ${thinnest.thickness.toFixed(2)} mm thick and ${height.toFixed(1)} mm high, ${ratio.toFixed(1)} times as high as thick` +
      (holds
        ? ''
        : `; ${mended(height, limit, thinnest.mend)} or faceWidth ${(Math.floor(10 * limit * thinnest.thickness) / 10).toFixed(1)} would pass`),
  };
}

function mended(height: number, limit: number, mend: string): string {
  return `${mend} that leaves ${(Math.ceil((100 * height) / limit) / 100).toFixed(2)} mm of wall`;
}
