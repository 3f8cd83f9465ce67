import { sentences } from '../fit/adjustment.js';
import { compensationOf, drawnSet } from '../fit/compensation.js';
import { fitSet } from '../fit/fitSet.js';
import { setNumbers } from '../fit/setNumbers.js';
import { type Additions, additionsTo, type Change } from '../solid/additions.js';
import { buildFitted, gearKinds, kindsOfEachPlanet, planetPlaces } from '../solid/buildSet.js';
import type { Mesh, Part } from '../solid/mesh.js';
import { readAdditions } from '../solid/readAdditions.js';
import { Refusal } from '../spec/refusal.js';
import type { PlanetarySpec, Spec } from '../spec/types.js';
import { version } from '../version.js';
import { setAdjustments } from './adjustments.js';
import { allowedGapError } from './allowedGapError.js';
import { type BodyFindings, measureBodies, toothedGear } from './bodies.js';
import { changedPairs, planetaryPairs } from './bodyPairs.js';
import { cautions } from './cautions.js';
import { changedChecks, measureChanged, replaced, setRim } from './changed.js';
import { type Check, mustFail } from './check.js';
import { fingerGaps as fingerGapsCheck } from './checks/fingerGaps.js';
import { bodyChecks, planChecks, toothChecks } from './checks.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';
import { freeToTurn } from './freeToTurn/freeToTurn.js';
import { planetaryScene } from './freeToTurn/planetaryScene.js';
import { gearRecords } from './gearRecords.js';
import { triangleTree } from './mesh/triangleTree.js';
import { keepBudget } from './meshBudget.js';
import { meshRecords } from './meshRecords.js';
import { looseSetOf } from './motion/looseSetOf.js';
import { playRecord } from './motion/playRecord.js';
import { mountingRecord } from './mounting.js';
import { freeWays } from './nearest/freeWays.js';
import { helpedChecks, helpedRefusal } from './nearest/help.js';
import { helpedUnderBed } from './nearest/raisedSolids.js';
import { partRecords } from './partRecords.js';
import { printingRecord } from './printing/printingRecord.js';
import { rollSet } from './rolling/rollSet.js';
import { fingerGaps } from './safety/fingerGaps.js';
import { smallParts } from './safety/smallParts.js';
import type { PlanetarySheet, Sheet, SheetOf } from './sheetTypes.js';
import { trainRecord } from './trainRecord.js';
import { proveTrain } from './trains/proveTrain.js';

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

function proveWith(spec: Spec, force: boolean, change?: Change): Proved {
  const prove = (mayForce: boolean, made?: Change) =>
    spec.kind === 'planetary'
      ? provePlanetary(spec, mayForce, made)
      : proveTrain(spec, { force: mayForce, change: made });
  try {
    const proved = prove(force, change);
    return change ? helpedUnderBed(proved, change, spec, (other) => prove(false, other)) : proved;
  } catch (error) {
    throw error instanceof Refusal ? helpedRefusal(spec, error) : error;
  }
}

/** `proveSet` for a planetary set. */
function provePlanetary(
  spec: PlanetarySpec,
  force: boolean,
  additions?: Change,
  mayTry = true,
): Proved<PlanetarySheet> {
  const change = additions ?? ((parts: readonly Part[]) => [...parts]);
  const plan = setNumbers(spec);
  const checks = planChecks(plan);
  const proceed = () => force || !checks.some(mustFail);
  if (!proceed()) return { sheet: sheetOf(plan, helpedChecks(spec, checks, mustFail)), parts: [] };

  const set = fitSet(spec, plan.radii);
  const drawn = drawnSet(spec, set);
  const teeth: ToothFindings = {
    ...plan,
    inner: set.inner,
    outer: set.outer,
    set,
    adjustments: [...plan.radii.adjustments, ...setAdjustments(spec, set, drawn.set)],
    rolling: rollSet(drawn.spec, drawn.set),
  };
  checks.push(...toothChecks(teeth));
  if (!proceed()) return { sheet: sheetOf(teeth, helpedChecks(spec, checks, mustFail)), parts: [] };

  const swept = buildFitted(drawn.spec, drawn.set);
  keepBudget(spec, swept);
  const { scale } = compensationOf(spec);
  const parts = change(swept, { planets: planetPlaces(drawn.set), scale });
  const changed = new Map(swept.filter((part, i) => part.mesh !== parts[i].mesh).map(nameAndMesh));
  const pairs = planetaryPairs(parts, drawn.set.carrier);
  const bodies = measureBodies(
    parts,
    kindsOfEachPlanet(gearKinds(drawn.spec, drawn.set), drawn.set).map(toothedGear),
    [...pairs, ...changedPairs(parts, pairs, (name) => changed.has(name))],
    drawn.spec.fit.gap,
    { swept: changed, tolerance: spec.tolerance },
  );
  const sizes = { asked: spec, drawn: drawn.spec, ring: setRim(drawn) };
  const measured = changed.size > 0 ? measureChanged(parts, changed, bodies.trees, sizes) : null;
  // Parts move as they come off the printer: where growth is compensated those are not the drawn ones.
  const printed = () => change(buildFitted(spec, set), { planets: planetPlaces(set), scale: 1 });
  const all: AllFindings = {
    ...teeth,
    parts,
    bodies,
    motion: freeToTurn(
      planetaryScene({ ...drawn, parts, bodies, swept: changed, allowed: allowedGapError(spec) }),
    ),
    play: playRecord(spec, {
      set: looseSetOf(spec, set),
      trees: drawn.set === set ? bodies.trees : treesOf(printed()),
      changed: changed.size > 0,
    }),
    smallParts: smallParts(parts),
    addedHoles: measured?.holes,
  };
  checks.push(...bodyChecks(all));
  const held = measured
    ? replaced(checks, [...changedChecks(checks, measured, spec), fingerGapsCheck(all)])
    : additions || !mayTry
      ? checks
      : helpedToTurn(spec, checks);
  return {
    sheet: { ...sheetOf(all, held), parts: partRecords(parts, all.bodies), play: all.play },
    parts,
  };
}

/** What would let bodies turn freely that do not, tried on the whole set. */
function helpedToTurn(spec: PlanetarySpec, checks: Check[]): Check[] {
  const blocked = (check: Check) => check.id === 'free-to-turn' && mustFail(check);
  const isProved = (other: PlanetarySpec) =>
    !provePlanetary(other, false, undefined, false).sheet.checks.some(mustFail);
  return helpedChecks(spec, checks, blocked, { counts: false, ways: freeWays(spec), more: isProved });
}

function treesOf(parts: readonly Part[]): BodyFindings['trees'] {
  return new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
}

function nameAndMesh({ name, mesh }: Part): [string, Mesh] {
  return [name, mesh];
}

/** The sheet of a set without its meshes, which are built and measured all the same. Throws as `proveSet` does. */
export function inspectSet<S extends Spec>(spec: S): SheetOf<S>;
export function inspectSet<S extends Spec>(spec: S, additions: Additions): Promise<SheetOf<S>>;
export function inspectSet(spec: Spec, additions?: Additions): Sheet | Promise<Sheet> {
  if (additions === undefined) return proveWith(spec, false).sheet;
  return additionsTo(additions).then((change) => proveWith(spec, false, change).sheet);
}

function sheetOf(found: PlanFindings & Partial<AllFindings>, checks: Check[]): PlanetarySheet {
  const { spec, gears, radii, set } = found;
  const records = gearRecords(spec, gears, radii);
  const mounting = mountingRecord(spec);
  return {
    name: spec.name,
    resolved: spec,
    gears: records,
    meshes: meshRecords(found),
    train: trainRecord(found, set),
    checks,
    parts: [],
    play: null,
    printing: printingRecord(found, records),
    ...(mounting && { mounting }),
    cautions: cautions(
      { smallParts: found.smallParts, fingerGaps: fingerGaps(found) },
      { ...spec.filament, name: spec.filament.material },
    ),
    adjustments: sentences(found.adjustments ?? radii.adjustments),
    cogweave: version,
  };
}
