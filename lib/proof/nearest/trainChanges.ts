import type { FileGear } from '../../spec/kinds/kind.js';
import { gearsOf } from '../../spec/kinds.js';
import { gapChange } from '../../spec/measuredGaps.js';
import { floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { Spec, TrainSpec } from '../../spec/types.js';
import { usual } from '../../spec/usual.js';
import { along, alongWhole, type Change, just, moduleWay, type Way, type Ways } from './changes.js';
import { plainForm } from './smallerWays.js';

/** Teeth with which a gear that stands alone, or runs on a bar, works whatever its rack is. */
export const ENOUGH_TEETH = 40;

/** What a kind of file adds. */
export interface OwnWays {
  /** Other tooth counts. */
  counts(spec: Spec): Change[];
  /** Shifts found by cogweave, whatever the file gives. */
  solved: Change;
  /** No shifts, and what goes with none. */
  unshifted: Change;
  /** Ways of a distance of axes. */
  distance: Way[];
}

/**
 * What may be changed about gears whose axes the maker holds.
 * @param own what its kind adds [that of a gear that stands alone, or runs on a bar]
 */
export function trainWays(
  spec: TrainSpec,
  own: OwnWays = { counts: enough, solved: {}, unshifted: unshifted(spec), distance: [] },
): Ways {
  const { module, fit, printer, helix, faceWidth } = spec;
  const slanted = [
    along('helix.angle', helix.angle, ranges.helixAngle[1]),
    along('faceWidth', faceWidth, Math.min(ranges.faceWidth[1], 4 * faceWidth)),
  ];
  const unshift = own.unshifted;
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
      just('profileShift', own.solved),
      ...own.distance,
      just('profileShift', unshift),
      ...(helix.form === 'spur' ? [] : slanted),
      just('printer.growth', printer.growth === 0 ? {} : flat),
      just('rack', { rack: usual.rack }),
      just('pressureAngle', { pressureAngle: usual.pressureAngle }),
    ],
    counts: own.counts,
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

function shiftWays({ part, internal, profileShift }: FileGear): Way[] {
  if (profileShift === undefined) return [];
  const ends = internal ? ranges.ringShift : ranges.shift;
  return [along(`${part}.profileShift`, profileShift, ...ends)];
}

function teethWays(gear: FileGear): Way[] {
  const { part, internal, teeth } = gear;
  const mateTeeth = 'mateTeeth' in gear ? Number(gear.mateTeeth) : undefined;
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

/** Teeth enough for any rack. */
function enough(spec: Spec): Change[] {
  const [{ part, teeth }] = gearsOf(spec);
  return [{ [`${part}.teeth`]: Math.max(teeth, ENOUGH_TEETH) }];
}

/** No shifts; nothing where there are none. */
export function unshifted(spec: TrainSpec): Change {
  const gears = gearsOf(spec);
  if (gears.every(({ profileShift }) => profileShift === 0)) return {};
  return Object.fromEntries(gears.map(({ part }) => [`${part}.profileShift`, 0]));
}
