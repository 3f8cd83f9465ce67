import * as z from 'zod';
import { type Bore, bore } from '../../features/bore.js';
import {
  type GearFeatures,
  gearFeatures,
  type RingFeatures,
  ringFeatures,
  schemas,
} from '../../features/index.js';
import { completed } from '../../features/through.js';
import { follows, mm, number, whole } from '../fields.js';
import { ranges } from '../ranges.js';
import { USUAL_WALL, usualWall } from '../usual.js';
import type { CommonSpec } from './common.js';

/** Teeth of a gear with teeth outside. */
export const teeth = (part: string) =>
  whole(...ranges.teeth, {
    description: `Number of teeth of ${part}`,
    source: 'range by common practice',
    examples: [15],
  });

/** Profile shift of a gear with teeth outside. */
export const shift = (description: string) =>
  number(...ranges.shift, {
    description,
    source: 'ISO 21771; 0 is the standard tooth',
    ...follows('0; found where profileShift is solve', 0),
  }).optional();

/** What every gear with teeth outside may have. */
export const external = (part: string) => ({
  teeth: teeth(part),
  profileShift: shift(`Profile shift coefficient x of ${part}, in normal modules`),
  bore,
  ...schemas(gearFeatures),
});

/** The smaller gear of a pair, or the gear that runs on a bar. */
export const pinion = z.strictObject(external('the pinion')).meta({
  description: 'The gear that the others run with; its axis is at the origin',
  examples: [{ teeth: 15 }],
});

/** Wall of a ring. */
export const rim = (part: string) =>
  mm(...ranges.rim, {
    description: `Wall outside the root circle of ${part}`,
    source: 'common practice: 1.2 times the tooth depth, 3 mm at least',
    ...follows(USUAL_WALL, 5),
  }).optional();

/** A panel mount is for what has its axis in the middle of a set. */
const { mount: _, ...features } = schemas(ringFeatures);

/** What every gear with teeth inside may have. */
export const ringed = (part: string, rule: string) => ({
  internal: z.literal(true).meta({ description: 'Teeth inside', source: 'ISO 1122-1' }),
  teeth: whole(...ranges.ringTeeth, {
    description: `Number of teeth of ${part}`,
    source: 'range by common practice',
    examples: [45],
  }),
  profileShift: number(...ranges.ringShift, {
    description: `Profile shift coefficient x of ${part}, in normal modules; positive moves its teeth outward`,
    source: 'ISO 21771',
    ...follows(rule, 0),
  }).optional(),
  rim: rim(part),
  ...features,
});

/** The same key where the teeth are outside. */
export const outside = z
  .literal(false)
  .optional()
  .meta({ description: 'Teeth outside', source: 'ISO 1122-1', defaultRule: 'false' });

type ExternalFile = z.output<z.ZodObject<ReturnType<typeof external>>>;
type InternalFile = z.output<z.ZodObject<ReturnType<typeof ringed>>>;

/** A gear with teeth outside, as the sun is; a shift that is missing is to be found. */
export interface ExternalGear extends GearFeatures, Pick<ExternalFile, 'teeth' | 'profileShift'> {
  bore: Bore;
}

/** A gear with teeth inside, as the ring is. */
export interface InternalGear
  extends RingFeatures,
    Pick<InternalFile, 'teeth' | 'profileShift'>,
    Required<Pick<InternalFile, 'rim'>> {}

/** A gear with teeth outside with its defaults. */
export function completeExternal(
  file: ExternalFile,
  shift: { profileShift?: number },
  sizes: Pick<CommonSpec, 'faceWidth' | 'printer'>,
): ExternalGear {
  const bore: Bore = file.bore === 'none' ? { shape: 'none' } : file.bore;
  return { teeth: file.teeth, ...shift, bore, ...completed(gearFeatures, file, partSizes(sizes)) };
}

/** A gear with teeth inside with its defaults. */
export function completeInternal(
  file: { teeth: number; rim?: number },
  shift: { profileShift?: number },
  sizes: Pick<CommonSpec, 'rack' | 'module' | 'faceWidth' | 'printer'>,
): InternalGear {
  return {
    teeth: file.teeth,
    ...shift,
    rim: file.rim ?? usualWall(sizes),
    ...completed(ringFeatures, file, partSizes(sizes)),
  };
}

/** What defaults of features follow from. */
export function partSizes({ faceWidth, printer }: Pick<CommonSpec, 'faceWidth' | 'printer'>) {
  return { faceWidth, layer: printer.layer, lineWidth: printer.lineWidth };
}

/** A shift that is to be found stays out of the file, so that resolving again finds the same one. */
export function shiftOf(
  profileShift: 'none' | 'solve',
  given: number | undefined,
  usual = 0,
): { profileShift?: number } {
  if (given !== undefined) return { profileShift: given };
  return profileShift === 'solve' ? {} : { profileShift: usual };
}
