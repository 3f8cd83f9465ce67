#!/usr/bin/env node
import yargs from 'yargs';
import { proveSet } from '../lib/proof/proveSet.js';
import { specJsonSchema } from '../lib/spec/jsonSchema.js';
import { refuse } from '../lib/spec/refusal.js';
import { withTolerance } from '../lib/spec/withTolerance.js';
import { version } from '../lib/version.js';
import { blockingChecks } from '../lib/write/blocking.js';
import { readFormats } from '../lib/write/formats.js';
import { makeSet } from '../lib/write/makeSet.js';
import { summaryText } from '../lib/write/summary.js';
import { type BatchArguments, batch, batchOwnFlags } from './batch.js';
import { paintFor } from './colours.js';
import { type CouponArguments, coupon, couponFlags } from './coupon.js';
import { examples } from './examples.js';
import { fail, MADE, note, print, printMade, stopSignal, streamFault, verdict } from './output.js';
import { pictureOf } from './picture.js';
import { type PlanArguments, plan, planEpilogue, planFlags } from './plan.js';
import { readSpecFile } from './specFile.js';
import { type TrialArguments, trial, trialEpilogue, trialFlagGroups, trialFlags } from './trial.js';
import { trouble, troubleEpilogue, troubleFlags } from './trouble.js';
import { type Arguments, checkUsage, fileOf, unknownCommand, usageRefusal } from './usage.js';

const commands = ['make', 'inspect', 'batch', 'plan', 'coupon', 'trial', 'trouble', 'schema', 'completion'];

const file = { type: 'string', describe: 'parameter file, YAML or JSON' } as const;
const inspectFlags = {
  profile: {
    type: 'string',
    requiresArg: true,
    describe: 'file with printer and filament, for what FILE itself does not say of them',
  },
  tolerance: {
    type: 'string',
    requiresArg: true,
    describe: 'largest distance of the mesh from the exact surface, mm; in place of the file’s',
  },
  strict: { type: 'boolean', describe: 'let checks that should hold stop the job too' },
  json: { type: 'boolean', describe: 'print one JSON document and nothing else' },
} as const;
const makeFlags = {
  out: { type: 'string', requiresArg: true, describe: 'folder for the files (required)' },
  format: {
    type: 'string',
    requiresArg: true,
    describe: 'formats of the parts [stl,3mf]; drawing and sheets are always written',
  },
  picture: { type: 'boolean', describe: 'write NAME.png too: a shaded picture of the whole set' },
  'picture-size': {
    type: 'string',
    requiresArg: true,
    describe: 'write it with so many pixels, width x height [1200x900]',
  },
  force: { type: 'boolean', describe: 'write even though checks fail' },
  ...inspectFlags,
} as const;

const { force: _, ...sharedFlags } = makeFlags;
const { tolerance: __, ...couponShared } = makeFlags;
const allCouponFlags = { ...couponFlags, ...couponShared } as const;
const batchFlags = { ...batchOwnFlags, ...sharedFlags } as const;

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
        status = await make(argv);
      },
    )
    .command(
      'inspect [FILE]',
      'build and prove a set, and print its sheet',
      (y) => y.positional('FILE', file).options(inspectFlags).example(examples.inspect),
      (argv: InspectArguments) => {
        checkUsage(argv, Object.keys(inspectFlags), 2);
        status = inspect(argv);
      },
    )
    .command(
      'batch [FILE]',
      'make every variant that a file lists, on several cores; those made before are kept',
      (y) => y.positional('FILE', file).options(batchFlags).example(examples.batch),
      async (argv: BatchArguments) => {
        checkUsage(argv, Object.keys(batchFlags), 2);
        status = await batch(argv);
      },
    )
    .command(
      'plan',
      'search for every set within limits and rank them',
      (y) => y.options(planFlags).example(examples.plan).epilogue(planEpilogue),
      async (argv: PlanArguments) => {
        checkUsage(argv, Object.keys(planFlags), 1);
        status = await plan(argv);
      },
    )
    .command(
      'coupon [FILE]',
      'make small gears at stepped gaps, to find the gap that a printer keeps open',
      (y) => y.positional('FILE', file).options(allCouponFlags).example(examples.coupon),
      async (argv: CouponArguments) => {
        checkUsage(argv, Object.keys(allCouponFlags), 2);
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
        status = await trial(argv);
      },
    )
    .command(
      'trouble',
      'likely causes of what went wrong with a print, and which number to change',
      (y) => y.usage('$0 trouble [SYMPTOM] [--json]').options(troubleFlags).epilogue(troubleEpilogue),
      (argv: Arguments) => {
        checkUsage(argv, Object.keys(troubleFlags), 2);
        status = trouble(argv);
      },
    )
    .command(
      'schema',
      'print the JSON Schema of the parameter file',
      (y) => y.example(examples.schema),
      (argv: Arguments) => {
        checkUsage(argv, [], 1);
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

interface InspectArguments extends Arguments {
  profile?: string;
  tolerance?: string;
  strict?: boolean;
  json?: boolean;
}

interface MakeArguments extends InspectArguments {
  out?: string;
  format?: string;
  force?: boolean;
  picture?: boolean;
  'picture-size'?: string;
}

async function make(argv: MakeArguments): Promise<number> {
  const formats = readFormats(argv.format);
  if (argv.out === undefined) refuse('out', undefined, 'is required: the folder for the files');
  const picture = pictureOf(argv);
  const spec = specOf(argv);
  note(`building and proving ${spec.name} …`);
  const { files, sheet, blocking } = await makeSet(spec, {
    folder: argv.out,
    formats,
    picture,
    force: argv.force ?? false,
    strict: argv.strict ?? false,
    signal: stopSignal,
  });
  if (argv.json) print(JSON.stringify({ files, sheet }));
  else printMade(summaryText(sheet, paintFor(process.stdout)), files);
  return verdict(blocking, files.length > 0);
}

function inspect(argv: InspectArguments): number {
  const spec = specOf(argv);
  note(`building and proving ${spec.name} …`);
  const { sheet } = proveSet(spec);
  print(argv.json ? JSON.stringify(sheet) : summaryText(sheet, paintFor(process.stdout)));
  return verdict(blockingChecks(sheet.checks, argv.strict ?? false), false);
}

function specOf(argv: InspectArguments) {
  const spec = readSpecFile(fileOf(argv), argv.profile);
  return argv.tolerance === undefined ? spec : withTolerance(spec, argv.tolerance);
}

process.stdout.on('error', (error: Error) => process.exit(streamFault(error)));
// Nobody may be left to read messages; the work is worth finishing all the same.
process.stderr.on('error', () => {});

run(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error) => {
    process.exitCode = fail(error);
  },
);
