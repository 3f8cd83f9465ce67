import { codeOfNumber } from '../problemCode.js';
import { type Problem, problemOf, Refusal, refuseAll } from '../refusal.js';
import { clamp, closest, ROUNDING } from '../spec/nearest.js';
import {
  featureRanges,
  fromTo,
  isWithin,
  LARGEST,
  MOST_GAP_PER_MODULE,
  type Range,
  ranges,
} from '../spec/ranges.js';
import { resolveSpec } from '../spec/resolveSpec.js';
import { valueProblems } from '../spec/valueProblems.js';
import { merits } from './merit.js';
import { modulesBetween, standardModules } from './moduleSeries.js';
import { planParameters } from './planParameters.js';
import { completeWanted, type ResolvedWanted, usualWanted, type WantedSets } from './planWanted.js';

/** Wishes for one value or a span of them, and where a parameter file states the value. */
export const spans = {
  sunTeeth: 'sun.teeth',
  planetTeeth: 'planets.teeth',
  ringTeeth: 'ring.teeth',
  planets: 'planets.count',
} as const;

/** Wishes for one value, and where a parameter file states it: it says what such a value may be. */
export const stated = {
  bed: 'printer.bed.width',
  rim: 'ring.rim',
  gap: 'fit.gap',
  rack: 'rack',
  pressureAngle: 'pressureAngle',
  helixForm: 'helix.form',
  helixAngle: 'helix.angle',
  faceWidth: 'faceWidth',
  nozzle: 'printer.nozzle',
  shifts: 'profileShift',
  spacing: 'planets.spacing',
} as const;

/** Figures of a set that no parameter file states. Lengths in mm, angles in degrees. */
export const figures = {
  /** No file makes a larger set; the least is any that has a size. */
  outerDiameter: [1, LARGEST],
  hole: featureRanges.mountHole,
  /** Degrees of arc; what a file limits is how far an edge drops in, in mm. */
  opening: [0, 360],
  /** From 0 on, unlike `limits.contactRatio`, which marks what is below it: a search may ask nothing. */
  engagement: [0, ranges.contactRatio[1]],
} as const satisfies Record<string, Range>;

/** Rows that are given back; more would be no help to anyone. */
const LIMIT: Range = [1, 100_000];
const ratioKeys = ['value', 'tolerance', 'held'] as const;
const heldMembers = ['ring', 'carrier', 'sun'] as const;
/** Of any train that is ever printed, sign aside. */
const RATIO: Range = [0.001, 1000];

/**
 * Wishes checked and completed.
 * @throws Refusal with every problem found: unknown keys, values that a parameter file does not allow, alone or
 * together, spans that hold nothing
 */
export function readWanted(wanted: WantedSets): ResolvedWanted {
  const known = [...Object.keys({ ...spans, ...stated, ...figures }), 'module', 'ratio', 'by', 'limit'];
  const problems: Problem[] = unknownKeys(wanted, known, '');
  for (const [key, path] of Object.entries(spans))
    problems.push(...spanProblems(key, path, wanted[key as keyof typeof spans]));
  for (const [key, path] of Object.entries(stated))
    problems.push(...statedProblems(path, wanted[key as keyof typeof stated], key));
  for (const [key, range] of Object.entries(figures))
    problems.push(...figureProblems(key, wanted[key as keyof typeof figures], range));
  problems.push(
    ...figureProblems('limit', wanted.limit, LIMIT, true),
    ...moduleProblems(wanted.module),
    ...ratioProblems(wanted.ratio),
    ...byProblems(wanted),
  );
  refuseAll(problems);
  const all = completeWanted(wanted, modulesOf(wanted.module));
  refuseAll(togetherProblems(wanted, all));
  return completeWanted(
    wanted,
    all.module.filter((module) => all.gap <= MOST_GAP_PER_MODULE * module + ROUNDING),
  );
}

/** Any counts: of a file's rules, only those between what all rows share are asked. */
const ANY_COUNTS = {
  sunTeeth: 15,
  planetTeeth: 15,
  ringTeeth: 45,
  planets: 3,
  spacing: 'equal',
  profileShifts: { sun: 0, planet: 0, ring: 0 },
} as const;

/** What a parameter file with the wishes says of them together, with the module that allows the most. */
function togetherProblems({ rack }: WantedSets, all: ResolvedWanted): Problem[] {
  const file = planParameters({ ...ANY_COUNTS, module: all.module[all.module.length - 1] }, all);
  try {
    resolveSpec({ ...file, rack: rack ?? all.rack });
    return [];
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return error.problems.flatMap((problem) => {
      const found = Object.entries(stated).find(
        ([, path]) => problem.parameter === path || problem.parameter.startsWith(`${path}.`),
      );
      if (!found) return [];
      const [key, path] = found;
      return [{ ...problem, parameter: key + problem.parameter.slice(path.length) }];
    });
  }
}

function byProblems({ by, ratio }: WantedSets): Problem[] {
  if (by === undefined) return [];
  if (!Object.hasOwn(merits, String(by))) return [oneOf('by', by, Object.keys(merits))];
  if (by !== 'ratio' || ratio !== undefined) return [];
  return [problemOf('needs-another', 'by', by, 'needs a ratio to be near to', ['overall'])];
}

function modulesOf(module: WantedSets['module'] = usualWanted.module): readonly number[] {
  if (typeof module === 'number') return [module];
  return 'least' in module ? modulesBetween(module.least, module.most) : module;
}

function moduleProblems(module: WantedSets['module']): Problem[] {
  if (Array.isArray(module))
    return module.length
      ? module.flatMap((one, i) => statedProblems('module', one ?? Number.NaN, `module[${i}]`))
      : [problemOf('wrong-count', 'module', module, 'must name at least one module', [[1.5]])];
  const found = spanProblems('module', 'module', module as WantedSets['sunTeeth']);
  if (found.length || modulesOf(module).length) return found;
  const { least } = module as { least: number };
  const nearest = [...standardModules].sort((a, b) => Math.abs(a - least) - Math.abs(b - least)).slice(0, 2);
  return [problemOf('not-one-of', 'module', module, 'holds no standard module', nearest)];
}

function ratioProblems(ratio: WantedSets['ratio']): Problem[] {
  if (ratio === undefined) return [];
  if (typeof ratio !== 'object' || ratio === null)
    return [problemOf('wrong-type', 'ratio', ratio, 'must be { value, tolerance, held }', [{ value: 4 }])];
  const problems = unknownKeys(ratio, ratioKeys, 'ratio.');
  const size = Math.abs(ratio.value);
  problems.push(...figureProblems('ratio.value', Number.isNaN(size) ? ratio.value : size, RATIO));
  if (ratio.value === undefined)
    problems.push(problemOf('missing', 'ratio.value', undefined, 'is missing', [4]));
  problems.push(...figureProblems('ratio.tolerance', ratio.tolerance, [0, RATIO[1]]));
  if (ratio.held !== undefined && !heldMembers.includes(ratio.held))
    problems.push(oneOf('ratio.held', ratio.held, heldMembers));
  return problems;
}

function spanProblems(parameter: string, path: string, given: WantedSets['sunTeeth']): Problem[] {
  if (typeof given !== 'object' || given === null) return statedProblems(path, given, parameter);
  const problems = unknownKeys(given, ['least', 'most'], `${parameter}.`);
  for (const end of ['least', 'most'] as const)
    problems.push(...statedProblems(path, given[end] ?? Number.NaN, `${parameter}.${end}`));
  const rule = 'least is more than most';
  if (!problems.length && given.least > given.most)
    problems.push(problemOf('reversed', parameter, given, rule, [{ least: given.most, most: given.least }]));
  return problems;
}

/** What a parameter file says of a value; nothing of one that is not given. */
function statedProblems(path: string, value: unknown, parameter: string): Problem[] {
  return value === undefined ? [] : valueProblems(path, value, parameter);
}

function figureProblems(
  parameter: string,
  value: number | undefined,
  range: Range,
  whole = false,
): Problem[] {
  if (value === undefined || (isWithin(value, range) && (!whole || Number.isInteger(value)))) return [];
  const rule = `must be a ${whole ? 'whole ' : ''}number ${fromTo(range)}`;
  const nearest =
    typeof value === 'number' && !Number.isNaN(value)
      ? [clamp(whole ? Math.round(value) : value, ...range)]
      : [];
  return [problemOf(codeOfNumber(value, whole), parameter, value, rule, nearest)];
}

function oneOf(parameter: string, value: unknown, words: readonly string[]): Problem {
  const nearest = [closest(String(value), words) ?? words[0]];
  return problemOf('not-one-of', parameter, value, `must be ${words.join(', ')}`, nearest);
}

function unknownKeys(given: object, known: readonly string[], path: string): Problem[] {
  return Object.keys(given)
    .filter((key) => !known.includes(key))
    .map((key) =>
      problemOf('unknown-key', path + key, (given as Record<string, unknown>)[key], 'is not a known key', [
        path + (closest(key, known) ?? known[0]),
      ]),
    );
}
