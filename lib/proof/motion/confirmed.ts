import { CARRIER } from '../../fit/play/carrierContacts.js';
import type { Motion } from '../../fit/play/contact.js';
import type { Furthest } from '../../fit/play/furthest.js';
import type { SetPlay, Tilt } from '../../fit/play/setPlay.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { allowedGapError } from '../allowedGapError.js';
import { distanceAfter, type MovingSet } from './movingSet.js';

/** Names of the motions that are made. */
export const LEANING = 'planet tilted';

/** One furthest motion as made on the finished meshes. */
export interface Confirmed {
  motion: string;
  /** Just short of it nothing meets. */
  clear: boolean;
  /** Just beyond it something meets; null where that is not asked. */
  meets: boolean | null;
}

/** Leaning bodies meet at points between the planes in which contacts are taken: their motion is known half as well. */
const TILT_MARGIN = 2;

/**
 * Makes the furthest motions of a planet, of the sun and of the carrier on the finished meshes as they are printed: short of them by
 * the error that the meshes' gap may have, parts must be clear; beyond them by twice that, they must meet.
 */
export function confirmed(
  spec: PlanetarySpec,
  moving: MovingSet,
  { standing, carrier }: SetPlay,
): Confirmed[] {
  const { set } = moving;
  const [planet, sun] = [set.planets[0].name, set.sun.name];
  const error = allowedGapError(spec) / set.gap;
  const along = ({ value, motions }: Furthest, part: string) =>
    Number.isFinite(value) ? motions[part] : null;
  const leaning = ({ angle, motion }: Tilt) => (Number.isFinite(angle) ? motion : null);
  const mates = (first: string, second: string) =>
    first === sun || second === set.ring.name || second === CARRIER;
  const tried: [string, string, Motion | null, number][] = [
    ['planet up', planet, along(standing.planet.up, planet), 1],
    ['planet down', planet, along(standing.planet.down, planet), 1],
    [LEANING, planet, leaning(standing.planet.tilt), TILT_MARGIN],
    ['sun up', sun, along(standing.sun.up, sun), 1],
    ['sun down', sun, along(standing.sun.down, sun), 1],
    ...(carrier
      ? ([
          ['carrier up', CARRIER, along(carrier.up, CARRIER), 1],
          ['carrier down', CARRIER, along(carrier.down, CARRIER), 1],
        ] satisfies typeof tried)
      : []),
  ];
  return tried.flatMap(([name, part, motion, margin]) =>
    motion
      ? [
          {
            motion: name,
            clear: distanceAfter(moving, { [part]: motion }, 1 - margin * error, set.gap, mates) > 0,
            meets: distanceAfter(moving, { [part]: motion }, 1 + 2 * margin * error, set.gap, mates) === 0,
          },
        ]
      : [],
  );
}

/** The motions that the meshes do not bear out: something meets short of them, or nothing beyond. */
export function unproved(motions: readonly Confirmed[]): string[] {
  return motions.filter(({ clear, meets }) => !clear || meets === false).map(({ motion }) => motion);
}
