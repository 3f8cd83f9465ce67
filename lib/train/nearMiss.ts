import { LINE_PER_NOZZLE } from '../spec/usual.js';
import { assemblyStep, leastClearance, planetPlaces } from './assembly.js';
import { ratioDeparture } from './merit.js';
import { byMerit, type Candidate } from './planRow.js';
import type { ResolvedWanted } from './planWanted.js';
import type { PlannedSet } from './unshiftedSet.js';

/** What a set can miss by a little and still be worth showing. */
export type Rule =
  | 'assembly'
  | 'neighbours'
  | 'engagement'
  | 'opening'
  | 'ratio'
  | 'outerDiameter'
  | 'hole'
  | 'bed'
  | 'nozzle'
  | 'shifts'
  | 'asMade';

/** A rule that is missed, and by what share of the figure asked for. */
export interface Miss {
  rule: Rule;
  share: number;
  /** What is missed, in one clause, where the figures of the row do not say it. */
  says?: string;
}

/** What a set has missed so far: nothing, one rule by a little, or too much to be shown. */
export type Missed = null | Miss | 'too much';

/** A candidate that keeps every rule, or every one but the one it names. */
export interface Judged extends Candidate {
  miss: Miss | null;
  /** The same counts without profile shift, which are shown in its place where they run. */
  plain?: PlannedSet;
}

/** A set that misses a figure by more than this share of it is no near miss. */
export const NEAR = 0.1;
/** Shares below this are the rounding of doubles: the rule holds. */
const ROUNDING = 1e-9;

/** Adds one rule to what was missed before; a second miss, or a wide one, is too much. */
export function alsoMissed(missed: Missed, rule: Rule, share: number): Missed {
  if (missed === 'too much' || !(share > ROUNDING)) return missed;
  return missed !== null || share > NEAR ? 'too much' : { rule, share };
}

/** Order of near misses: the smaller share first, then as rows. Never calls two equal. */
export function nearer(a: Judged, b: Judged): number {
  return (a.miss?.share ?? 0) - (b.miss?.share ?? 0) || byMerit(a, b);
}

/** The rule that is missed and by how much, in one clause. */
export function sayMiss({ set, planets, module, ...found }: Judged, wanted: ResolvedWanted): string {
  const { sunTeeth, ringTeeth, planetTipRadius, centreDistance } = set;
  const places = planetPlaces(sunTeeth, ringTeeth, planets);
  if (found.miss!.says !== undefined) return found.miss!.says;
  switch (found.miss!.rule) {
    case 'assembly': {
      const step = assemblyStep(sunTeeth, ringTeeth);
      return `assembly: (${sunTeeth} + ${ringTeeth}) / ${planets} is not whole, planets sit at multiples of ${show(step)}°`;
    }
    case 'neighbours': {
      const clear = leastClearance(places, centreDistance * module, planetTipRadius * module);
      return `neighbours: ${show(clear)} mm between planets, at least ${show(wanted.gap)} wanted`;
    }
    case 'engagement':
      return `engagement: contact ratio ${show(set.engagement)}, at least ${show(wanted.engagement)} wanted`;
    case 'opening':
      return `opening: ${show(found.opening.arc)}°, at most ${show(wanted.opening!)} wanted`;
    case 'ratio': {
      const { value, tolerance, held } = wanted.ratio!;
      const off = show(ratioDeparture(found.ratios, wanted));
      return `ratio: with the ${held} held it is ${off} away from ${show(value)}, at most ${show(tolerance)} wanted`;
    }
    case 'outerDiameter':
      return `outerDiameter: ${show(found.outerDiameter)} mm, at most ${show(wanted.outerDiameter!)} wanted`;
    case 'hole':
      return `hole: ${show(found.outerDiameter)} mm across, a hole of ${show(wanted.hole!)} takes at most ${show(wanted.largest!)}, the gap free all around`;
    case 'bed':
      return `bed: ${show(found.outerDiameter)} mm across, the bed has room for ${show(wanted.bed)}`;
    case 'nozzle': {
      const least = LINE_PER_NOZZLE * wanted.nozzle!;
      const tip = least * (1 - found.miss!.share);
      return `nozzle: the thinnest tooth tip is ${show(tip)} mm, a line of this nozzle is ${show(least)} wide`;
    }
    case 'shifts':
      return 'shifts: no profile shifts keep every limit';
    case 'asMade':
      return 'asMade: the teeth do not run once the gap is taken off them';
  }
}

function show(value: number): string {
  return String(Number(value.toPrecision(5)));
}
