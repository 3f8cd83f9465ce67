import * as z from 'zod';
import { type Range, ranges } from '../../spec/ranges.js';

/** How a print came out, from the smallest gap to the largest: the order of the model. */
export const outcomes = ['fused', 'tight', 'free', 'loose'] as const;

/** How a print came out. fused: parts do not come apart. tight: turns only with force. free: turns by itself. loose: rattles or skips. */
export type Outcome = (typeof outcomes)[number];

/** What calipers are put to. */
export const features = [
  'base tangent length',
  'over pins',
  'bar',
  'hole',
  'tip diameter',
  'root diameter',
  'bore',
  'outer diameter',
] as const;

/** What calipers are put to. */
export type Feature = (typeof features)[number];

/**
 * Ranges of what a log holds: lengths in mm, temperature in °C, dried in hours. Gap, layer and growth are a parameter
 * file's; the others are wide enough for any print.
 */
export const trialRanges = {
  gap: ranges.gap,
  layer: ranges.layer,
  growth: ranges.growth,
  temperature: [100, 500],
  dried: [0, 1000],
  /** Teeth between the anvils. */
  teeth: [1, ranges.teeth[1]],
  drawn: [0.1, 3000],
  read: [0.1, 3000],
  perWall: [-100, 100],
} as const satisfies Record<string, Range>;

/** Most letters of a name and of notes, most readings of a trial and trials of a log. */
export const most = { label: 100, notes: 2000, readings: 100, trials: 5000 } as const;

const number = ([least, largest]: Range) => z.number().min(least).max(largest);

/** A name that somebody gave, on one line; in a log it may look like a number. */
const label = z.union([
  z
    .string()
    .trim()
    .min(1)
    .max(most.label)
    .regex(/^[^\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]*$/u),
  z.number().transform(String),
]);

/** One size read on a print, mm. */
const reading = z.strictObject({
  feature: z.enum(features),
  part: label.optional(),
  /** Teeth between the anvils, for a base tangent length. */
  teeth: z.int().min(trialRanges.teeth[0]).max(trialRanges.teeth[1]).optional(),
  drawn: number(trialRanges.drawn),
  read: number(trialRanges.read),
  /** How much the size grows for each mm by which walls stand out; left out where the feature says it. */
  perWall: number(trialRanges.perWall).optional(),
  /** Read on the first layer, where it stands out, and not above it. */
  firstLayer: z.boolean().optional(),
});

/** A day, as 2026-05-30. */
const date = z.string().refine((text) => {
  const day = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
  );
});

/** The entries of a trial by their name, each with its range. Lengths in mm, temperature in °C. */
export const trialEntries = {
  /** `fit.gap` of the print, mm. */
  gap: number(trialRanges.gap).optional(),
  outcome: z.enum(outcomes).optional(),
  printer: label.optional(),
  filament: label.optional(),
  /** dry, damp, unknown, or for how many hours the filament was dried before. */
  dryness: z.union([z.enum(['dry', 'damp', 'unknown']), number(trialRanges.dried)]).optional(),
  /** Of the nozzle, °C. */
  temperature: number(trialRanges.temperature).optional(),
  /** Layer height, mm. */
  layer: number(trialRanges.layer).optional(),
  /** `printer.growth` that the print was drawn with, mm [0]. */
  growth: number(trialRanges.growth).optional(),
  date: date.optional(),
  notes: z.string().max(most.notes).optional(),
  readings: z.array(reading).max(most.readings).optional(),
};

/** One print: at a gap it came out so, or sizes were read on it, or both; and how it was printed. */
export const trialSchema = z.strictObject(trialEntries).superRefine((trial, context) => {
  const { gap, outcome, readings } = trial;
  if (gap !== undefined && outcome === undefined)
    context.addIssue({
      code: 'custom',
      path: ['outcome'],
      message: `is required with a gap: ${outcomes.join(', ')}`,
    });
  if (outcome !== undefined && gap === undefined)
    context.addIssue({ code: 'custom', path: ['gap'], message: 'is required with an outcome: mm' });
  if (gap === undefined && outcome === undefined && !readings?.length)
    context.addIssue({ code: 'custom', path: [], message: 'needs gap and outcome, or readings' });
  for (const [i, one] of (readings ?? []).entries()) {
    const perWall = one.perWall ?? perWallOf(one.feature);
    if (perWall === undefined)
      context.addIssue({
        code: 'custom',
        path: ['readings', i, 'perWall'],
        message: `is required for ${one.feature}: how much the size grows for each mm of growth`,
      });
    else if (Math.abs(one.read - one.drawn) > FARTHEST.growth * Math.abs(perWall) + FARTHEST.part * one.drawn)
      context.addIssue({
        code: 'custom',
        path: ['readings', i, 'read'],
        message: `is too far from the drawn ${one.drawn} mm for any printer: read it again`,
      });
  }
});

/** No print is further off than by this growth, mm, and this part of the size. */
const FARTHEST = { growth: 0.8, part: 0.03 };

/** A trial log: every trial in the order in which it was added. */
export const logSchema = z.strictObject({ trials: z.array(trialSchema).max(most.trials).nullish() });

/** One print. */
export type Trial = z.output<typeof trialSchema>;
/** One size read on a print. */
export type Reading = z.output<typeof reading>;

/**
 * How much a size grows, in mm, for each mm by which walls stand out. Between two walls it is 2; where the
 * feature may lie inside or outside (tip diameter of a sun or a ring) or on slopes (over pins), undefined.
 */
export function perWallOf(feature: Feature): number | undefined {
  switch (feature) {
    case 'base tangent length':
    case 'bar':
    case 'outer diameter':
      return 2;
    case 'hole':
    case 'bore':
      return -2;
    default:
      return undefined;
  }
}
