import * as z from 'zod';
import type { PlanetFeatures } from '../../features/index.js';
import { type CommonFile, common } from '../schema/common.js';
import type { ExternalGear, InternalGear } from '../schema/gears.js';

/** What a kind of file declares; nobody else asks which kind a file is of. */
export interface FileKind<Spec, File> {
  /** A key that only its files have. */
  key: string;
  /** The name of a file's results where neither the file nor its own name gives one. */
  usualName: string;
  /** What its files may hold; fixed defaults are filled in, derived ones are not. */
  schema: z.ZodType;
  /** Fills in every default that follows from other values. @param name base name of the files written */
  complete(file: File, name: string): Spec;
  /** Its gears, in the order of their keys. */
  gears(spec: Spec): FileGear[];
  /** Its toothed bar, lengths in mm. */
  bar?(spec: Spec): { teeth: number; length: number; backing: number };
  /** Its gaps that are measured on meshes. */
  gaps(spec: Spec): MeasuredGap[];
}

/** A gear of a file of any kind. */
export type FileGear = {
  /** Its key in the file. */
  part: string;
  /** How many of it are made [1]. */
  count?: number;
} & (({ internal: false } & ExternalGear & PlanetFeatures) | ({ internal: true } & InternalGear));

/** A gap of a file, mm, and what it is called. */
export interface MeasuredGap {
  what: string;
  gap: number;
  /** Between layers, so that no growth of walls changes it. */
  axial?: true;
}

/** A file after its schema: names of shipped profiles are mappings by then. */
export type FileIn<S extends z.ZodType> = Omit<z.output<S>, 'printer' | 'filament'> &
  Pick<CommonFile, 'printer' | 'filament'>;

/** The schema of a kind of file: what all hold, and `shape`. */
export function schemaOf<K extends string, T extends z.core.$ZodLooseShape>(
  kind: K,
  title: string,
  description: string,
  shape: T,
) {
  const literal = z.literal(kind).meta({ description, source: 'this version', examples: [kind] });
  return z.strictObject({ ...common, kind: literal, ...shape }).meta({
    title,
    // One of the two modules is given.
    oneOf: [{ required: ['module'] }, { required: ['transverseModule'] }],
  });
}
