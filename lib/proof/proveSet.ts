import { drawnSet } from '../fit/compensation.js';
import { type FittedSet, fitSet } from '../fit/fitSet.js';
import { setNumbers } from '../fit/setNumbers.js';
import { buildFitted } from '../solid/buildSet.js';
import type { Part } from '../solid/mesh.js';
import type { Spec } from '../spec/types.js';
import { version } from '../version.js';
import { measureBodies } from './bodies.js';
import { cautions } from './cautions.js';
import type { Check } from './check.js';
import { bodyChecks, planChecks, toothChecks } from './checks.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';
import { gearRecords } from './gearRecords.js';
import { type TriangleTree, triangleTree } from './mesh/triangleTree.js';
import { meshRecords } from './meshRecords.js';
import { looseSetOf } from './motion/looseSetOf.js';
import { movingSet } from './motion/movingSet.js';
import { type PlayRecord, playRecord } from './motion/playRecord.js';
import { partRecords } from './partRecords.js';
import { printingRecord } from './printing/printingRecord.js';
import { rollSet } from './rolling/rollSet.js';
import { fingerGaps } from './safety/fingerGaps.js';
import { smallParts } from './safety/smallParts.js';
import type { Sheet } from './sheetTypes.js';
import { trainRecord } from './trainRecord.js';

/** A sheet and the parts it speaks of; no parts when a `must` failed before they were built. */
export interface Proved {
  sheet: Sheet;
  parts: Part[];
}

/**
 * Builds a set and runs every check on it, cheapest first: numbers, then outlines rolled in the plane, then the
 * finished meshes. When a `must` fails at one stage the next ones are left out, unless forced.
 * @throws Refusal when the teeth cannot be drawn at all
 */
export function proveSet(spec: Spec, { force = false } = {}): Proved {
  const plan = setNumbers(spec);
  const checks = planChecks(plan);
  const proceed = () => force || !checks.some(mustFail);
  if (!proceed()) return { sheet: sheetOf(plan, checks), parts: [] };

  const set = fitSet(spec, plan.radii);
  const drawn = drawnSet(spec, set);
  const teeth: ToothFindings = {
    ...plan,
    inner: set.inner,
    outer: set.outer,
    set,
    rolling: rollSet(drawn.spec, drawn.set),
  };
  checks.push(...toothChecks(teeth));
  if (!proceed()) return { sheet: sheetOf(teeth, checks), parts: [] };

  const parts = buildFitted(drawn.spec, drawn.set);
  const bodies = measureBodies(drawn.spec, drawn.set, parts);
  const all: AllFindings = {
    ...teeth,
    parts,
    bodies,
    play: playOf(spec, set, drawn.set === set ? { parts, trees: bodies.trees } : printed(spec, set)),
    smallParts: smallParts(parts),
  };
  checks.push(...bodyChecks(all));
  return {
    sheet: { ...sheetOf(all, checks), parts: partRecords(parts, all.bodies), play: all.play },
    parts,
  };
}

interface Bodies {
  parts: readonly Part[];
  trees: readonly TriangleTree[];
}

function playOf(spec: Spec, set: FittedSet, { parts, trees }: Bodies): PlayRecord {
  return playRecord(spec, movingSet(looseSetOf(spec, set), parts, trees));
}

/** Parts move as they come off the printer: where growth is compensated those are not the drawn ones. */
function printed(spec: Spec, set: FittedSet): Bodies {
  const parts = buildFitted(spec, set);
  return { parts, trees: parts.map(({ mesh }) => triangleTree(mesh)) };
}

/** The sheet of a set without its meshes, which are built and measured all the same. Throws as `proveSet` does. */
export function inspectSet(spec: Spec): Sheet {
  return proveSet(spec).sheet;
}

function sheetOf(found: PlanFindings & Partial<AllFindings>, checks: Check[]): Sheet {
  const { spec, gears, radii, set } = found;
  const records = gearRecords(spec, gears, radii);
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
    cautions: cautions(
      { smallParts: found.smallParts, fingerGaps: fingerGaps(found) },
      { ...spec.filament, name: spec.filament.material },
    ),
    adjustments: radii.adjustments,
    cogweave: version,
  };
}

function mustFail({ level, holds }: Check): boolean {
  return level === 'must' && !holds;
}
