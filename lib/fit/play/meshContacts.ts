import type { PairSizes } from '../../train/pair.js';
import { barContacts, barMeshWalls, type LooseBar } from './barContacts.js';
import type { Contact } from './contact.js';
import { flankContacts } from './flankContacts.js';
import { type LooseFrame, type LooseGear, slices } from './looseSet.js';
import { tipContacts, wallsOf } from './tipContacts.js';

/** Two gears in mesh, the ring second where there is one; or a pinion and its bar. */
export type LooseMesh = LooseFrame & { first: LooseGear } & (
    | { second: LooseGear; pair: PairSizes; bar?: undefined }
    | { bar: LooseBar }
  );

/** Transverse planes in half the face width. */
const PLANES = 7;

/** Every place at which the two of a mesh would touch as they stand. */
export function meshContacts(mesh: LooseMesh): Contact[] {
  const { first } = mesh;
  if (mesh.bar) {
    const { bar } = mesh;
    const walls = barMeshWalls(mesh, first, bar);
    return slices(mesh, [first], PLANES).flatMap((slice) => barContacts(mesh, first, bar, slice, walls));
  }
  const { second, pair } = mesh;
  const [own, mate] = [wallsOf(mesh, first), wallsOf(mesh, second)];
  return slices(mesh, [first, second], PLANES).flatMap((slice) => [
    ...flankContacts(mesh, first, second, pair, slice),
    ...tipContacts(mesh, first, second, mate, slice),
    ...tipContacts(mesh, second, first, own, slice),
  ]);
}
