import { advise } from '../lib/fit/trials/advise.js';
import { type Conditions, showConditions } from '../lib/fit/trials/conditions.js';
import { entryProblems } from '../lib/fit/trials/entryProblems.js';
import { trialSchema } from '../lib/fit/trials/trialSchema.js';
import { refuse, refuseAll } from '../lib/refusal.js';
import { closest } from '../lib/spec/nearest.js';
import { writeNew } from '../lib/write/planWrite.js';
import { textAt } from '../lib/write/readText.js';
import { adviceText } from '../lib/write/trials/adviceText.js';
import { addToLogFile, readLogFile } from '../lib/write/trials/logFile.js';
import { profileText } from '../lib/write/trials/profileText.js';
import { addFlags, adviseFlags } from './flags/trial.js';
import { complain, MADE, print, STOPPED, stopSignal } from './output.js';
import { trialOf } from './trialEntry.js';
import { type Arguments, checkUsage } from './usage.js';

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
  if (!log) refuse('missing', 'log', log, 'is required: cogweave trial LOG add, or trial LOG advise');
  const rule = `must be one of ${actions.join(', ')}: cogweave trial ${log} add`;
  if (action === undefined || !actions.includes(action))
    refuse('not-one-of', 'action', action, rule, [action === undefined ? 'add' : closest(action, actions)]);
  const flags = Object.keys(action === 'add' ? addFlags : adviseFlags);
  // Readings alone may be given more than once.
  const { reading, ...others } = argv;
  checkUsage(flags.includes('reading') && reading !== '' ? others : argv, flags, 3);
  return action === 'add' ? add(log, argv) : adviseFrom(log, argv);
}

async function add(log: string, argv: TrialArguments): Promise<number> {
  const added = await trialOf(argv, today());
  const trials = await addToLogFile(log, added, { signal: stopSignal(), say: complain });
  if (argv.json) print(JSON.stringify({ log, trials, added }));
  else print(`added to ${log}, trial ${trials}: ${JSON.stringify(added)}`);
  return MADE;
}

async function adviseFrom(log: string, argv: TrialArguments): Promise<number> {
  if (argv.force && argv.write === undefined) refuse('needs-another', 'force', true, 'is only for --write');
  const trials = readLogFile(log);
  const advice = advise(trials, wantedOf(argv));
  let written: string | null = null;
  if (argv.write !== undefined) {
    const rule = 'is for one printer, filament and dryness: name them by their flags';
    if (advice.length > 1)
      refuse(
        'ambiguous',
        'write',
        argv.write,
        rule,
        advice.map(({ conditions }) => showConditions(conditions)),
      );
    const [only] = advice;
    if (Object.keys(only.profile).length) {
      const before = argv.force ? textAt('write', argv.write) : undefined;
      const contents = profileText(only, before, /\.json$/i.test(argv.write));
      written = await writeNew('write', argv.write, contents, argv.force ?? false, {
        signal: stopSignal(),
        say: complain,
      });
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
  const rule = 'must be one of dry, damp, unknown';
  if (wanted !== undefined && !['dry', 'damp', 'unknown'].includes(String(wanted)))
    refuse('not-one-of', 'dryness', wanted, rule, [closest(String(wanted), ['dry', 'damp', 'unknown'])]);
  const issues = trialSchema.safeParse({ ...labels, gap: 1, outcome: 'free' }).error?.issues ?? [];
  refuseAll(entryProblems(issues, labels).map(({ path: _, ...problem }) => problem));
  return given as Partial<Conditions>;
}

/** Today where the command is run. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
