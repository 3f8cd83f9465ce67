import type { Check } from '../check.js';
import type { PlayRecord } from '../motion/playRecord.js';

/**
 * A planet between held sun and ring leans no farther than the limit, and clears the planets beside it until then.
 * Default limit: one addendum over the face width, half the working depth. Common practice, no source.
 * @param limit degrees
 */
export function tilt({ planet }: PlayRecord, limit: number): Check {
  const { degrees, overFaceWidth } = planet.tilt;
  const within = degrees !== null && degrees <= limit;
  return {
    id: 'tilt',
    holds: within && planet.clearsWhenTilted,
    level: 'should',
    value: degrees,
    limit,
    unit: 'deg',
    says:
      degrees === null || overFaceWidth === null
        ? 'nothing keeps a planet from tipping over'
        : `a planet leans by up to ${degrees.toFixed(2)}°, ${overFaceWidth.toFixed(2)} mm over the face width` +
          (planet.clearsWhenTilted
            ? ', and clears the planets beside it even then'
            : '; it binds on a planet beside it before that') +
          (within ? '' : '; a smaller gap, a larger face width or herringbone teeth steady it'),
  };
}
