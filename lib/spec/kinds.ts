import * as z from 'zod';
import { type GearSpec, gear } from './kinds/gear.js';
import type { FileGear, FileKind, MeasuredGap } from './kinds/kind.js';
import { type PairSpec, pair } from './kinds/pair.js';
import { type PlanetarySpec, planetary } from './kinds/planetary.js';
import { type RackSpec, rack } from './kinds/rack.js';
import { closest } from './nearest.js';
import { isMapping } from './plainData.js';
import { withShipped } from './profiles/shipped.js';

/** Every kind of file. */
const kinds = { planetary, pair, rack, gear };

/**
 * The parameter file with every default filled in. Lengths in mm, angles in degrees.
 * `resolveSpec` makes one; every later stage only reads it. What is asked for follows from `kind`.
 */
export type Spec = PlanetarySpec | PairSpec | RackSpec | GearSpec;

/** What is made. */
export type Kind = Spec['kind'];

/** The parameter file of one kind. */
export type SpecOf<K extends Kind> = Extract<Spec, { kind: K }>;

/** The kinds of file that are no planetary set. */
export type TrainSpec = PairSpec | RackSpec | GearSpec;

/** The file of one kind whose every value is in its own range; rules between values are still to be checked. */
export type FileOf<K extends Kind> = { [Each in K]: Parameters<(typeof kinds)[Each]['complete']>[0] }[K];

/** A file of any kind, as `FileOf`. */
export type FileSpec = FileOf<Kind>;

/** The parameter file. Lengths in mm, angles in degrees; fixed defaults are filled in, derived ones are not. */
export const fileSchema = z
  .discriminatedUnion('kind', [planetary.schema, pair.schema, rack.schema, gear.schema])
  .meta({
    title: 'Parameter file of cogweave',
    description: 'Lengths in mm, angles in degrees. What a file may hold follows from its kind',
  });

/** What the kind of a file declares: the one place where it is asked. */
export function declared({ kind }: { kind: Kind }): FileKind<Spec, FileSpec> {
  return kinds[kind];
}

/** The gears of a file, in the order of their keys. */
export function gearsOf(spec: Spec): FileGear[] {
  return declared(spec).gears(spec);
}

/** The gaps of a file that are measured on its meshes; none of one gear by itself. */
export function gapsOf(spec: Spec): MeasuredGap[] {
  return declared(spec).gaps(spec);
}

/** The toothed bar of a file, lengths in mm; undefined where it has none. */
export function barOf(spec: Spec): RackSpec['bar'] | undefined {
  return declared(spec).bar?.(spec);
}

/**
 * The kind that a file is of, or is meant to be: the one given, else the one whose key it has, else the one whose
 * name comes nearest, else `planetary`. A file with a wrong kind is judged by the keys of the one meant.
 */
export function kindMeant(data: unknown): Kind {
  if (!isMapping(data)) return 'planetary';
  const names = Object.keys(kinds) as Kind[];
  const { kind } = data;
  if (typeof kind === 'string' && Object.hasOwn(kinds, kind)) return kind as Kind;
  const byKey = names.find((name) => Object.hasOwn(data, kinds[name].key));
  return byKey ?? (typeof kind === 'string' ? (closest(kind, names) as Kind) : 'planetary');
}

/**
 * What the schema of a file's kind makes of plain data, shipped profiles filled in by name.
 * @returns the file where every value is in range, else what is wrong
 */
export function parseFile(data: unknown): { file?: FileSpec; issues: readonly z.core.$ZodIssue[] } {
  const parsed = kinds[kindMeant(data)].schema.safeParse(withShipped(data));
  // A word that is no name of a shipped profile has been refused, any other is a mapping by now.
  return { file: parsed.data as FileSpec | undefined, issues: parsed.error?.issues ?? [] };
}
