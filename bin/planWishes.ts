import { codeOfNumber } from '../lib/problemCode.js';
import { type Problem, problemOf, Refusal, refuse, refuseAll } from '../lib/refusal.js';
import type { Plan } from '../lib/train/planSets.js';
import type { Span, WantedSets } from '../lib/train/planWanted.js';
import type { Arguments } from './usage.js';

/** Flag of each wish; a wish inside another goes by the longer path. */
const flags: Record<string, string> = {
  outerDiameter: 'outer',
  sunTeeth: 'sun-teeth',
  planetTeeth: 'planet-teeth',
  ringTeeth: 'ring-teeth',
  'ratio.value': 'ratio',
  'ratio.tolerance': 'ratio-tolerance',
  'ratio.held': 'held',
  faceWidth: 'face-width',
  helixForm: 'helix',
  pressureAngle: 'pressure-angle',
  helixAngle: 'helix-angle',
};

/**
 * Hands what the flags ask for to `search`.
 * @throws Refusal that names flags, with every problem found
 */
export function planWishes(argv: Arguments, search: (wanted: WantedSets) => Plan): Plan {
  const wanted = wishesOf(argv);
  try {
    return search(wanted);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { problems } = error;
    const found = problems.map((problem) => byFlag(problem, { argv, wanted, problems }));
    // Both ends of a span are one flag, and are mended by one offer.
    const [first, ...rest] = found.filter(
      ({ parameter, rule }, i) =>
        i === found.findIndex((one) => one.parameter === parameter && one.rule === rule),
    );
    throw new Refusal([first, ...rest]);
  }
}

/** The wishes that flags state. Words that are no numbers are all refused at once. */
function wishesOf(argv: Arguments): WantedSets {
  const problems: Problem[] = [];
  const read = <T>(flag: string, reader: (flag: string, text: string) => T): T | undefined => {
    const text = argv[flag];
    if (text === undefined) return undefined;
    try {
      return reader(flag, String(text));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      problems.push(...error.problems);
      return undefined;
    }
  };
  const helix = read('helix', helixOf);
  const value = read('ratio', number);
  const tolerance = read('ratio-tolerance', number);
  const held = argv.held as 'ring' | undefined;
  for (const [flag, given] of [
    ['ratio-tolerance', tolerance],
    ['held', held],
  ] as const)
    if (given !== undefined && argv.ratio === undefined)
      problems.push(problemOf('needs-another', flag, given, 'is only for --ratio'));
  if (helix?.angle !== undefined && argv['helix-angle'] !== undefined) {
    const rule = 'gives the angle that --helix gives already';
    problems.push(problemOf('given-twice', 'helix-angle', argv['helix-angle'], rule));
  }
  const wanted: WantedSets = {
    outerDiameter: read('outer', number),
    hole: read('hole', number),
    bed: read('bed', number),
    planets: read('planets', spanOf),
    module: read('module', moduleOf),
    sunTeeth: read('sun-teeth', spanOf),
    planetTeeth: read('planet-teeth', spanOf),
    ringTeeth: read('ring-teeth', spanOf),
    ratio: value === undefined ? undefined : { value, tolerance, held },
    opening: read('opening', number),
    engagement: read('engagement', number),
    rim: read('rim', number),
    gap: read('gap', number),
    nozzle: read('nozzle', number),
    faceWidth: read('face-width', number),
    helixForm: helix?.form as WantedSets['helixForm'],
    helixAngle: helix?.angle ?? read('helix-angle', number),
    rack: read('rack', rackOf),
    pressureAngle: read('pressure-angle', number),
    shifts: argv.shifts as WantedSets['shifts'],
    spacing: argv.spacing as WantedSets['spacing'],
    by: argv.by as WantedSets['by'],
    limit: read('limit', number),
  };
  refuseAll(problems);
  return wanted;
}

/** All that says how a problem of a wish stands on the command line. */
interface Typed {
  argv: Arguments;
  wanted: WantedSets;
  problems: readonly Problem[];
}

/** The problem as one of a flag, with offers that can be typed for it: `planets.least` is one of --planets. */
function byFlag(problem: Problem, typed: Typed): Problem {
  const { parameter, value, nearest } = problem;
  const { argv, wanted } = typed;
  if (parameter === 'helixAngle' && argv['helix-angle'] === undefined) {
    const withForm = (angle: unknown) => `${wanted.helixForm}:${angle}`;
    return { ...problem, parameter: 'helix', value: withForm(value), nearest: nearest.map(withForm) };
  }
  const wish = parameter.split(/[.[]/)[0] as keyof WantedSets;
  const flag = flags[parameter] ?? flags[wish] ?? wish;
  if (parameter === wish || wish === 'ratio')
    return { ...problem, parameter: flag, value: show(value), nearest: nearest.map(show) };
  const offered = nearest.length ? [show(withOffers(wanted[wish], wish, typed.problems))] : [];
  const rule = wish === 'rack' ? `${parameter.slice('rack.'.length)} ${problem.rule}` : problem.rule;
  return { ...problem, parameter: flag, value: argv[flag], rule, nearest: offered };
}

/** A wish of several figures with what is offered in place of each that is wrong. */
function withOffers(wish: unknown, name: string, problems: readonly Problem[]): unknown {
  const offered = structuredClone(wish) as Record<string, unknown>;
  for (const { parameter, nearest } of problems) {
    const [whole, part] = parameter.split(/[.[\]]+/);
    if (whole === name && part && nearest.length) offered[part] = nearest[0];
  }
  return offered;
}

/** A wish as it is typed. */
function show(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.values(value);
  return parts.join('least' in value ? '-' : ',');
}

function helixOf(flag: string, text: string): { form: string; angle?: number } {
  const [form, angle, more] = text.split(':');
  if (more !== undefined || form === '')
    refuse('wrong-form', flag, text, 'must be a form, or form:angle', ['herringbone:30']);
  return { form, ...(angle === undefined ? {} : { angle: number(flag, angle) }) };
}

/** A profile by its name, or three figures. */
function rackOf(flag: string, text: string): WantedSets['rack'] {
  if (!text.includes(',')) return text as 'B';
  const figures = text.split(',').map((one) => number(flag, one));
  const rule = 'must be a profile, or addendum,dedendum,fillet in modules';
  if (figures.length !== 3) refuse('wrong-form', flag, text, rule, ['B', '1,1.25,0.3']);
  const [addendum, dedendum, fillet] = figures;
  return { addendum, dedendum, fillet };
}

function moduleOf(flag: string, text: string): number | number[] | Span {
  return text.includes(',') ? text.split(',').map((one) => number(flag, one)) : spanOf(flag, text);
}

function spanOf(flag: string, text: string): number | Span {
  const ends = text.split(/(?<=[\d.\s])(?:-|–|\.\.)(?=[\d.\s])/);
  if (ends.length === 1) return number(flag, text);
  if (ends.length > 2)
    refuse('wrong-form', flag, text, 'must be a number, or two with a hyphen', [ends.slice(0, 2).join('-')]);
  return { least: number(flag, ends[0]), most: number(flag, ends[1]) };
}

/**
 * A number that a flag gives. Plain decimals only: Number('') is 0 and Number('0x1') is 1.
 * @throws Refusal for the flag
 */
export function number(flag: string, text: string): number {
  if (/^\s*[-+]?(\d+\.?\d*|\.\d+)\s*$/.test(text)) return Number(text);
  const meant = Number.parseFloat(text.replace(',', '.'));
  refuse('not-a-number', flag, text, 'is not a number', Number.isNaN(meant) ? [] : [meant]);
}

/**
 * A whole number that a flag gives.
 * @throws Refusal for the flag
 */
export function wholeNumber(flag: string, text: string, least: number): number {
  const value = number(flag, text);
  if (Number.isInteger(value) && value >= least) return value;
  const rule = `must be a whole number from ${least} on`;
  refuse(codeOfNumber(value, true), flag, text, rule, [Math.max(least, Math.round(value))]);
}
