import { refuse } from '../refusal.js';
import { radians } from '../tooth/gear.js';

/** How far each gear is turned, radians: the angle of one of its tooth centres, from 0 up to its pitch. */
export interface Phases {
  /** One for each planet, in the order of the places given. */
  planets: number[];
  /** Centre of a ring tooth. */
  ringTooth: number;
  /** Centre of a ring tooth space, half a pitch on. */
  ringSpace: number;
}

/** Planets that ask for ring positions closer than this part of a ring pitch are taken to agree. */
const AGREE = 1e-6;

/**
 * Turns that let every planet mesh with sun and ring at once, in one transverse plane, carrier held.
 * @param teeth of sun, planet and ring
 * @param places directions of the planets' axes, degrees
 * @param sunRotation angle of a tooth centre of the sun, radians [0]
 * @throws Refusal when the places are not multiples of 360°/(z_sun + z_ring) apart
 * Source: derived. A sun tooth in the direction θ of a planet meets a planet space there, so
 * φ_p = θ + π + [z_s (θ − φ_s) − π]/z_p; on the far side a planet tooth fills a ring space, so
 * φ_r = θ + [z_s (θ − φ_s) + z_p π]/z_r, which every planet must agree on.
 */
export function phases(
  teeth: { sunTeeth: number; planetTeeth: number; ringTeeth: number },
  places: readonly number[],
  sunRotation = 0,
): Phases {
  const { sunTeeth, planetTeeth, ringTeeth } = teeth;
  const ringPitch = (2 * Math.PI) / ringTeeth;
  const planetPitch = (2 * Math.PI) / planetTeeth;
  const turned = places.map((place) => {
    const direction = radians(place);
    const sunPhase = sunTeeth * (direction - sunRotation);
    return {
      place,
      planet: within(direction + Math.PI + (sunPhase - Math.PI) / planetTeeth, planetPitch),
      ring: within(direction + (sunPhase + planetTeeth * Math.PI) / ringTeeth, ringPitch),
    };
  });
  const ringTooth = turned[0]?.ring ?? 0;
  for (const { place, ring } of turned) {
    const apart = within(ring - ringTooth + ringPitch / 2, ringPitch) - ringPitch / 2;
    if (Math.abs(apart) > AGREE * ringPitch) {
      const step = 360 / (sunTeeth + ringTeeth);
      const nearest = places[0] + Math.round((place - places[0]) / step) * step;
      const rule = `planets sit at multiples of ${step}° from one another`;
      refuse('does-not-assemble', 'planets.spacing', place, rule, [nearest]);
    }
  }
  return {
    planets: turned.map(({ planet }) => planet),
    ringTooth,
    ringSpace: within(ringTooth + ringPitch / 2, ringPitch),
  };
}

/** The angle brought into [0, pitch); a hair below a whole pitch counts as 0, so that equal turns compare equal. */
function within(angle: number, pitch: number): number {
  const rest = angle - Math.floor(angle / pitch) * pitch;
  return pitch - rest < 1e-12 * Math.max(1, Math.abs(angle)) ? 0 : rest;
}
