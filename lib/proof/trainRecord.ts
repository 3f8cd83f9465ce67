import { planetary } from '../fit/train/planetary.js';
import { setOf } from '../fit/train/setOf.js';
import type { Train } from '../fit/train/train.js';
import type { PlanetarySpec } from '../spec/types.js';
import { degrees } from '../tooth/gear.js';
import { planetPlaces, unbalance } from '../train/assembly.js';
import { opening } from '../train/opening.js';
import { ratios } from '../train/ratios.js';
import type { TrainRecord } from './sheetTypes.js';

/** The sheet's record of a planetary train: ratios, places and turns of the planets, widest opening. */
export function trainRecord(train: Train<PlanetarySpec>): TrainRecord {
  const { spec, inner, radii } = setOf(train);
  const angles = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  const places = planetary.places(train).flat();
  return {
    ratios: ratios(spec.sun.teeth, spec.ring.teeth),
    planets: angles.map((angle, i) => ({
      angle,
      rotation: degrees(places.find(({ name }) => name === `planet-${i + 1}`)!.rotation),
    })),
    unbalance: unbalance(angles),
    opening: opening(
      angles,
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
