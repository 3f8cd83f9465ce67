import * as z from 'zod';
import { follows, whole } from '../fields.js';
import { ranges } from '../ranges.js';
import { type CommonSpec, completeCommon } from '../schema/common.js';
import {
  completeExternal,
  completeInternal,
  type ExternalGear,
  external,
  type InternalGear,
  outside,
  ringed,
  shiftOf,
} from '../schema/gears.js';
import { trainLimits } from '../schema/limits.js';
import { type FileIn, type FileKind, schemaOf } from './kind.js';

const body = z
  .discriminatedUnion('internal', [
    z.strictObject({ internal: outside, ...external('the gear') }),
    z.strictObject({
      ...ringed('the gear', '0'),
      mateTeeth: whole(...ranges.teeth, {
        description:
          'Teeth of the smallest gear that it is to run with: its tips are cut back and its root roundings made for that one',
        source: 'involute interference, ISO 21771 and handbooks',
        ...follows(`a third of its teeth, ${ranges.teeth[0]} at least`, 15),
      }).optional(),
    }),
  ])
  .meta({ description: 'The gear, with teeth inside where internal is true', examples: [{ teeth: 15 }] });

const schema = schemaOf('gear', 'One gear', 'One gear by itself, with teeth outside or inside', {
  gear: body,
  limits: trainLimits,
});

type File = FileIn<typeof schema>;

/** One gear by itself. */
export interface GearSpec extends CommonSpec, Pick<File, 'kind'> {
  gear:
    | ({ internal: false } & ExternalGear)
    /** `mateTeeth`: of the smallest gear that it is to run with. */
    | ({ internal: true; mateTeeth: number } & InternalGear);
}

/** One gear by itself. */
export const gear = {
  key: 'gear',
  usualName: 'gear',
  schema,
  complete,
  gears: ({ gear }) => [{ part: 'gear', ...gear }],
  gaps: () => [],
} satisfies FileKind<GearSpec, File>;

function complete(file: File, name: string): GearSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { gear } = file;
  const sizes = { ...teeth, ...rest };
  const shift = shiftOf('none', gear.profileShift);
  return {
    ...teeth,
    gear: gear.internal
      ? {
          internal: true,
          ...completeInternal(gear, shift, sizes),
          mateTeeth: gear.mateTeeth ?? usualMate(gear.teeth),
        }
      : { internal: false, ...completeExternal(gear, shift, sizes) },
    ...rest,
  };
}

/** Teeth of the smallest gear that one with teeth inside is to run with, where nothing is said of it. */
export function usualMate(teeth: number): number {
  return Math.max(ranges.teeth[0], Math.round(teeth / 3));
}
