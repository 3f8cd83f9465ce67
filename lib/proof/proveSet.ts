import { compensationOf } from '../fit/compensation.js';
import { drawnTrain } from '../fit/train/drawnTrain.js';
import { fitDrawn, fitTrain } from '../fit/train/fitTrain.js';
import { trainNumbers } from '../fit/train/trainNumbers.js';
import { Refusal } from '../refusal.js';
import { type Additions, additionsTo, type Change } from '../solid/additions.js';
import { planetPlaces } from '../solid/buildSet.js';
import { buildTrain } from '../solid/buildTrain.js';
import type { Part } from '../solid/mesh.js';
import { readAdditions } from '../solid/readAdditions.js';
import type { Spec } from '../spec/types.js';
import { toothAdjustments } from './adjustments.js';
import { allowedGapError } from './allowedGapError.js';
import { arrangementOf } from './arrangements/arrangementOf.js';
import { type BodyFindings, measureBodies } from './bodies.js';
import { bodyPairs, changedPairs } from './bodyPairs.js';
import { changedChecks, measureChanged, replaced, rimIn } from './changed.js';
import { mustFail } from './check.js';
import { bodyChecks, planChecks, toothChecks } from './checks.js';
import type { AllFindings, ToothFindings } from './findings.js';
import { freeToTurn } from './freeToTurn/freeToTurn.js';
import { sceneOf } from './freeToTurn/sceneOf.js';
import { triangleTree } from './mesh/triangleTree.js';
import { keepBudget } from './meshBudget.js';
import { helpedChecks, helpedRefusal } from './nearest/help.js';
import { helpedUnderBed } from './nearest/raisedSolids.js';
import { rollTrain } from './rolling/rollTrain.js';
import { smallParts } from './safety/smallParts.js';
import { sheetOf } from './sheetOf.js';
import type { Sheet, SheetOf } from './sheetTypes.js';
import { toothedBodies } from './toothedBodies.js';

/** A sheet and the parts it speaks of; no parts when a `must` failed before they were built. */
export interface Proved<S = Sheet> {
  sheet: S;
  parts: Part[];
}

/**
 * Builds a set and runs every check on it, cheapest first: numbers, then outlines rolled in the plane, then the
 * finished meshes. When a `must` fails at one stage the next ones are left out, unless forced.
 * With `join` or `cut` a script's solids are added to the parts and proved with them; the result is a promise then.
 * @throws Refusal when the teeth cannot be drawn at all, or an addition is wrong
 */
export function proveSet<S extends Spec>(
  spec: S,
  options: ProveOptions & SomeAdditions,
): Promise<Proved<SheetOf<S>>>;
export function proveSet<S extends Spec>(spec: S, options?: ProveOptions & NoAdditions): Proved<SheetOf<S>>;
export function proveSet(spec: Spec, options?: ProveOptions & Additions): Proved | Promise<Proved>;
export function proveSet(
  spec: Spec,
  { force = false, ...additions }: ProveOptions & Additions = {},
): Proved | Promise<Proved> {
  if (additions.join === undefined && additions.cut === undefined) {
    readAdditions(additions); // refuses options that are misspelt
    return proveWith(spec, force);
  }
  return additionsTo(additions).then((change) => proveWith(spec, force, change));
}

/** How a set is proved. */
export interface ProveOptions {
  /** Go on to the next stage even where a `must` fails [false]. */
  force?: boolean;
}

/** Additions of which at least one is given. */
export type SomeAdditions = Required<Pick<Additions, 'join'>> | Required<Pick<Additions, 'cut'>>;

/** Neither `join` nor `cut`. */
export type NoAdditions = { [K in keyof Additions]?: undefined };

function proveWith<S extends Spec>(spec: S, force: boolean, change?: Change): Proved<SheetOf<S>> {
  try {
    const proved = proveTrain(spec, { force, change });
    return change
      ? helpedUnderBed(proved, change, spec, (other) => proveTrain(spec, { change: other }))
      : proved;
  } catch (error) {
    throw error instanceof Refusal ? helpedRefusal(spec, error) : error;
  }
}

/** How a train is proved. */
interface TrainOptions extends ProveOptions {
  /** Joins a script's solids to the parts and cuts others from them [nothing]. */
  change?: Change;
  /** Try what would help where bodies fail [true]. */
  mayTry?: boolean;
}

function proveTrain<S extends Spec>(
  spec: S,
  { force = false, change, mayTry = true }: TrainOptions,
): Proved<SheetOf<S>> {
  const numbers = trainNumbers(spec);
  const plan = { spec, numbers, drawnNumbers: drawnTrain(numbers) };
  const checks = planChecks(plan);
  const proceed = () => force || !checks.some(mustFail);
  if (!proceed()) return { sheet: sheetOf(plan, helpedChecks(spec, checks, mustFail)), parts: [] };

  const asked = fitTrain(numbers);
  const drawn = fitDrawn(asked);
  const teeth: ToothFindings<S> = {
    ...plan,
    asked,
    drawn,
    adjustments: [...numbers.adjustments, ...toothAdjustments(asked, drawn)],
    rolling: rollTrain(drawn),
  };
  checks.push(...toothChecks(teeth));
  if (!proceed()) return { sheet: sheetOf(teeth, helpedChecks(spec, checks, mustFail)), parts: [] };

  const { found, measured } = measuredBodies(teeth, change);
  checks.push(...bodyChecks(found));
  const own = arrangementOf(spec);
  const isProved = (other: S) => !proveTrain(other, { mayTry: false }).sheet.checks.some(mustFail);
  // What is tried is built without a script's solids.
  const held = measured
    ? replaced(checks, [...changedChecks(checks, measured, spec), ...own.openings(found)])
    : own.helpedBodies(spec, checks, change || !mayTry ? undefined : isProved);
  return { sheet: sheetOf(found, held), parts: [...found.parts] };
}

/** Builds the bodies and measures all that is asked of them; and what a script did to them, null for nothing. */
function measuredBodies<S extends Spec>(teeth: ToothFindings<S>, additions?: Change) {
  const { spec, asked, drawn } = teeth;
  const change = additions ?? ((parts: readonly Part[]) => [...parts]);
  const swept = buildTrain(drawn);
  keepBudget(spec, swept);
  const parts = change(swept, { planets: planetPlaces(drawn), scale: compensationOf(spec).scale });
  const changed = new Map(
    swept.filter(({ mesh }, i) => mesh !== parts[i].mesh).map(({ name, mesh }) => [name, mesh]),
  );
  const pairs = bodyPairs(drawn);
  const bodies = measureBodies(
    parts,
    toothedBodies(drawn),
    [...pairs, ...changedPairs(parts, pairs, (name) => changed.has(name))],
    drawn.spec.fit.gap,
    { swept: changed, tolerance: spec.tolerance },
  );
  const sizes = { asked: spec, drawn: drawn.spec, ring: rimIn(drawn) };
  const measured = changed.size > 0 ? measureChanged(parts, changed, bodies.trees, sizes) : null;
  // Parts move as they come off the printer: where growth is compensated those are not the drawn ones.
  const printed = () => change(buildTrain(asked), { planets: planetPlaces(asked), scale: 1 });
  const found: AllFindings<S> = {
    ...teeth,
    parts,
    bodies,
    motion: freeToTurn(
      sceneOf({ train: drawn, parts, bodies, swept: changed, allowed: allowedGapError(spec) }),
    ),
    play: arrangementOf(spec).playOf(
      asked,
      drawn === asked ? bodies.trees : treesOf(printed()),
      changed.size > 0,
    ),
    smallParts: smallParts(parts),
    addedHoles: measured?.holes,
  };
  return { found, measured };
}

function treesOf(parts: readonly Part[]): BodyFindings['trees'] {
  return new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
}

/** The sheet of a set without its meshes, which are built and measured all the same. Throws as `proveSet` does. */
export function inspectSet<S extends Spec>(spec: S): SheetOf<S>;
export function inspectSet<S extends Spec>(spec: S, additions: Additions): Promise<SheetOf<S>>;
export function inspectSet(spec: Spec, additions?: Additions): Sheet | Promise<Sheet> {
  if (additions === undefined) return proveWith(spec, false).sheet;
  return additionsTo(additions).then((change) => proveWith(spec, false, change).sheet);
}
