import yargs from 'yargs';
import { version } from '../lib/version.js';
import type { BatchArguments } from './batch.js';
import type { CouponArguments } from './coupon.js';
import { examples } from './examples.js';
import { batchFlags } from './flags/batch.js';
import { couponFlags } from './flags/coupon.js';
import { inspectFlags, makeFlags } from './flags/make.js';
import { planEpilogue, planFlags } from './flags/plan.js';
import { trialEpilogue, trialFlagGroups, trialFlags } from './flags/trial.js';
import { troubleEpilogue, troubleFlags } from './flags/trouble.js';
import type { InspectArguments } from './inspect.js';
import type { MakeArguments } from './make.js';
import { fail, MADE, print, streamFault } from './output.js';
import type { PlanArguments } from './plan.js';
import type { TrialArguments } from './trial.js';
import { type Arguments, checkUsage, unknownCommand, usageRefusal } from './usage.js';

const commands = ['make', 'inspect', 'batch', 'plan', 'coupon', 'trial', 'trouble', 'schema', 'completion'];

const file = { type: 'string', describe: 'parameter file, YAML or JSON' } as const;

/** Each command is loaded when it is asked for: the whole takes longer to load than some of them take to run. */
async function run(words: string[]): Promise<number> {
  let status = MADE;
  const parser = yargs(words);
  await parser
    .scriptName('cogweave')
    .usage('$0 <command>\n\nPrint-in-place planetary gear sets from a parameter file.')
    .parserConfiguration({
      'camel-case-expansion': false,
      'dot-notation': false,
      'parse-positional-numbers': false,
    })
    .detectLocale(false)
    .exitProcess(false)
    .version(version)
    .fail((message, error) => {
      throw error && error.name !== 'YError' ? error : usageRefusal(message);
    })
    .command(
      'make [FILE]',
      'build, prove and write a set',
      (y) => y.positional('FILE', file).options(makeFlags).example(examples.make),
      async (argv: MakeArguments) => {
        checkUsage(argv, Object.keys(makeFlags), 2);
        const { make } = await import('./make.js');
        status = await make(argv);
      },
    )
    .command(
      'inspect [FILE]',
      'build and prove a set, and print its sheet',
      (y) => y.positional('FILE', file).options(inspectFlags).example(examples.inspect),
      async (argv: InspectArguments) => {
        checkUsage(argv, Object.keys(inspectFlags), 2);
        const { inspect } = await import('./inspect.js');
        status = inspect(argv);
      },
    )
    .command(
      'batch [FILE]',
      'make every variant that a file lists, on several cores; those made before are kept',
      (y) => y.positional('FILE', file).options(batchFlags).example(examples.batch),
      async (argv: BatchArguments) => {
        checkUsage(argv, Object.keys(batchFlags), 2);
        const { batch } = await import('./batch.js');
        status = await batch(argv);
      },
    )
    .command(
      'plan',
      'search for every set within limits and rank them',
      (y) => y.options(planFlags).example(examples.plan).epilogue(planEpilogue),
      async (argv: PlanArguments) => {
        checkUsage(argv, Object.keys(planFlags), 1);
        const { plan } = await import('./plan.js');
        status = await plan(argv);
      },
    )
    .command(
      'coupon [FILE]',
      'make small gears at stepped gaps, to find the gap that a printer keeps open',
      (y) => y.positional('FILE', file).options(couponFlags).example(examples.coupon),
      async (argv: CouponArguments) => {
        checkUsage(argv, Object.keys(couponFlags), 2);
        const { coupon } = await import('./coupon.js');
        status = await coupon(argv);
      },
    )
    .command(
      'trial',
      'keep a log of trial prints, and say what gap it advises',
      (y) => {
        const help = y.usage('$0 trial LOG add …\n$0 trial LOG advise …').options(trialFlags);
        for (const [head, flags] of Object.entries(trialFlagGroups)) help.group(flags, head);
        return help.epilogue(trialEpilogue);
      },
      async (argv: TrialArguments) => {
        const { trial } = await import('./trial.js');
        status = await trial(argv);
      },
    )
    .command(
      'trouble',
      'likely causes of what went wrong with a print, and which number to change',
      (y) => y.usage('$0 trouble [SYMPTOM] [--json]').options(troubleFlags).epilogue(troubleEpilogue),
      async (argv: Arguments) => {
        checkUsage(argv, Object.keys(troubleFlags), 2);
        const { trouble } = await import('./trouble.js');
        status = trouble(argv);
      },
    )
    .command(
      'schema',
      'print the JSON Schema of the parameter file',
      (y) => y.example(examples.schema),
      async (argv: Arguments) => {
        checkUsage(argv, [], 1);
        const { specJsonSchema } = await import('../lib/spec/jsonSchema.js');
        print(JSON.stringify(specJsonSchema(), null, 2));
      },
    )
    .command(
      'completion',
      'print a script that completes commands and flags in your shell',
      (y) => y.example(examples.completion),
      (argv: Arguments) => {
        checkUsage(argv, [], 1);
        parser.showCompletionScript();
      },
    )
    .command(
      '$0',
      false,
      (y) => y,
      (argv: Arguments) => {
        throw unknownCommand(argv._[0], commands);
      },
    )
    .example(examples[''])
    .parseAsync();
  return status;
}

/** Runs the command that these words are, and sets the exit status of the process. */
export async function start(words: string[]): Promise<void> {
  process.stdout.on('error', (error: Error) => process.exit(streamFault(error)));
  // Nobody may be left to read messages; the work is worth finishing all the same.
  process.stderr.on('error', () => {});
  try {
    process.exitCode = await run(words);
  } catch (error) {
    process.exitCode = fail(error, words.includes('--json'));
  }
}
