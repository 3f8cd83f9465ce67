import type { FittedSet } from '../fit/fitSet.js';
import type { PlanetarySpec } from '../spec/types.js';
import { degrees } from '../tooth/gear.js';
import { planetPlaces, unbalance } from '../train/assembly.js';
import { opening } from '../train/opening.js';
import { phases } from '../train/phases.js';
import { ratios } from '../train/ratios.js';
import type { PlanFindings } from './findings.js';
import type { TrainRecord } from './sheetTypes.js';

/** The sheet's record of the train: ratios, places and turns of the planets, widest opening. */
export function trainRecord({ spec, inner, radii }: PlanFindings, set?: FittedSet): TrainRecord {
  const places = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  return {
    ratios: ratios(spec.sun.teeth, spec.ring.teeth),
    planets: places.map((angle, i) => ({
      angle,
      rotation: degrees(set ? set.planets[i].rotation : rotationOf(spec, angle)),
    })),
    unbalance: unbalance(places),
    opening: opening(
      places,
      {
        centreDistance: inner.centreDistance,
        planetTipRadius: radii.planet.tip,
        ringTipRadius: radii.ring.tip,
        sunTipRadius: radii.sun.tip,
      },
      spec.opening?.edge,
    ),
  };
}

function rotationOf(spec: PlanetarySpec, angle: number): number {
  const teeth = { sunTeeth: spec.sun.teeth, planetTeeth: spec.planets.teeth, ringTeeth: spec.ring.teeth };
  return phases(teeth, [angle]).planets[0];
}
