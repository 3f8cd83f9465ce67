import { fitSet } from '../../fit/fitSet.js';
import { setNumbers } from '../../fit/setNumbers.js';
import { gearRecords } from '../../proof/gearRecords.js';
import { meshRecords } from '../../proof/meshRecords.js';
import { trainRecord } from '../../proof/trainRecord.js';
import { buildFitted } from '../../solid/buildSet.js';
import type { Part } from '../../solid/mesh.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { gearSizes, radians } from '../../tooth/gear.js';
import { polar } from '../../tooth/polar.js';
import type { Mates, PlacedGear, Subject } from './subject.js';

/**
 * A planetary set as it is to be drawn, at the sizes that it is printed at: growth and shrinkage left out.
 * @param parts the set's parts at those sizes [built here]
 * @throws Refusal when the teeth cannot be made
 */
export function planetarySubject(
  spec: PlanetarySpec,
  parts: readonly Part[] = buildFitted(spec, fitSet(spec)),
): Subject {
  const plan = setNumbers(spec);
  const { gears, radii, inner, outer } = plan;
  const { planets, opening } = trainRecord(plan);
  const placed = (part: string, kind: 'sun' | 'planet' | 'ring', centre: [number, number]): PlacedGear => ({
    part,
    centre,
    radii: {
      reference: gearSizes(gears[kind]).referenceRadius,
      tip: radii[kind].tip,
      root: radii[kind].root,
    },
  });
  const places = planets.map(({ angle }) => angle);
  const { baseHelixAngle } = gearSizes(gears.planet);
  const mates = (between: Mates['between'], pitchRadius: number): Mates => ({
    between,
    pitchPoint: polar(pitchRadius, radians(places[0])),
    gap: spec.fit.gap,
    gapAcross: spec.fit.gap / Math.cos(baseHelixAngle),
  });
  const { sun, planet, ring } = gears;
  return {
    name: spec.name,
    title: 'Planetary gear set',
    parts,
    gears: [
      placed('sun', 'sun', [0, 0]),
      ...places.map((angle, i) =>
        placed(`planet-${i + 1}`, 'planet', polar(inner.centreDistance, radians(angle))),
      ),
      placed('ring', 'ring', [0, 0]),
    ],
    records: gearRecords(spec, gears, radii),
    meshes: meshRecords(plan),
    mates: [
      mates(['sun', 'planet-1'], (inner.centreDistance * sun.teeth) / (sun.teeth + planet.teeth)),
      mates(['planet-1', 'ring'], (outer.centreDistance * ring.teeth) / (ring.teeth - planet.teeth)),
    ],
    faceWidth: spec.faceWidth,
    around: 'ring',
    centreDistance: { between: ['sun', 'planet-1'], value: inner.centreDistance },
    ...(places.length > 1 ? { opening: { ...widest(places, opening.arc), value: opening.arc } } : {}),
    facts: [],
  };
}

/** Where the widest opening lies; of equally wide ones the one that has most room. */
function widest(places: readonly number[], arc: number): { from: number; to: number } {
  const sorted = places.map((place) => ((place % 360) + 360) % 360).sort((a, b) => a - b);
  const between = sorted.map((from, i) => ({ from, to: sorted[i + 1] ?? sorted[0] + 360 }));
  const most = Math.max(...between.map(({ from, to }) => to - from));
  const off = ({ from, to }: { from: number; to: number }): number =>
    1 - Math.cos(radians((from + to) / 2 - BELOW));
  const { from, to } = between
    .filter((gap) => gap.to - gap.from > most - 1e-6)
    .reduce((best, gap) => (off(gap) < off(best) - 1e-9 ? gap : best));
  const middle = (from + to) / 2;
  return { from: middle - arc / 2, to: middle + arc / 2 };
}

/** Below, and a little to the left: clear of the letters at both sides. */
const BELOW = 255;
