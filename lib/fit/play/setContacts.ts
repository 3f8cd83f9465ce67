import { carrierContacts } from './carrierContacts.js';
import type { Contact } from './contact.js';
import { flankContacts } from './flankContacts.js';
import { lipContacts } from './lipContacts.js';
import { type LooseSet, slices } from './looseSet.js';
import { neighbourContact, tipContacts, wallsOf } from './tipContacts.js';

/** Transverse planes in half the face width where one part moves between held ones. */
const FINE = 7;

/**
 * Every place at which parts of a set would touch as it stands: each planet with sun, ring and the next planet, and
 * the carrier with all.
 * @param planes transverse planes in half the face width [7]
 */
export function setContacts(set: LooseSet, planes = FINE): Contact[] {
  const { sun, planets, ring, inner, outer } = set;
  const walls = { sun: wallsOf(set, sun), planet: wallsOf(set, planets[0]), ring: wallsOf(set, ring) };
  const contacts: Contact[][] = [];
  const cuts = slices(set, [sun, planets[0], ring], planes);
  for (let i = 0; i < planets.length; i++) {
    const planet = planets[i];
    contacts.push(
      lipContacts(set, planet, sun, planes < FINE),
      lipContacts(set, planet, ring, planes < FINE),
    );
    for (const slice of cuts) {
      contacts.push(
        flankContacts(set, sun, planet, inner, slice),
        tipContacts(set, sun, planet, walls.planet, slice),
        tipContacts(set, planet, sun, walls.sun, slice),
        flankContacts(set, planet, ring, outer, slice),
        tipContacts(set, planet, ring, walls.ring, slice),
        tipContacts(set, ring, planet, walls.planet, slice),
      );
      if (planets.length > 1)
        contacts.push([neighbourContact(set, planet, planets[(i + 1) % planets.length], slice)]);
    }
  }
  contacts.push(carrierContacts(set));
  return contacts.flat();
}
