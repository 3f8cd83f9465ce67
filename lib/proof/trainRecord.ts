import { planetary } from '../fit/train/planetary.js';
import { openingSizes, setOf } from '../fit/train/setOf.js';
import type { Train } from '../fit/train/train.js';
import type { PlanetarySpec } from '../spec/types.js';
import { degrees } from '../tooth/gear.js';
import { planetPlaces, unbalance } from '../train/assembly.js';
import { opening } from '../train/opening.js';
import { ratios } from '../train/ratios.js';
import type { TrainRecord } from './sheetTypes.js';

/** The sheet's record of a planetary train: ratios, places and turns of the planets, widest opening. */
export function trainRecord(train: Train<PlanetarySpec>): TrainRecord {
  const set = setOf(train);
  const { spec } = set;
  const angles = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  const [, places] = planetary.places(train);
  return {
    ratios: ratios(spec.sun.teeth, spec.ring.teeth),
    planets: angles.map((angle, i) => ({
      angle,
      rotation: degrees(places[i].rotation),
    })),
    unbalance: unbalance(angles),
    opening: opening(angles, openingSizes(set), spec.opening?.edge),
  };
}
