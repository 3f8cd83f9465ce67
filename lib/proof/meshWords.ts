import type { Train, TrainMesh } from '../fit/train/train.js';

/** Both sides of a mesh, as the file calls them. */
export function sidesOf({ gears }: Train, { between }: TrainMesh): [string, string] {
  const [one, two] = between.map((part) => gears.find((gear) => gear.part === part)?.key ?? part);
  return [one, two];
}
