import { type Problem, problemOf, Refusal, refuse, refuseAll } from '../lib/refusal.js';
import { closest } from '../lib/spec/nearest.js';

/** What yargs hands over: every flag by its name, what is left over under `_`. */
export type Arguments = { [flag: string]: unknown; _: (string | number)[] };

/**
 * Refuses what a command does not know: other flags, further words, a flag given twice, a flag without its value.
 * @param known the command's own flags
 * @param words how many words belong to it: the command's name and, for some, a file
 * @throws Refusal with every problem found
 */
export function checkUsage(argv: Arguments, known: readonly string[], words: number): void {
  const problems: Problem[] = [];
  const flags = [...known, 'help', 'version'];
  for (const [flag, value] of Object.entries(argv)) {
    if (flag === '_' || flag === '$0' || flag === 'FILE') continue;
    if (!flags.includes(flag)) {
      const parameter = flag.length === 1 ? `-${flag}` : `--${flag}`;
      const near = closest(flag, flags);
      const nearest = near === undefined ? [] : [`--${near}`];
      problems.push(problemOf('unknown-key', parameter, 'flag', 'is not known to this command', nearest));
    } else if (Array.isArray(value))
      problems.push(problemOf('given-twice', flag, value, 'is given more than once', value.slice(-1)));
    else if (value === '') problems.push(problemOf('missing', flag, value, 'needs a value'));
  }
  for (const word of argv._.slice(argv.FILE === undefined ? words : words - 1))
    problems.push(problemOf('wrong-usage', 'command line', word, 'is one word too many'));
  refuseAll(problems);
}

/**
 * The parameter file that a command is given; behind `--` yargs leaves it among the words.
 * @throws Refusal where there is none
 */
export function fileOf(argv: Arguments): string {
  const file = argv.FILE ?? argv._[1];
  if (file === undefined) refuse('missing', 'file', undefined, 'is required: a parameter file, YAML or JSON');
  return String(file);
}

/** What yargs itself found wrong, as a refusal. */
export function usageRefusal(message: string): Refusal {
  const flag = /^Not enough arguments following: (\w+)/.exec(message)?.[1];
  const problem: Problem = flag
    ? problemOf('missing', flag, undefined, 'needs a value')
    : problemOf('wrong-usage', 'command line', 'usage', message);
  return new Refusal([problem]);
}

/**
 * The refusal of a first word that is no command.
 * @param commands those there are
 */
export function unknownCommand(word: string | number | undefined, commands: readonly string[]): Refusal {
  const list = commands.join(', ');
  const nearest = word === undefined ? [] : [closest(String(word), commands)];
  const rule =
    word === undefined ? `is required: one of ${list} (--help explains them)` : `must be one of ${list}`;
  return new Refusal([
    problemOf(word === undefined ? 'missing' : 'not-one-of', 'command', word, rule, nearest),
  ]);
}
