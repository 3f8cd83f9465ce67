import * as z from 'zod';
import { perWallOverPins } from '../../fit/trials/perWallOverPins.js';
import type { ReadingPhrase } from '../../fit/trials/readingPhrase.js';
import { type Feature, features, perWallOf, type Reading } from '../../fit/trials/trialSchema.js';
import { refuse } from '../../refusal.js';

const size = z.object({
  part: z.string(),
  feature: z.string(),
  drawn: z.number(),
});
const gear = z.object({
  part: z.string(),
  teeth: z.number(),
  baseDiameter: z.number(),
  tipDiameter: z.number(),
  rootDiameter: z.number(),
  helixAngle: z.number(),
  baseTangentLength: z.object({ teethSpanned: z.number().nullable() }),
  overPins: z.object({ pin: z.number().nullable() }),
});
const sheetSchema = z.object({
  resolved: z.object({
    pressureAngle: z.number(),
    fit: z.object({ gap: z.number() }).optional(),
    printer: z.object({ layer: z.number().optional() }).optional(),
    filament: z.object({ material: z.string().optional() }).optional(),
  }),
  gears: z.array(gear),
  printing: z.object({ growth: z.number(), sizes: z.array(size) }),
});

/** What a trial takes from the sheet of the set that was printed. */
export type TrialSheet = z.output<typeof sheetSchema>;

/**
 * The part of a NAME.sheet.json that trials are about.
 * @throws Refusal for the parameter `sheet`
 */
export function readTrialSheet(text: string, path: string): TrialSheet {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    refuse('not-yaml', 'sheet', path, 'is not JSON; it must be the NAME.sheet.json that make writes');
  }
  const parsed = sheetSchema.safeParse(data);
  if (!parsed.success) {
    const missing = parsed.error.issues[0].path.join('.') || 'everything';
    refuse('wrong-type', 'sheet', path, `is no sheet that make writes: ${missing} is not as it should be`);
  }
  return parsed.data;
}

/** What the sheet says of how the set was drawn: gap, growth, layer and material. */
export function sheetDefaults({ resolved, printing }: TrialSheet) {
  return {
    gap: resolved.fit?.gap,
    growth: printing.growth || undefined,
    layer: resolved.printer?.layer,
    filament: resolved.filament?.material,
  };
}

/**
 * A reading with what the sheet knows of the size: drawn length, teeth spanned, and how it follows the walls.
 * @throws Refusal where neither phrase nor sheet says what was drawn
 */
export function readingOf(phrase: ReadingPhrase, sheet: TrialSheet | undefined): Reading {
  if (phrase.drawn !== undefined) return completed({ ...phrase, drawn: phrase.drawn });
  const rule = 'does not say what was drawn: give --sheet, or the size before the =';
  if (!sheet)
    refuse('needs-another', 'reading', spoken(phrase), rule, [`${spoken(phrase)} 20 = ${phrase.read}`]);
  const { feature } = phrase;
  const sizes = sheet.printing.sizes.filter(({ feature: f }) => (features as readonly string[]).includes(f));
  const part = phrase.part?.replace(/^planets$/, 'planet');
  const found = sizes.filter((each) => each.feature === feature && (!part || each.part === part));
  if (found.length !== 1) {
    const near = (each: (typeof sizes)[number]) =>
      Number(each.feature === feature) * 2 + Number(each.part === part);
    const offers = found.length ? found : sizes.toSorted((a, b) => near(b) - near(a));
    const nearest = offers.map((each) => `${each.part} ${each.feature}`).slice(0, 8);
    const several = 'is in the sheet for several parts: say which';
    if (found.length) refuse('ambiguous', 'reading', spoken(phrase), several, nearest);
    const none = 'is no size of the sheet; give what was drawn before the =';
    refuse('not-one-of', 'reading', spoken(phrase), none, nearest);
  }
  const record = sheet.gears.find((each) => each.part === found[0].part);
  const drawn = Number(found[0].drawn.toFixed(4));
  const teeth = feature === 'base tangent length' ? record?.baseTangentLength.teethSpanned : undefined;
  const perWall = record && perWallFrom(sheet, record, feature, drawn);
  return completed({
    ...phrase,
    part: found[0].part,
    drawn,
    ...(teeth ? { teeth } : {}),
    ...(perWall === undefined || perWall === perWallOf(feature) ? {} : { perWall }),
  });
}

/** Refuses a size of which it is not known how it follows the walls. */
function completed(reading: Reading): Reading {
  const { feature, perWall } = reading;
  const rule =
    'follows the walls by an amount that is not known: give --sheet, or that amount as "per wall N" at the end';
  const near = feature === 'over pins' ? ['per wall 5.8'] : ['per wall 2', 'per wall -2'];
  if (perWall === undefined && perWallOf(feature) === undefined)
    refuse('needs-another', 'reading', spoken(reading), rule, near);
  return reading;
}

function perWallFrom(
  { resolved }: TrialSheet,
  record: z.output<typeof gear>,
  feature: Feature,
  drawn: number,
) {
  const internal = record.tipDiameter < record.rootDiameter;
  if (feature === 'bore' || feature === 'outer diameter') return perWallOf(feature);
  if (feature !== 'over pins') return internal ? -2 : 2;
  const { teeth, baseDiameter, helixAngle, overPins } = record;
  const { pressureAngle } = resolved;
  if (overPins.pin === null) return undefined;
  const pinned = { teeth, internal, baseDiameter, pressureAngle, helixAngle, pin: overPins.pin, size: drawn };
  return Number(perWallOverPins(pinned).toFixed(3));
}

function spoken({ part, feature }: Pick<Reading, 'part' | 'feature'>): string {
  return [part, feature].filter(Boolean).join(' ');
}
