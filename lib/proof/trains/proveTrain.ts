import { compensationOf } from '../../fit/compensation.js';
import { drawnTrain } from '../../fit/trains/drawnTrain.js';
import { type FittedTrain, fitDrawn, fitTrain } from '../../fit/trains/fitTrain.js';
import { trainNumbers } from '../../fit/trains/trainNumbers.js';
import type { Change } from '../../solid/additions.js';
import { barSweep } from '../../solid/bar/barSweep.js';
import { buildFittedTrain, trainSweep } from '../../solid/buildTrain.js';
import type { Part } from '../../solid/mesh.js';
import type { TrainSpec } from '../../spec/types.js';
import { trainAdjustments } from '../adjustments.js';
import { allowedGapError } from '../allowedGapError.js';
import { measureBodies, type ToothedBody, toothedGear } from '../bodies.js';
import { type BodyPair, changedPairs } from '../bodyPairs.js';
import { changedChecks, measureChanged, replaced, trainRim } from '../changed.js';
import { mustFail } from '../check.js';
import { freeToTurn } from '../freeToTurn/freeToTurn.js';
import { trainScene } from '../freeToTurn/trainScene.js';
import { type TriangleTree, triangleTree } from '../mesh/triangleTree.js';
import { keepBudget } from '../meshBudget.js';
import { helpedChecks } from '../nearest/help.js';
import { helpedBodies } from '../nearest/helpedBodies.js';
import { smallParts } from '../safety/smallParts.js';
import type { TrainSheet } from '../sheetTypes.js';
import { barDeviation } from './barDeviation.js';
import { rollTrain } from './rollTrain.js';
import { trainBodyChecks } from './trainBodyChecks.js';
import { trainPlanChecks } from './trainChecks.js';
import type { TrainBodies, TrainFindings, TrainTeeth } from './trainFindings.js';
import { trainPlay } from './trainPlay.js';
import { trainSheet } from './trainSheet.js';
import { trainToothChecks } from './trainToothChecks.js';

/** How a train is proved. */
interface TrainOptions {
  /** Go on to the next stage even where a `must` fails [false]. */
  force?: boolean;
  /** Joins a script's solids to the parts and cuts others from them [nothing]. */
  change?: Change;
  /** Try what would help where bodies fail [true]. */
  mayTry?: boolean;
}

/**
 * Builds a pair, a rack and pinion or one gear and runs every check that applies to it, in the stages of `proveSet`.
 * @throws Refusal when the teeth cannot be drawn at all
 */
export function proveTrain(
  spec: TrainSpec,
  { force = false, change: additions, mayTry = true }: TrainOptions = {},
): { sheet: TrainSheet; parts: Part[] } {
  const change = additions ?? ((swept: readonly Part[]) => [...swept]);
  const numbers = trainNumbers(spec);
  const plan: TrainFindings = { numbers, drawnNumbers: drawnTrain(numbers) };
  const checks = trainPlanChecks(numbers, plan.drawnNumbers);
  const proceed = () => force || !checks.some(mustFail);
  const helped = () => helpedChecks(spec, checks, mustFail);
  if (!proceed()) return { sheet: trainSheet(plan, helped()), parts: [] };

  const asked = fitTrain(numbers);
  const drawn = fitDrawn(asked);
  const adjustments = [...numbers.adjustments, ...trainAdjustments(asked, drawn)];
  const teeth: TrainTeeth = { ...plan, asked, drawn, adjustments, rolling: rollTrain(drawn) };
  checks.push(...trainToothChecks(teeth));
  if (!proceed()) return { sheet: trainSheet(teeth, helped()), parts: [] };

  const swept = buildFittedTrain(drawn);
  keepBudget(spec, swept);
  const parts = change(swept, { planets: new Map(), scale: compensationOf(spec).scale });
  const changed = new Map(
    swept.filter(({ mesh }, i) => mesh !== parts[i].mesh).map(({ name, mesh }) => [name, mesh]),
  );
  const mates = matesOf(drawn);
  const bodies = measureBodies(
    parts,
    toothedBodies(drawn),
    [...mates, ...changedPairs(parts, mates, (name) => changed.has(name))],
    drawn.spec.fit.gap,
    { swept: changed, tolerance: spec.tolerance },
  );
  const sizes = { asked: spec, drawn: drawn.spec, ring: trainRim(drawn) };
  const measured = changed.size > 0 ? measureChanged(parts, changed, bodies.trees, sizes) : null;
  // Parts move as they come off the printer: where growth is compensated those are not the drawn ones.
  const printed = () => change(buildFittedTrain(asked), { planets: new Map(), scale: 1 });
  const trees = drawn === asked ? bodies.trees : treesOf(printed());
  const all: TrainBodies = {
    ...teeth,
    adjustments,
    parts,
    bodies,
    motion: freeToTurn(
      trainScene({ train: drawn, parts, bodies, swept: changed, allowed: allowedGapError(spec) }),
    ),
    play: trainPlay(asked, trees),
    smallParts: smallParts(parts),
  };
  checks.push(...trainBodyChecks(all));
  // What is tried is built without a script's solids.
  if (measured)
    return { sheet: trainSheet(all, replaced(checks, changedChecks(checks, measured, spec))), parts };
  const finerHelps = additions || !mayTry ? undefined : isProved;
  return { sheet: trainSheet(all, helpedBodies(spec, checks, mustFail, finerHelps)), parts };
}

function isProved(spec: TrainSpec): boolean {
  return !proveTrain(spec, { mayTry: false }).sheet.checks.some(mustFail);
}

function treesOf(parts: readonly Part[]): ReadonlyMap<string, TriangleTree> {
  return new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
}

function matesOf({ mesh }: FittedTrain): BodyPair[] {
  return mesh ? [{ between: mesh.between, as: 'mates' }] : [];
}

function toothedBodies(train: FittedTrain): ToothedBody[] {
  const { spec, gears, bar } = train;
  const { tolerance } = spec;
  const bodies = gears.map((one) =>
    toothedGear({ ...one, first: one.part, sweep: trainSweep(train, one), tolerance }),
  );
  if (!bar) return bodies;
  const sweep = barSweep(spec, bar);
  return [...bodies, { first: 'bar', deviation: (mesh, changed) => barDeviation(mesh, bar, sweep, changed) }];
}
