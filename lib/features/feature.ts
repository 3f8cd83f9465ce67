import * as z from 'zod';
import type { Problem } from '../refusal.js';
import { type FieldNotes, number } from '../spec/fields.js';
import type * as stack from '../stack/stack.js';
import type { HoleShape } from './axisHole.js';
import type { Frame } from './frame.js';
import type { Body } from './room.js';

/**
 * All that there is to say of one feature, in its own file; `index.ts` lists which bodies may carry it, and schema,
 * defaults, rules, drawn sizes, contours and readings all come from that list. Lengths in mm.
 * @typeParam F as the file gives it
 * @typeParam T with its defaults
 */
export interface Feature<F, T = F> {
  /** Made by `asked`; types are inferred from it. */
  schema: z.ZodType;
  /** Fills in what follows from other values [nothing does]. */
  complete?(given: F, sizes: PartSizes): T;
  /** What it is where the file does not give it [it is not there]. @param file what the file gives the part */
  usual?(file: object, sizes: PartSizes): T | undefined;
  /** What it cannot be together with; the first that there is takes its place. */
  not?: readonly string[];
  /**
   * What finds no room, by rounds: where something was found in one, the later ones are not asked. A ring is asked the
   * round 0 while its root circle is still to be found.
   */
  rules?: Readonly<Partial<Record<Round, Rule<T>>>>;
  /** How each of its sizes is drawn so that it comes out as asked. */
  drawn: Readonly<Record<SizesOf<T>, Drawn>>;
  /** As drawn with words filled in. */
  worded?(own: T, words: Words): T;
  /** What calipers can read on it, by what the sheet calls it. */
  reads?: Readonly<Record<string, Reading<T>>>;
  /** A part that comes with it and lies beside the others on the bed, and what can be read on that. */
  loose?: { part: string; reads: Readonly<Record<string, Reading<T>>> };
  /** Width of what it opens, which a wall that grows may close. */
  opens?(own: T): number;
  /** Width of what a fingertip may enter, and what that is called; left out where a screw fills it. */
  entered?: { words: string; width(own: T): number };
  /** How far it stands above the top face [0], and how it is asked for without. */
  stands?(own: T): number;
  flat?: { key: string; value: string };
  /** Whether a hand reaches it from above. */
  reached?: boolean;
  /** Key of what sweeps over the gears beside it, where that is given. */
  sweeps?: string;
  /** A size that its part grows with on the bed, and the least of it. */
  widens?: { key: string; least: number };
  /** The hole about the axis, or an end of it. */
  hole?(own: T): HoleShape;
  /** A pit in the middle of the top face. @param top height of that face */
  pit?(own: T, top: number, context: FeatureContext): stack.Feature;
  /** Holes through a ring or its flange. */
  drilled?(own: T): Drilled;
}

/** Holes evenly spaced on a circle about the axis, the first on +x; its diameter, mm. */
export interface Drilled {
  shape: HoleShape;
  circle: number;
  count: number;
}

/** What follows from the file for the defaults of a part's features, mm. */
export interface PartSizes {
  faceWidth: number;
  layer: number;
  lineWidth: number;
}

/** What stands for `{word}` in a text. */
export type Words = Readonly<Record<string, string>>;

/** What text is made with. */
export interface TextContext {
  /** Path of the part in the file, such as `ring`. */
  part: string;
  /** What `{name}` and the like stand for. */
  words: Words;
  /** Width of a printed line, mm. */
  lineWidth: number;
  /** Least wall beside the letters, mm. */
  wall: number;
  frame: Frame;
}

/** What every feature of a part is made with. Lengths in mm. */
export interface FeatureContext extends TextContext {
  faceWidth: number;
  /** Radius of the root circle as made. */
  rootRadius: number;
  tolerance: number;
}

export type Round = (typeof rounds)[number];

export const rounds = [0, 1, 2, 3, 4] as const;

/** @param all features of the same part */
export type Rule<T> = { ask(own: T, all: object, body: Body): Problem[] }['ask'];

/** A size in mm; undefined where there is nothing to read. @param outer outer diameter of a ring */
export type Reading<T> = { read(own: T, all: object, outer: number): number | undefined }['read'];

/**
 * What walls do to a size: an `opening` has two that close in, what is `standing` two that stand out, a `gap` both of
 * either side; a `length` is between none, and `asked` is no length, or is in another size already.
 */
export type Drawn = 'opening' | 'standing' | 'gap' | 'length' | 'asked';

type SizesOf<T> = { [K in keyof T]-?: NonNullable<T[K]> extends number ? K : never }[keyof T];

/** What a file gives of a feature that it asks for. */
export type Given<S extends z.ZodType> = Exclude<z.output<S>, 'none' | undefined>;

/** A feature that is not there unless asked for. */
export function asked<const T extends z.core.$ZodLooseShape>(
  description: string,
  source: string,
  shape: T,
  example: unknown,
) {
  return z
    .union([z.literal('none'), z.strictObject(shape)])
    .optional()
    .meta({ description, source, defaultRule: 'none', examples: [example] });
}

/** A length from `least` to `most`, mm. */
export function length(
  least: number,
  most: number,
  description: string,
  example: number,
  more: Partial<FieldNotes> = {},
) {
  return number(least, most, {
    description,
    unit: 'mm',
    source: 'range by common practice',
    examples: [example],
    ...more,
  });
}

/** Sums of figures with a few decimals, without the rounding of doubles. */
export function rounded(sum: number): number {
  return Math.round(sum * 1e6) / 1e6;
}
