import { isNode, LineCounter, parseDocument } from 'yaml';
import { type EntryProblem, entryProblems } from '../../fit/trials/entryProblems.js';
import { logSchema, type Trial } from '../../fit/trials/trialSchema.js';
import { type Problem, Refusal } from '../../refusal.js';
import { readData } from '../../spec/readSpec.js';

/** A log of a few thousand trials has as many. */
const MOST_TOKENS = 300_000;

/** Problems that are listed. */
const MOST_PROBLEMS = 10;

/**
 * The trials of a log, YAML or JSON, in their order. A text without any content is a log without trials.
 * @throws Refusal that says the line of each problem
 */
export function readLog(text: string): Trial[] {
  if (isBlank(text)) return [];
  let data: unknown;
  try {
    data = readData(text, MOST_TOKENS);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw refusalOf(error.problems.map((problem) => ({ ...problem, parameter: 'log' })));
  }
  const parsed = logSchema.safeParse(data);
  if (parsed.success) return parsed.data.trials ?? [];
  const lines = lineFinder(text);
  throw refusalOf(
    entryProblems(parsed.error.issues, data)
      .slice(0, MOST_PROBLEMS)
      .map(({ path, parameter, rule, ...problem }) => ({
        ...problem,
        parameter: path.length ? parameter : 'log',
        rule: `line ${lines(path)}: ${path.length ? rule : 'must be a mapping with the key trials'}`,
      })),
  );
}

/** Nothing but white space and comments. */
export function isBlank(text: string): boolean {
  return text
    .replace(/^\ufeff/, '')
    .split(/\r?\n/)
    .every((line) => /^\s*(#.*)?$/.test(line));
}

/** Finds the line of an entry, or, where it is missing, of what it is missing in. */
function lineFinder(text: string): (path: EntryProblem['path']) => number {
  const counter = new LineCounter();
  const document = parseDocument(text.replace(/^\ufeff/, ''), {
    lineCounter: counter,
    logLevel: 'silent',
    uniqueKeys: false,
  });
  return (path) => {
    for (let length = path.length; length > 0; length--) {
      const node = document.getIn(path.slice(0, length), true);
      if (isNode(node) && node.range) return counter.linePos(node.range[0]).line;
    }
    return 1;
  };
}

function refusalOf(problems: readonly Problem[]): Refusal {
  const [first, ...rest] = problems;
  return new Refusal([first, ...rest]);
}
