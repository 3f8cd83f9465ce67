import { clamp, closest, floorThousandth, ROUNDING } from '../spec/nearest.js';
import { standardRacks } from '../spec/racks.js';
import { type Problem, Refusal } from '../spec/refusal.js';
import { merits } from './merit.js';
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
  hole: [5, 2000],
  bed: [10, 2000],
  rim: [0.4, 100],
  gap: [0.02, 2],
  opening: [0, 360],
  engagement: [0, 4],
  pressureAngle: [14, 30],
  helixAngle: [0, 45],
  faceWidth: [1, 250],
  nozzle: [0.1, 2],
  limit: [1, 100_000, 'whole'],
} as const satisfies Record<string, Bounds>;

const ratioKeys = ['value', 'tolerance', 'held'] as const;
const heldMembers = ['ring', 'carrier', 'sun'] as const;
const choices = { shifts: ['none', 'solve'], spacing: ['equal', 'nearest'] } as const;
const helixForms = ['spur', 'helical', 'herringbone'] as const;
/** A larger gap would leave the teeth hardly any engagement, as in a parameter file. Common practice. */
const MOST_GAP_PER_MODULE = 0.6;
const rackBounds = { addendum: [0.5, 1.5], dedendum: [0.5, 2], fillet: [0, 1] } as const;

/**
 * Wishes checked and completed.
 * @throws Refusal with every problem found: unknown keys, values out of range, spans that hold nothing
 */
export function readWanted(wanted: WantedSets): ResolvedWanted {
  const known = [
    ...Object.keys(spans),
    ...Object.keys(numbers),
    'module',
    'ratio',
    'rack',
    'helixForm',
    ...Object.keys(choices),
    'by',
  ];
  const problems: Problem[] = unknownKeys(wanted, known, '');
  for (const [key, bounds] of Object.entries(spans))
    problems.push(...spanProblems(key, wanted[key as keyof typeof spans], bounds));
  for (const [key, bounds] of Object.entries(numbers))
    problems.push(...numberProblems(key, wanted[key as keyof typeof numbers], bounds));
  problems.push(
    ...moduleProblems(wanted.module),
    ...ratioProblems(wanted.ratio),
    ...rackProblems(wanted.rack),
    ...helixProblems(wanted),
    ...byProblems(wanted),
    ...(['shifts', 'spacing'] as const).flatMap((key) => choiceProblems(key, wanted[key])),
  );
  stop(problems);
  const { gap, module } = completeWanted(wanted, modulesOf(wanted.module));
  const modules = module.filter((one) => gap <= MOST_GAP_PER_MODULE * one + ROUNDING);
  if (!modules.length) {
    const most = floorThousandth(MOST_GAP_PER_MODULE * module[module.length - 1]);
    const rule = `must be at most ${most} mm with these modules: ${MOST_GAP_PER_MODULE} × module`;
    stop([{ parameter: 'gap', value: gap, rule, nearest: [most] }]);
  }
  return completeWanted(wanted, modules);
}

function stop(problems: Problem[]): void {
  const [first, ...rest] = problems;
  if (first) throw new Refusal([first, ...rest]);
}

function choiceProblems(key: keyof typeof choices, value: unknown): Problem[] {
  const words: readonly unknown[] = choices[key];
  return value === undefined || words.includes(value) ? [] : [oneOf(key, value, choices[key])];
}

/** Spur teeth have no angle, and others one of at least a degree. */
function helixProblems({ helixForm: form, helixAngle: angle }: WantedSets): Problem[] {
  if (form !== undefined && !helixForms.includes(form)) return [oneOf('helixForm', form, helixForms)];
  if (form === 'spur' && angle !== undefined && angle !== 0)
    return [{ parameter: 'helixAngle', value: angle, rule: 'must be 0 for spur teeth', nearest: [0] }];
  const helical = form === 'helical' || form === 'herringbone' || (angle !== undefined && angle > 0);
  if (!helical || angle === undefined || !(angle >= 0 && angle < 1)) return [];
  return [{ parameter: 'helixAngle', value: angle, rule: 'must be a number from 1 to 45', nearest: [1] }];
}

function byProblems({ by, ratio }: WantedSets): Problem[] {
  if (by === undefined) return [];
  if (!Object.hasOwn(merits, String(by))) return [oneOf('by', by, Object.keys(merits))];
  if (by !== 'ratio' || ratio !== undefined) return [];
  return [{ parameter: 'by', value: by, rule: 'needs a ratio to be near to', nearest: ['overall'] }];
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
