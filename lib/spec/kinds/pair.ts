import * as z from 'zod';
import { follows, mm, word } from '../fields.js';
import { type CommonSpec, completeCommon } from '../schema/common.js';
import {
  completeExternal,
  completeInternal,
  type ExternalGear,
  external,
  type InternalGear,
  outside,
  pinion,
  ringed,
  shiftOf,
} from '../schema/gears.js';
import { trainLimits } from '../schema/limits.js';
import { type FileIn, type FileKind, schemaOf } from './kind.js';

/** The larger gear of a pair. */
const wheel = z
  .discriminatedUnion('internal', [
    z.strictObject({ internal: outside, ...external('the wheel') }),
    z.strictObject(ringed('the wheel around the pinion', '0; found where profileShift is solve')),
  ])
  .meta({
    description: 'The gear that the pinion runs with: beside it, or around it with internal: true',
    examples: [{ teeth: 45 }],
  });

const schema = schemaOf(
  'pair',
  'Pair of gears',
  'Two gears on parallel axes: a pinion, and a wheel beside it or around it',
  {
    profileShift: word(['none', 'solve'], {
      description:
        'none: the shifts are those given for each gear. solve: shifts that are not given are found for the centre distance',
      source: 'ISO 21771',
      ...follows('solve where centreDistance is given and a shift is not, else none', 'none'),
    }).optional(),
    shiftBalance: word(['sliding', 'none'], {
      description:
        'How pinion and wheel share the shift that is found: equal largest specific sliding as far as the limits of the teeth allow (a wheel around a pinion: as little shift of the pinion as they allow), or none of it for the wheel',
      source: 'ISO 21771 for sliding; common practice',
    }).default('sliding'),
    centreDistance: mm(0.5, 2000, {
      description:
        'Distance of the axes. With profileShift solve, shifts that are not given are found for it; with none it must be the one that the shifts give. The gap stays as asked either way',
      source: 'ISO 21771',
      ...follows('the one that the profile shifts give', 45),
    }).optional(),
    pinion,
    wheel,
    limits: trainLimits,
  },
);

type File = FileIn<typeof schema>;

/** Two gears on parallel axes, the wheel either beside the pinion or around it. */
export interface PairSpec
  extends CommonSpec,
    Required<Pick<File, 'kind' | 'profileShift' | 'shiftBalance'>>,
    Pick<File, 'centreDistance'> {
  pinion: ExternalGear;
  wheel: ({ internal: false } & ExternalGear) | ({ internal: true } & InternalGear);
}

/** Two gears on parallel axes. */
export const pair = {
  key: 'wheel',
  usualName: 'gear-pair',
  schema,
  complete,
  gears: ({ pinion, wheel }) => [
    { part: 'pinion', internal: false, ...pinion },
    { part: 'wheel', ...wheel },
  ],
  gaps: ({ fit }) => [{ what: 'fit.gap', gap: fit.gap }],
} satisfies FileKind<PairSpec, File>;

function complete(file: File, name: string): PairSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { pinion, wheel, centreDistance, shiftBalance } = file;
  const sizes = { ...teeth, ...rest };
  const open = pinion.profileShift === undefined || wheel.profileShift === undefined;
  const profileShift = file.profileShift ?? (centreDistance !== undefined && open ? 'solve' : 'none');
  const wheelShift = shiftOf(profileShift, wheel.profileShift);
  return {
    ...teeth,
    profileShift,
    shiftBalance,
    ...(centreDistance !== undefined && { centreDistance }),
    pinion: completeExternal(pinion, shiftOf(profileShift, pinion.profileShift), sizes),
    wheel: wheel.internal
      ? { internal: true, ...completeInternal(wheel, wheelShift, sizes) }
      : { internal: false, ...completeExternal(wheel, wheelShift, sizes) },
    ...rest,
  };
}
