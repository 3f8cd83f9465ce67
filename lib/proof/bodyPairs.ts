import type { CarrierSizes } from '../fit/carrier/carrierSizes.js';
import type { Part } from '../solid/mesh.js';
import { kindOf } from '../solid/partKinds.js';

/** Two parts whose distance is measured, by their names. */
export interface BodyPair {
  between: [string, string];
  /** `mates`: teeth in mesh, which keep exactly the drawn gap. `apart`: bodies that keep `least`, or more. */
  as: 'mates' | 'apart';
  /** Least distance of bodies that are `apart`, mm [the drawn gap]. */
  least?: number;
}

/**
 * Every pair of a planetary set whose distance counts: sun and planets, planets and ring, neighbouring planets, and the
 * carrier with all of them.
 */
export function planetaryPairs(parts: readonly Part[], carrier: CarrierSizes | null = null): BodyPair[] {
  const planets = parts.map(({ name }) => name).filter((name) => kindOf(name) === 'planet');
  const beside = planets.map((name, i): [string, string] => [name, planets[(i + 1) % planets.length]]);
  const neighbours = planets.length > 2 ? beside : beside.slice(0, planets.length - 1);
  return [
    ...planets.map((planet): BodyPair => ({ between: ['sun', planet], as: 'mates' })),
    ...planets.map((planet): BodyPair => ({ between: [planet, 'ring'], as: 'mates' })),
    ...neighbours.map((between): BodyPair => ({ between, as: 'apart' })),
    ...(carrier ? carried(carrier, ['sun', ...planets, 'ring']) : []),
  ];
}

/** Every other pair with a part that a script changed: whatever was joined to it keeps clear of all parts. */
export function changedPairs(
  parts: readonly Part[],
  pairs: readonly BodyPair[],
  changed: (name: string) => boolean,
): BodyPair[] {
  const names = parts.map(({ name }) => name);
  const all = names.flatMap((a, i) => names.slice(i + 1).map((b): [string, string] => [a, b]));
  return all
    .filter(([a, b]) => changed(a) || changed(b))
    .filter(([a, b]) => !pairs.some(({ between }) => between.includes(a) && between.includes(b)))
    .map((between) => ({ between, as: 'apart' }));
}

/** The lesser of the gaps beside and along the axis is the least that any gear may be from the carrier. */
function carried({ carrier, axialGap }: CarrierSizes, gears: readonly string[]): BodyPair[] {
  const least = Math.min(carrier.gap, axialGap);
  return gears.map((gear) => ({ between: [gear, 'carrier'], as: 'apart', least }));
}
