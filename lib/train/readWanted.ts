import { clamp, closest } from '../spec/nearest.js';
import { standardRacks } from '../spec/racks.js';
import { type Problem, Refusal } from '../spec/refusal.js';
import { modulesBetween, standardModules } from './moduleSeries.js';
import { completeWanted, type ResolvedWanted, type WantedSets } from './planWanted.js';

/** Least, most, and whether only whole numbers will do. */
type Bounds = readonly [least: number, most: number, whole?: 'whole'];

const spans = {
  sunTeeth: [5, 400, 'whole'],
  planetTeeth: [5, 400, 'whole'],
  ringTeeth: [10, 1000, 'whole'],
  planets: [2, 12, 'whole'],
} as const satisfies Record<string, Bounds>;

const MODULE: Bounds = [0.2, 20];

const numbers = {
  outerDiameter: [1, 2000],
  rim: [0.4, 100],
  gap: [0, 2],
  opening: [0, 360],
  engagement: [0, 4],
  pressureAngle: [14, 30],
  helixAngle: [0, 45],
  limit: [1, 100_000, 'whole'],
} as const satisfies Record<string, Bounds>;

const ratioKeys = ['value', 'tolerance', 'held'] as const;
const heldMembers = ['ring', 'carrier', 'sun'] as const;
const rackBounds = { addendum: [0.5, 1.5], dedendum: [0.5, 2], fillet: [0, 1] } as const;

/**
 * Wishes checked and completed.
 * @throws Refusal with every problem found: unknown keys, values out of range, spans that hold nothing
 */
export function readWanted(wanted: WantedSets): ResolvedWanted {
  const known = [...Object.keys(spans), ...Object.keys(numbers), 'module', 'ratio', 'rack'];
  const problems: Problem[] = unknownKeys(wanted, known, '');
  for (const [key, bounds] of Object.entries(spans))
    problems.push(...spanProblems(key, wanted[key as keyof typeof spans], bounds));
  for (const [key, bounds] of Object.entries(numbers))
    problems.push(...numberProblems(key, wanted[key as keyof typeof numbers], bounds));
  problems.push(
    ...moduleProblems(wanted.module),
    ...ratioProblems(wanted.ratio),
    ...rackProblems(wanted.rack),
  );
  if (problems.length) throw new Refusal(problems as [Problem, ...Problem[]]);
  return completeWanted(wanted, modulesOf(wanted.module));
}

function modulesOf(module: WantedSets['module'] = { least: 1, most: 3 }): readonly number[] {
  if (typeof module === 'number') return [module];
  return 'least' in module ? modulesBetween(module.least, module.most) : module;
}

function moduleProblems(module: WantedSets['module']): Problem[] {
  if (Array.isArray(module))
    return module.length
      ? module.flatMap((one, i) => numberProblems(`module[${i}]`, one, MODULE))
      : [{ parameter: 'module', value: module, rule: 'must name at least one module', nearest: [[1.5]] }];
  const found = spanProblems('module', module as WantedSets['sunTeeth'], MODULE);
  if (found.length || modulesOf(module).length) return found;
  const { least } = module as { least: number };
  const nearest = [...standardModules].sort((a, b) => Math.abs(a - least) - Math.abs(b - least)).slice(0, 2);
  return [{ parameter: 'module', value: module, rule: 'holds no standard module', nearest }];
}

function ratioProblems(ratio: WantedSets['ratio']): Problem[] {
  if (ratio === undefined) return [];
  if (typeof ratio !== 'object' || ratio === null)
    return [
      {
        parameter: 'ratio',
        value: ratio,
        rule: 'must be { value, tolerance, held }',
        nearest: [{ value: 4 }],
      },
    ];
  const problems = unknownKeys(ratio, ratioKeys, 'ratio.');
  const size = Math.abs(ratio.value);
  problems.push(...numberProblems('ratio.value', Number.isNaN(size) ? ratio.value : size, [0.001, 1000]));
  if (ratio.value === undefined)
    problems.push({ parameter: 'ratio.value', value: undefined, rule: 'is missing', nearest: [4] });
  problems.push(...numberProblems('ratio.tolerance', ratio.tolerance, [0, 1000]));
  if (ratio.held !== undefined && !heldMembers.includes(ratio.held))
    problems.push(oneOf('ratio.held', ratio.held, heldMembers));
  return problems;
}

function rackProblems(rack: WantedSets['rack']): Problem[] {
  if (rack === undefined) return [];
  if (typeof rack !== 'object' || rack === null)
    return Object.hasOwn(standardRacks, String(rack))
      ? []
      : [oneOf('rack', rack, Object.keys(standardRacks))];
  const problems = unknownKeys(rack, Object.keys(rackBounds), 'rack.');
  for (const [key, bounds] of Object.entries(rackBounds)) {
    const value = rack[key as keyof typeof rackBounds] ?? Number.NaN;
    problems.push(...numberProblems(`rack.${key}`, value, bounds));
  }
  return problems;
}

function spanProblems(parameter: string, given: WantedSets['sunTeeth'], bounds: Bounds): Problem[] {
  if (typeof given !== 'object' || given === null) return numberProblems(parameter, given, bounds);
  const problems = unknownKeys(given, ['least', 'most'], `${parameter}.`);
  for (const end of ['least', 'most'] as const)
    problems.push(...numberProblems(`${parameter}.${end}`, given[end] ?? Number.NaN, bounds));
  if (!problems.length && given.least > given.most)
    problems.push({
      parameter,
      value: given,
      rule: 'least is more than most',
      nearest: [{ least: given.most, most: given.least }],
    });
  return problems;
}

function numberProblems(parameter: string, value: number | undefined, bounds: Bounds): Problem[] {
  const [least, most, whole] = bounds;
  if (value === undefined) return [];
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return [];
  const rule = `must be a ${whole ? 'whole ' : ''}number from ${least} to ${most}`;
  const nearest =
    typeof value === 'number' && !Number.isNaN(value)
      ? [clamp(whole ? Math.round(value) : value, least, most)]
      : [];
  return [{ parameter, value, rule, nearest }];
}

function oneOf(parameter: string, value: unknown, words: readonly string[]): Problem {
  const nearest = [closest(String(value), words) ?? words[0]];
  return { parameter, value, rule: `must be ${words.join(', ')}`, nearest };
}

function unknownKeys(given: object, known: readonly string[], path: string): Problem[] {
  return Object.keys(given)
    .filter((key) => !known.includes(key))
    .map((key) => ({
      parameter: path + key,
      value: (given as Record<string, unknown>)[key],
      rule: 'is not a known key',
      nearest: [path + (closest(key, known) ?? known[0])],
    }));
}
