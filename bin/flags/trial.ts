import { text } from './text.js';

const conditionFlags = {
  printer: text('name of the printer'),
  filament: text('name of the filament; PLA, PETG, ABS and ASA reach the profile'),
  dryness: text('dry, damp, unknown, or for how many hours the filament was dried: 6'),
};
const jsonFlag = { json: { type: 'boolean', describe: 'print one JSON document and nothing else' } } as const;

/** Flags of `trial LOG add`. */
export const addFlags = {
  gap: text('fit.gap of the print, mm [the sheet’s]'),
  outcome: text('fused, tight (turns with force), free, or loose (rattles, skips)'),
  ...conditionFlags,
  temperature: text('of the nozzle, °C'),
  layer: text('layer height, mm [the sheet’s]'),
  growth: text('printer.growth that it was drawn with, mm [the sheet’s, else 0]'),
  date: text('day of the print: 2026-05-30 [today]'),
  notes: text('whatever else is worth knowing'),
  sheet: text('NAME.sheet.json of the printed set: fills gap, layer, growth, filament and drawn sizes'),
  reading: text('what calipers read, mm; may be given several times, see below'),
  ...jsonFlag,
} as const;

/** Flags of `trial LOG advise`. */
export const adviseFlags = {
  ...conditionFlags,
  write: text('write what is advised as a profile for make --profile'),
  force: { type: 'boolean', describe: 'change a profile that is there already; the rest of it stays' },
  ...jsonFlag,
} as const;

/** The flags of both actions of `trial`. */
export const trialFlags = { ...addFlags, ...adviseFlags } as const;

/** The flags of each action, for the help. */
export const trialFlagGroups = {
  'trial LOG add:': Object.keys(addFlags).filter((flag) => !(flag in adviseFlags)),
  'trial LOG advise:': Object.keys(adviseFlags).filter((flag) => !(flag in addFlags)),
  'both:': Object.keys(addFlags).filter((flag) => flag in adviseFlags),
};

/** What stands below the flags in the help of `trial`. */
export const trialEpilogue = [
  'LOG is YAML (JSON where it ends in .json), made by the first add, and yours to edit.',
  'A reading is [PART] FEATURE [over K teeth] [DRAWN] = READ [per wall N] [on the first layer]; with --sheet the',
  'drawn size is the sheet’s. Features: base tangent, over pins, bar, hole, bore, tip, root and outer diameter.',
  'advise speaks of every printer, filament and dryness of the log, or of those that the flags name.',
  '',
  'Examples:',
  '  cogweave trial log.yaml add --gap 0.25 --outcome free --printer workshop --filament PLA --dryness dry',
  '  cogweave trial log.yaml add --sheet out/spinner.sheet.json --outcome tight --reading "sun base tangent = 11.60"',
  '  cogweave trial log.yaml add --printer workshop --reading "bar 20 = 20.11" --reading "hole 20 = 19.82"',
  '  cogweave trial log.yaml advise --filament PLA --write workshop-pla.yaml',
].join('\n');
