import { gearsOf } from '../../spec/kinds.js';
import type { PairSpec, Spec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';
import { along, type Change, just, type Way, type Ways } from './changes.js';
import { ENOUGH_TEETH, trainWays, unshifted } from './trainChanges.js';

/** How many teeth more or less are tried. */
const WINDOW = 8;
/** Pairs of tooth counts that are tried. */
const COUNTS = 80;

/** What may be changed about a pair of gears. */
export function pairWays(spec: PairSpec): Ways {
  const none = unshifted(spec);
  return trainWays(spec, {
    counts: (other: Spec) => counts(other as PairSpec),
    solved: solved(spec),
    unshifted: { ...(Object.keys(none).length ? { profileShift: 'none' } : {}), ...none, ...freed(spec) },
    distance: [...distanceWays(spec), just('centreDistance', freed(spec))],
  });
}

/** Both gears with other teeth, the fewest more or less first. */
function counts(spec: PairSpec): Change[] {
  const { pinion, wheel } = spec;
  const steps = Array.from({ length: 2 * WINDOW + 1 }, (_, i) => i - WINDOW);
  const both = steps.flatMap((p) => steps.map((w) => ({ p, w, off: Math.abs(p) + Math.abs(w) })));
  const near = both.sort((a, b) => a.off - b.off).slice(1, COUNTS);
  const enough = Math.max(pinion.teeth, ENOUGH_TEETH / 2);
  return [
    ...near.map(({ p, w }) => withTeeth(spec, pinion.teeth + p, wheel.teeth + w)),
    withTeeth(spec, enough, Math.max(wheel.teeth, enough + ENOUGH_TEETH)),
  ];
}

function withTeeth(spec: PairSpec, pinion: number, wheel: number): Change {
  return { 'pinion.teeth': pinion, 'wheel.teeth': wheel, ...freed(spec) };
}

/** The centre distance itself, on the way to the one that teeth without shifts make. */
function distanceWays({ pinion, wheel, module, helix, centreDistance }: PairSpec): Way[] {
  if (centreDistance === undefined) return [];
  const teeth = wheel.internal ? wheel.teeth - pinion.teeth : wheel.teeth + pinion.teeth;
  return [along('centreDistance', centreDistance, (module * teeth) / (2 * Math.cos(radians(helix.angle))))];
}

/** The centre distance that the teeth make, without shifts found for another; nothing where none is given. */
function freed({ centreDistance, profileShift }: PairSpec): Change {
  if (centreDistance === undefined) return {};
  return { centreDistance: undefined, ...(profileShift === 'solve' && { profileShift: 'none' }) };
}

/** Shifts found by cogweave, whatever the file gives. */
function solved(spec: PairSpec): Change {
  const given = gearsOf(spec).filter(({ profileShift }) => profileShift !== undefined);
  if (!given.length) return {};
  return {
    profileShift: 'solve',
    ...Object.fromEntries(given.map(({ part }) => [`${part}.profileShift`, undefined])),
  };
}
