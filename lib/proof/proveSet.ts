import { fitSet } from '../fit/fitSet.js';
import { setRadii } from '../fit/setRadii.js';
import { buildFitted } from '../solid/buildSet.js';
import type { Part } from '../solid/mesh.js';
import type { Spec } from '../spec/types.js';
import { pairSizes } from '../train/pair.js';
import { setGears } from '../train/setGears.js';
import { version } from '../version.js';
import { measureBodies } from './bodies.js';
import { cautions } from './cautions.js';
import type { Check } from './check.js';
import { bodyChecks, planChecks, toothChecks } from './checks.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';
import { gearRecords } from './gearRecords.js';
import { meshRecords } from './meshRecords.js';
import { partRecords } from './partRecords.js';
import { rollSet } from './rolling/rollSet.js';
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
  const plan = planFindings(spec);
  const checks = planChecks(plan);
  const proceed = () => force || !checks.some(mustFail);
  if (!proceed()) return { sheet: sheetOf(plan, checks), parts: [] };

  const set = fitSet(spec);
  const teeth: ToothFindings = {
    ...plan,
    inner: set.inner,
    outer: set.outer,
    set,
    rolling: rollSet(spec, set),
  };
  checks.push(...toothChecks(teeth));
  if (!proceed()) return { sheet: sheetOf(teeth, checks), parts: [] };

  const parts = buildFitted(spec, set);
  const all: AllFindings = { ...teeth, bodies: measureBodies(spec, set, parts) };
  checks.push(...bodyChecks(all));
  return { sheet: { ...sheetOf(all, checks), parts: partRecords(parts, all.bodies) }, parts };
}

/** The sheet of a set without its meshes, which are built and measured all the same. Throws as `proveSet` does. */
export function inspectSet(spec: Spec): Sheet {
  return proveSet(spec).sheet;
}

function planFindings(spec: Spec): PlanFindings {
  const gears = setGears(spec);
  const radii = setRadii(spec, gears);
  const inner = pairSizes(gears.sun, gears.planet, {
    tipRadius1: radii.sun.tip,
    tipRadius2: radii.planet.tip,
  });
  const outer = pairSizes(gears.planet, gears.ring, {
    tipRadius1: radii.planet.tip,
    tipRadius2: radii.ring.tip,
  });
  return { spec, gears, radii, inner, outer };
}

function sheetOf(found: PlanFindings & Partial<AllFindings>, checks: Check[]): Sheet {
  const { spec, gears, radii, set } = found;
  return {
    name: spec.name,
    resolved: spec,
    gears: gearRecords(spec, gears, radii),
    meshes: meshRecords(found),
    train: trainRecord(found, set),
    checks,
    parts: [],
    cautions: cautions(),
    adjustments: radii.adjustments,
    cogweave: version,
  };
}

function mustFail({ level, holds }: Check): boolean {
  return level === 'must' && !holds;
}
