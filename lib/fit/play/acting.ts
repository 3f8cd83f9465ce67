import type { Contact } from './contact.js';

/** A contact between parts of which at least one is loose, and where the motions of its parts stand among all numbers. */
export interface Acting {
  contact: Contact;
  first: number;
  second: number;
}

/**
 * The contacts that loose parts take part in.
 * @param place where the six numbers of each loose part's motion begin, 0 … 6 n − 6; held parts share six zeros after them
 */
export function actingOn(contacts: readonly Contact[], place: ReadonlyMap<string, number>): Acting[] {
  const held = 6 * place.size;
  const acting: Acting[] = [];
  for (const contact of contacts) {
    const first = place.get(contact.between[0]) ?? held;
    const second = place.get(contact.between[1]) ?? held;
    if (first !== held || second !== held) acting.push({ contact, first, second });
  }
  return acting;
}

/** The gap of a contact at a point of all motions, mm. */
export function gapOf({ contact, first, second }: Acting, point: Float64Array): number {
  return contact.read(contact.place, point, first, second);
}

/** The same; `into` takes the twelve slopes. */
export function slopesOf(
  { contact, first, second }: Acting,
  point: Float64Array,
  into: Float64Array,
): number {
  return contact.read(contact.place, point, first, second, into);
}
