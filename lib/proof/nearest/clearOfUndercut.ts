import { ranges } from '../../spec/ranges.js';
import type { Spec } from '../../spec/types.js';
import type { Gear } from '../../tooth/gear.js';
import { leastProfileShift } from '../../tooth/undercut.js';
import { along, type Change } from './changes.js';
import { searchOf } from './searchOf.js';
import { worksWith } from './works.js';

/** A gear with teeth outside, by the key of its kind in the file. */
interface Toothed {
  part: string;
  gear: Gear;
}

/**
 * What of a file leaves every involute of its gears whole, each way tried: profile shifts, with whatever else goes with
 * them, and a helix angle. Empty where neither does.
 */
export function clearOfUndercut(spec: Spec, gears: readonly Toothed[]): Change[] {
  const undercut = gears.filter(({ gear }) => leastProfileShift(gear) > gear.profileShift);
  const shifts = Object.fromEntries(
    undercut.map(({ part, gear }) => [`${keyOf(part)}.profileShift`, ceilShift(leastProfileShift(gear))]),
  );
  const shifted = searchOf(spec)
    .shifted(spec, shifts)
    .find((change) => worksWith(spec, change));
  const steeper = (angle: number) =>
    gears.every(({ gear }) => leastProfileShift({ ...gear, helixAngle: angle }) <= gear.profileShift);
  const { form, angle } = spec.helix;
  const slanted =
    form === 'spur'
      ? undefined
      : along('helix.angle', angle, ranges.helixAngle[1]).find(
          (change) => steeper(Number(change['helix.angle'])) && worksWith(spec, change),
        );
  return [shifted, slanted].filter((change) => change !== undefined);
}

function keyOf(part: string): string {
  return part === 'planet' ? 'planets' : part;
}

/** In thousandths, to the safe side. */
function ceilShift(shift: number): number {
  return Math.ceil(shift * 1000) / 1000;
}
