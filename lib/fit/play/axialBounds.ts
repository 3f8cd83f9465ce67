import type { Contact, Motion } from './contact.js';
import { flankContacts } from './flankContacts.js';
import { lipContacts } from './lipContacts.js';
import { type LooseGear, type LooseSet, slices, turnedOn } from './looseSet.js';
import { outerBound } from './outerBound.js';
import { tipContacts } from './tipContacts.js';

/** What play along the axis cannot exceed, mm, whatever else the part does; Infinity where that cannot be shown. */
export interface AxialBounds {
  planet: { up: number; down: number };
  sun: { up: number; down: number };
}

/** Phases of the pitch, as shares of it: the same ones in which motions are looked for. */
const PHASES = [0, 0.5];
/** Transverse planes in half the face width. */
const PLANES = 4;
/** Flanks that play brings to their ends hold no more: how far from them contacts are taken, in gaps. */
const MARGIN = 2;

const UP: Motion = [0, 0, 1, 0, 0, 0];
const DOWN: Motion = [0, 0, -1, 0, 0, 0];

/**
 * Bounds on the play along the axis that lips leave: of a planet between held sun and ring, and of the sun between held
 * planets. Only where there are lips; null for other sets, whose teeth hold on a closed form or not at all.
 */
export function axialBounds(set: LooseSet): AxialBounds | null {
  if (!set.sun.lips && !set.ring.lips) return null;
  const [planet] = set.planets;
  const height = planet.bevelSize * Math.tan(set.bevelAngle);
  const phases = PHASES.map((share) => holdingContacts(turnedOn(set, share), height));
  // Up is like down in a mirror at mid face, but for helical teeth.
  const alike = set.form !== 'helical';
  const most = (part: LooseGear, way: Motion) => {
    let bound = 0;
    for (const contacts of phases) {
      bound = Math.max(bound, outerBound(way, contacts, part.name));
      // Beyond the lips none of this holds.
      if (!(bound < height)) return Number.POSITIVE_INFINITY;
    }
    return bound;
  };
  const both = (part: LooseGear) => {
    const up = most(part, UP);
    return { up, down: alike ? up : most(part, DOWN) };
  };
  return { planet: both(planet), sun: both(set.sun) };
}

/**
 * Contacts that no motion within the lips gets past: flanks away from the ends of their path and of the face, tips over
 * root circles there, and the lips themselves.
 * @param height of the bevels, mm
 */
function holdingContacts(set: LooseSet, height: number): Contact[] {
  const { sun, planets, ring, inner, outer, gap, faceWidth } = set;
  const inside = slices(set, [sun, planets[0], ring], PLANES).filter(
    ({ z }) => z >= height && z <= faceWidth - height,
  );
  return planets.flatMap((planet) => [
    ...lipContacts(set, planet, sun, false),
    ...lipContacts(set, planet, ring, false),
    ...inside.flatMap((slice) => [
      ...flankContacts(set, sun, planet, inner, slice, MARGIN * gap),
      ...flankContacts(set, planet, ring, outer, slice, MARGIN * gap),
      ...tipContacts(set, sun, planet, [], slice),
      ...tipContacts(set, planet, sun, [], slice),
      ...tipContacts(set, planet, ring, [], slice),
      ...tipContacts(set, ring, planet, [], slice),
    ]),
  ]);
}
