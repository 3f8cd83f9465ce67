import * as z from 'zod';

/** What is said of a parameter beside its type: it reaches the JSON Schema word for word. */
export interface FieldNotes {
  description: string;
  /** `mm`, `deg`, `N`, … or left out for a pure number or a word. */
  unit?: string;
  /** Where default and limits come from: a standard, or `common practice`. */
  source: string;
  /** How the default is worked out when it is not one fixed value. */
  defaultRule?: string;
  /** Values that work, the first one offered where a required value is missing. */
  examples?: unknown[];
}

/** Notes of a default that follows from other values: how, and a value that works. */
export const follows = (defaultRule: string, example: unknown) => ({ defaultRule, examples: [example] });

/** A number from `least` to `most`, both included. */
export function number(least: number, most: number, notes: FieldNotes) {
  return z
    .number()
    .min(least)
    .max(most)
    .meta({ ...notes });
}

/** A whole number from `least` to `most`, both included. */
export function whole(least: number, most: number, notes: FieldNotes) {
  return z
    .int()
    .min(least)
    .max(most)
    .meta({ ...notes });
}

/** One of a few words. */
export function word<const T extends readonly [string, ...string[]]>(words: T, notes: FieldNotes) {
  return z.enum(words).meta({ ...notes });
}

/** A length in mm, as `number`. */
export const mm = inUnit('mm');
/** An angle in degrees, as `number`. */
export const degrees = inUnit('deg');

function inUnit(unit: string) {
  return (least: number, most: number, { description, ...notes }: Omit<FieldNotes, 'unit'>) =>
    number(least, most, { description, unit, ...notes });
}
