import type { Check } from '../check.js';
import { LEANING, unproved } from '../motion/confirmed.js';
import type { PlayRecord } from '../motion/playRecord.js';

/**
 * A planet between held sun and ring leans no farther than the limit, and clears the planets beside it until then; made on
 * the meshes, the motion is free short of that and stopped beyond.
 * Default limit: one addendum over the face width, half the working depth. Common practice, no source.
 * @param limit degrees
 */
export function tilt({ planet, confirmed }: PlayRecord, limit: number): Check {
  const { degrees, overFaceWidth } = planet.tilt;
  const within = degrees !== null && degrees <= limit;
  const unborne = unproved(confirmed).includes(LEANING);
  // Where nothing holds there is nothing to make; where something does the meshes must have been asked.
  const asked = degrees === null || confirmed.some(({ motion }) => motion === LEANING);
  return {
    id: 'tilt',
    holds: within && planet.clearsWhenTilted && asked && !unborne,
    level: 'should',
    value: degrees,
    limit,
    unit: 'deg',
    says:
      degrees === null || overFaceWidth === null
        ? 'nothing keeps a planet from tipping over'
        : `a planet was found to lean by up to ${degrees.toFixed(2)}°, ${overFaceWidth.toFixed(2)} mm over the face width` +
          (planet.clearsWhenTilted
            ? ', and clears the planets beside it even then'
            : '; it binds on a planet beside it before that') +
          (within ? '' : '; a smaller gap, a larger face width or herringbone teeth steady it') +
          (unborne || !asked ? '; the meshes do not bear it out' : ''),
  };
}
