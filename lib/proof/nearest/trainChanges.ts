import { gapChange } from '../../spec/measuredGaps.js';
import { floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { Spec, TrainSpec } from '../../spec/types.js';
import { usual } from '../../spec/usual.js';
import { radians } from '../../tooth/gear.js';
import { along, alongWhole, type Change, just, moduleWay, type Way, type Ways } from './changes.js';
import { plainForm } from './smallerWays.js';

/** Teeth with which a gear that stands alone, or runs on a bar, works whatever its rack is. */
const ENOUGH_TEETH = 40;
/** How many teeth more or less are tried. */
const WINDOW = 8;
/** Pairs of tooth counts that are tried. */
const COUNTS = 80;

/** What may be changed about a pair, a rack and pinion or one gear. */
export function trainWays(spec: TrainSpec): Ways {
  const { module, fit, printer, helix, faceWidth } = spec;
  const slanted = [
    along('helix.angle', helix.angle, ranges.helixAngle[1]),
    along('faceWidth', faceWidth, Math.min(ranges.faceWidth[1], 4 * faceWidth)),
  ];
  const unshift = unshifted(spec);
  const gap = gapChange(spec, floorThousandth(Math.max(ranges.gap[0], Math.min(fit.gap, 0.1 * module))));
  const form = { rack: usual.rack, pressureAngle: usual.pressureAngle };
  const flat = { 'printer.growth': 0 };
  const bare = plainForm(spec);
  return {
    single: [
      along('fit.gap', fit.gap, ranges.gap[0]),
      moduleWay(spec),
      ...gearsOf(spec).flatMap(shiftWays),
      ...gearsOf(spec).flatMap(teethWays),
      just('profileShift', solved(spec)),
      ...distanceWays(spec),
      just('centreDistance', freed(spec)),
      just('profileShift', unshift),
      ...(helix.form === 'spur' ? [] : slanted),
      just('printer.growth', printer.growth === 0 ? {} : flat),
      just('rack', { rack: usual.rack }),
      just('pressureAngle', { pressureAngle: usual.pressureAngle }),
    ],
    counts,
    bases: [
      ...(Object.keys(bare).length ? [bare] : []),
      gap,
      form,
      { ...form, ...gap },
      { ...unshift, ...gap },
      { ...form, ...unshift, ...gap },
      { ...form, ...unshift, ...gap, ...flat, ...bare },
    ],
  };
}

/** A gear of a file, by its key there. */
interface Toothed {
  part: string;
  internal: boolean;
  teeth: number;
  profileShift?: number;
  mateTeeth?: number;
}

function gearsOf(spec: TrainSpec): Toothed[] {
  switch (spec.kind) {
    case 'pair':
      return [
        { part: 'pinion', internal: false, ...spec.pinion },
        { part: 'wheel', ...spec.wheel },
      ];
    case 'rack':
      return [{ part: 'pinion', internal: false, ...spec.pinion }];
    case 'gear':
      return [{ part: 'gear', ...spec.gear }];
  }
}

function shiftWays({ part, internal, profileShift }: Toothed): Way[] {
  if (profileShift === undefined) return [];
  const ends = internal ? ranges.ringShift : ranges.shift;
  return [along(`${part}.profileShift`, profileShift, ...ends)];
}

function teethWays({ part, internal, teeth, mateTeeth }: Toothed): Way[] {
  const [fewest, largest] = internal ? ranges.ringTeeth : ranges.teeth;
  const most = Math.min(largest, Math.max(2 * teeth, teeth + ENOUGH_TEETH));
  const own = alongWhole(`${part}.teeth`, teeth, most, fewest);
  return mateTeeth === undefined
    ? [own]
    : [
        own,
        alongWhole(`${part}.mateTeeth`, mateTeeth, ranges.teeth[0], Math.min(ranges.teeth[1], teeth - 1)),
      ];
}

/** Both gears of a pair with other teeth, the fewest more or less first; one gear with enough. */
function counts(spec: Spec): Change[] {
  if (spec.kind === 'planetary') return [];
  if (spec.kind !== 'pair') {
    const [{ part, teeth }] = gearsOf(spec);
    return [{ [`${part}.teeth`]: Math.max(teeth, ENOUGH_TEETH) }];
  }
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

function withTeeth(spec: TrainSpec, pinion: number, wheel: number): Change {
  return { 'pinion.teeth': pinion, 'wheel.teeth': wheel, ...freed(spec) };
}

/** The centre distance itself, on the way to the one that teeth without shifts make. */
function distanceWays(spec: TrainSpec): Way[] {
  if (spec.kind !== 'pair' || spec.centreDistance === undefined) return [];
  const { pinion, wheel, module, helix } = spec;
  const teeth = wheel.internal ? wheel.teeth - pinion.teeth : wheel.teeth + pinion.teeth;
  const plain = (module * teeth) / (2 * Math.cos(radians(helix.angle)));
  return [along('centreDistance', spec.centreDistance, plain)];
}

/** The centre distance that the teeth make, without shifts found for another; nothing where none is given. */
function freed(spec: TrainSpec): Change {
  if (spec.kind !== 'pair' || spec.centreDistance === undefined) return {};
  return { centreDistance: undefined, ...(spec.profileShift === 'solve' && { profileShift: 'none' }) };
}

/** Shifts of a pair found by cogweave, whatever the file gives. */
function solved(spec: TrainSpec): Change {
  if (spec.kind !== 'pair') return {};
  const given = gearsOf(spec).filter(({ profileShift }) => profileShift !== undefined);
  if (!given.length) return {};
  const out = given.map(({ part }) => [`${part}.profileShift`, undefined]);
  return { profileShift: 'solve', ...Object.fromEntries(out) };
}

/** No shifts, and the centre distance that goes with none; nothing where there are none. */
function unshifted(spec: TrainSpec): Change {
  const gears = gearsOf(spec);
  if (gears.every(({ profileShift }) => profileShift === 0)) return freed(spec);
  const none = Object.fromEntries(gears.map(({ part }) => [`${part}.profileShift`, 0]));
  return { ...(spec.kind === 'pair' ? { profileShift: 'none' } : {}), ...none, ...freed(spec) };
}
