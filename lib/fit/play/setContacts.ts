import type { Contact } from './contact.js';
import { flankContacts } from './flankContacts.js';
import { type LooseSet, slices } from './looseSet.js';
import { neighbourContact, tipContacts, wallsOf } from './tipContacts.js';

/**
 * Every place at which parts of a set would touch as it stands: each planet with sun, ring and the next planet.
 * @param planes transverse planes in half the face width [7]
 */
export function setContacts(set: LooseSet, planes = 7): Contact[] {
  const { sun, planets, ring, inner, outer } = set;
  const walls = { sun: wallsOf(set, sun), planet: wallsOf(set, planets[0]), ring: wallsOf(set, ring) };
  return planets.flatMap((planet, i) =>
    slices(set, planes).flatMap((slice) => [
      ...flankContacts(set, sun, planet, inner, slice),
      ...tipContacts(set, sun, planet, walls.planet, slice),
      ...tipContacts(set, planet, sun, walls.sun, slice),
      ...flankContacts(set, planet, ring, outer, slice),
      ...tipContacts(set, planet, ring, walls.ring, slice),
      ...tipContacts(set, ring, planet, walls.planet, slice),
      ...(planets.length > 1
        ? [neighbourContact(set, planet, planets[(i + 1) % planets.length], slice)]
        : []),
    ]),
  );
}
