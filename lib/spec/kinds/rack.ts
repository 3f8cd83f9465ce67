import * as z from 'zod';
import { radians } from '../../tooth/gear.js';
import { follows, mm, whole } from '../fields.js';
import { ROUNDING } from '../nearest.js';
import { ranges } from '../ranges.js';
import { type CommonSpec, completeCommon } from '../schema/common.js';
import { completeExternal, type ExternalGear, pinion, shiftOf } from '../schema/gears.js';
import { trainLimits } from '../schema/limits.js';
import { USUAL_WALL, usualWall } from '../usual.js';
import { type FileIn, type FileKind, schemaOf } from './kind.js';

const bar = z
  .strictObject({
    teeth: whole(...ranges.barTeeth, {
      description: 'Number of whole teeth of the bar',
      source: 'range by common practice',
      ...follows('as many as the length has room for, or as the pinion has: one turn', 20),
    }).optional(),
    length: mm(...ranges.barLength, {
      description:
        'Length of the bar between its square ends; slanted teeth stand wholly between them, so their lean over the face width is added to their pitches',
      source: 'range by common practice',
      ...follows('whole teeth from end to end', 100),
    }).optional(),
    backing: mm(...ranges.rim, {
      description: 'Wall of the bar behind the roots of its teeth',
      source: 'common practice: 1.2 times the tooth depth, 3 mm at least',
      ...follows(USUAL_WALL, 5),
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'The toothed bar' });

const schema = schemaOf('rack', 'Rack and pinion', 'A rack and pinion: a gear and a toothed bar', {
  pinion,
  bar,
  limits: trainLimits,
});

type File = FileIn<typeof schema>;

/** A gear and a toothed bar. */
export interface RackSpec extends CommonSpec, Pick<File, 'kind'> {
  pinion: ExternalGear;
  bar: { teeth: number; length: number; backing: number };
}

/** A gear and a toothed bar. */
export const rack = {
  key: 'bar',
  usualName: 'rack-and-pinion',
  schema,
  complete,
  gears: ({ pinion }) => [{ part: 'pinion', internal: false, ...pinion }],
  bar: ({ bar }) => bar,
  gaps: ({ fit }) => [{ what: 'fit.gap', gap: fit.gap }],
} satisfies FileKind<RackSpec, File>;

function complete(file: File, name: string): RackSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { pinion, bar } = file;
  const count = bar.teeth ?? (bar.length === undefined ? pinion.teeth : teethIn(bar.length, teeth));
  return {
    ...teeth,
    pinion: completeExternal(pinion, shiftOf('none', pinion.profileShift), { ...teeth, ...rest }),
    bar: {
      teeth: count,
      length: bar.length ?? lengthOf(count, teeth),
      backing: bar.backing ?? usualWall(teeth),
    },
    ...rest,
  };
}

type BarSizes = Pick<CommonSpec, 'module' | 'helix' | 'faceWidth'>;

/** Transverse pitch p_t = π m_n / cos β of a bar, along it, mm. Source: ISO 53, ISO 21771. */
export function barPitch({ module, helix }: Pick<BarSizes, 'module' | 'helix'>): number {
  return (Math.PI * module) / Math.cos(radians(helix.angle));
}

/** How far slanted teeth lean along the bar between their ends, or a herringbone's between its ends and mid face, mm. */
export function barLean({ helix, faceWidth }: Pick<BarSizes, 'helix' | 'faceWidth'>): number {
  const oneWay = helix.form === 'herringbone' ? faceWidth / 2 : faceWidth;
  return oneWay * Math.tan(radians(helix.angle));
}

/** Least length of a bar with this many whole teeth between square ends, mm. */
export function lengthOf(teeth: number, sizes: BarSizes): number {
  return teeth * barPitch(sizes) + barLean(sizes);
}

/** How many whole teeth stand in a length, 1 at least. */
export function teethIn(length: number, sizes: BarSizes): number {
  return Math.max(1, Math.floor((length - barLean(sizes)) / barPitch(sizes) + ROUNDING));
}
