import * as z from 'zod';
import { word } from './fields.js';
import { kindMeant } from './kinds.js';
import { withShipped } from './profiles/shipped.js';
import { carrier, lips, retention } from './schemaCarrier.js';
import { common } from './schemaCommon.js';
import { planets, ring, sun } from './schemaGears.js';
import { limits, opening, trainLimits } from './schemaLimits.js';
import { bar, centreDistance, gear, pairShift, pairShiftBalance, pinion, wheel } from './schemaTrains.js';
import type { Kind } from './types.js';

/** Which kind a file is of: the key that decides what else it may hold. */
const kindOf = <K extends Kind>(kind: K, description: string) =>
  z.literal(kind).meta({ description, source: 'this version', examples: [kind] });

/** One of the two modules is given, in files of every kind. */
const oneModule = [{ required: ['module'] }, { required: ['transverseModule'] }];

const schemas = {
  planetary: z
    .strictObject({
      ...common,
      kind: kindOf('planetary', 'A planetary set: sun, planets and ring'),
      profileShift: word(['none', 'solve'], {
        description:
          'none: the shifts are those given for each gear. solve: shifts that are not given are found, so that both meshes have one centre distance (ring.teeth need not be sun + 2 × planets) and no tooth is undercut',
        source: 'ISO 21771; the search is our own',
      }).default('none'),
      shiftBalance: word(['sliding', 'root', 'none'], {
        description:
          'How sun and planets share the shift that is found: equal largest specific sliding, equal tooth thickness where the involute begins, or none of it for the planets, each as far as the limits of the teeth allow',
        source: 'ISO 21771 for sliding and thickness; common practice',
      }).default('sliding'),
      sun,
      planets,
      ring,
      opening,
      carrier,
      retention,
      lips,
      limits,
    })
    .meta({ title: 'Planetary set', oneOf: oneModule }),
  pair: z
    .strictObject({
      ...common,
      kind: kindOf('pair', 'Two gears on parallel axes: a pinion, and a wheel beside it or around it'),
      profileShift: pairShift,
      shiftBalance: pairShiftBalance,
      centreDistance,
      pinion,
      wheel,
      limits: trainLimits,
    })
    .meta({ title: 'Pair of gears', oneOf: oneModule }),
  rack: z
    .strictObject({
      ...common,
      kind: kindOf('rack', 'A rack and pinion: a gear and a toothed bar'),
      pinion,
      bar,
      limits: trainLimits,
    })
    .meta({ title: 'Rack and pinion', oneOf: oneModule }),
  gear: z
    .strictObject({
      ...common,
      kind: kindOf('gear', 'One gear by itself, with teeth outside or inside'),
      gear,
      limits: trainLimits,
    })
    .meta({ title: 'One gear', oneOf: oneModule }),
};

/** The parameter file. Lengths in mm, angles in degrees; fixed defaults are filled in, derived ones are not. */
export const fileSchema = z
  .discriminatedUnion('kind', [schemas.planetary, schemas.pair, schemas.rack, schemas.gear])
  .meta({
    title: 'Parameter file of cogweave',
    description: 'Lengths in mm, angles in degrees. What a file may hold follows from its kind',
  });

/** Shipped profiles are mappings by the time a file has been parsed, never names. */
type Named<T extends { printer: unknown; filament: unknown }> = Omit<T, 'printer' | 'filament'> & {
  printer: Exclude<T['printer'], string>;
  filament: Exclude<T['filament'], string>;
};

/** The file of one kind whose every value is in its own range; rules between values are still to be checked. */
export type FileOf<K extends Kind> = { [Each in K]: Named<z.output<(typeof schemas)[Each]>> }[K];

/** A file of any kind, as `FileOf`. */
export type FileSpec = FileOf<Kind>;

/**
 * What the schema of a file's kind makes of plain data, shipped profiles filled in by name.
 * @returns the file where every value is in range, else what is wrong
 */
export function parseFile(data: unknown): { file?: FileSpec; issues: readonly z.core.$ZodIssue[] } {
  const parsed = schemas[kindMeant(data)].safeParse(withShipped(data));
  // A word that is no name of a shipped profile has been refused, any other is a mapping by now.
  return { file: parsed.data as FileSpec | undefined, issues: parsed.error?.issues ?? [] };
}
