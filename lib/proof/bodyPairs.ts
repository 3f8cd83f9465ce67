import type { CarrierSizes } from '../fit/carrier/carrierSizes.js';
import type { FittedTrain } from '../fit/train/fitTrain.js';
import type { Part } from '../solid/mesh.js';

/** Two parts whose distance is measured, by their names. */
export interface BodyPair {
  between: [string, string];
  /** `mates`: teeth in mesh, which keep exactly the drawn gap. `apart`: bodies that keep `least`, or more. */
  as: 'mates' | 'apart';
  /** Least distance of bodies that are `apart`, mm [the drawn gap]. */
  least?: number;
}

/**
 * Every pair of a train whose distance counts: mates, neighbouring planets, and the carrier with all gears.
 */
export function bodyPairs(train: FittedTrain): BodyPair[] {
  const { gears, meshes, carrier } = train;
  const mates = meshes.flatMap(({ between: [one, two] }) =>
    namesOf(train, one).flatMap((a) =>
      namesOf(train, two).map((b): BodyPair => ({ between: [a, b], as: 'mates' })),
    ),
  );
  const orbiting = gears
    .filter(({ orbits }) => orbits)
    .flatMap(({ part }) => neighbours(namesOf(train, part)));
  return [
    ...mates,
    ...orbiting.map((between): BodyPair => ({ between, as: 'apart' })),
    ...(carrier
      ? carried(
          carrier,
          gears.flatMap(({ part }) => namesOf(train, part)),
        )
      : []),
  ];
}

function namesOf({ gears }: FittedTrain, part: string): string[] {
  return gears.find((gear) => gear.part === part)?.places.map(({ name }) => name) ?? [part];
}

function neighbours(names: readonly string[]): [string, string][] {
  const beside = names.map((name, i): [string, string] => [name, names[(i + 1) % names.length]]);
  return names.length > 2 ? beside : beside.slice(0, names.length - 1);
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
