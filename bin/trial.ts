import { advise } from '../lib/fit/trials/advise.js';
import { type Conditions, showConditions } from '../lib/fit/trials/conditions.js';
import { entryProblems } from '../lib/fit/trials/entryProblems.js';
import { trialSchema } from '../lib/fit/trials/trialSchema.js';
import { closest } from '../lib/spec/nearest.js';
import { Refusal, refuse } from '../lib/spec/refusal.js';
import { writeNew } from '../lib/write/planWrite.js';
import { adviceText } from '../lib/write/trials/adviceText.js';
import { addToLogFile, readLogFile, textAt } from '../lib/write/trials/logFile.js';
import { profileText } from '../lib/write/trials/profileText.js';
import { complain, MADE, print, STOPPED } from './output.js';
import { trialOf } from './trialEntry.js';
import { type Arguments, checkUsage } from './usage.js';

const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;

const conditionFlags = {
  printer: text('name of the printer'),
  filament: text('name of the filament; PLA, PETG, ABS and ASA reach the profile'),
  dryness: text('dry, damp, unknown, or for how many hours the filament was dried: 6'),
};
const jsonFlag = { json: { type: 'boolean', describe: 'print one JSON document and nothing else' } } as const;

const addFlags = {
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

const adviseFlags = {
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

const actions = ['add', 'advise'];

/** Flags as they were typed. */
export interface TrialArguments extends Arguments {
  write?: string;
  force?: boolean;
  json?: boolean;
}

/**
 * Adds a trial to a log, or says what the log tells.
 * @returns exit status: 1 where a profile was to be written and too little is known
 * @throws Refusal for flags that are wrong, a damaged log, a profile that is there
 */
export async function trial(argv: TrialArguments): Promise<number> {
  const [, log, action] = argv._.map(String);
  if (!log) refuse('log', log, 'is required: cogweave trial LOG add, or trial LOG advise');
  if (action === undefined || !actions.includes(action))
    refuse('action', action, `must be one of ${actions.join(', ')}: cogweave trial ${log} add`, [
      action === undefined ? 'add' : closest(action, actions),
    ]);
  const flags = Object.keys(action === 'add' ? addFlags : adviseFlags);
  // Readings alone may be given more than once.
  const { reading, ...others } = argv;
  checkUsage(flags.includes('reading') && reading !== '' ? others : argv, flags, 3);
  return action === 'add' ? add(log, argv) : adviseFrom(log, argv);
}

async function add(log: string, argv: TrialArguments): Promise<number> {
  const added = await trialOf(argv, today());
  const trials = await addToLogFile(log, added);
  if (argv.json) print(JSON.stringify({ log, trials, added }));
  else print(`added to ${log}, trial ${trials}: ${JSON.stringify(added)}`);
  return MADE;
}

async function adviseFrom(log: string, argv: TrialArguments): Promise<number> {
  if (argv.force && argv.write === undefined) refuse('force', true, 'is only for --write');
  const trials = await readLogFile(log);
  const advice = advise(trials, wantedOf(argv));
  let written: string | null = null;
  if (argv.write !== undefined) {
    if (advice.length > 1)
      refuse(
        'write',
        argv.write,
        'is for one printer, filament and dryness: name them by their flags',
        advice.map(({ conditions }) => showConditions(conditions)),
      );
    const [only] = advice;
    if (Object.keys(only.profile).length) {
      const before = argv.force ? await textAt('write', argv.write) : undefined;
      const contents = profileText(only, before, /\.json$/i.test(argv.write));
      written = await writeNew('write', argv.write, contents, argv.force ?? false);
    } else
      complain(
        `nothing written: too little is known for a profile (${only.lacks ?? 'the gap is below what a profile may hold'})`,
      );
  }
  if (argv.json) print(JSON.stringify({ log, trials: trials.length, advice, written }));
  else print([adviceText(advice), ...(written ? [`wrote ${written}`] : [])].join('\n\n'));
  return argv.write !== undefined && written === null ? STOPPED : MADE;
}

function wantedOf({ printer, filament, dryness }: TrialArguments): Partial<Conditions> {
  const given = Object.fromEntries(
    Object.entries({ printer, filament, dryness }).filter(([, value]) => value !== undefined),
  );
  const { dryness: wanted, ...labels } = given;
  if (wanted !== undefined && !['dry', 'damp', 'unknown'].includes(String(wanted)))
    refuse('dryness', wanted, 'must be one of dry, damp, unknown', [
      closest(String(wanted), ['dry', 'damp', 'unknown']),
    ]);
  const issues = trialSchema.safeParse({ ...labels, gap: 1, outcome: 'free' }).error?.issues ?? [];
  const [first, ...rest] = entryProblems(issues, labels).map(({ path: _, ...problem }) => problem);
  if (first) throw new Refusal([first, ...rest]);
  return given as Partial<Conditions>;
}

/** Today where the command is run. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
