import { liftOf } from '../fit/carrier/carrierSizes.js';
import { compensationOf } from '../fit/compensation.js';
import type { FittedTrain } from '../fit/train/fitTrain.js';
import type { Mesh, Part } from '../solid/mesh.js';
import { firstOfEachKind } from '../solid/partKinds.js';
import type { CommonSpec } from '../spec/types.js';
import type { Check } from './check.js';
import { isWorse } from './checks/fingerGaps.js';
import { rimLeft } from './checks/rim.js';
import { thinFeaturesMeasured } from './checks/thinFeatures.js';
import { type RimPlace, rimOutside } from './mesh/rimOutside.js';
import { sameTriangles } from './mesh/sameTriangles.js';
import type { TriangleTree } from './mesh/triangleTree.js';
import { type Thinness, thinnessLimits, thinnessOf } from './printing/thinness.js';
import { addedHoles } from './safety/addedHoles.js';
import type { FingerGap } from './safety/fingerGaps.js';

/** What was measured on parts that a script changed, of which the checks on numbers know nothing. */
export interface ChangedFindings {
  /** Of the first part of each kind that is changed. */
  thinness: (Thinness & { name: string })[];
  /** Wall left outside the roots of the ring where something was cut into it, as printed, mm; Infinity for none. */
  rim: number;
  holes: FingerGap[];
}

/** The part with teeth inside, by its name. */
export type RimOf = RimPlace & { name: string };

/** The gear with teeth inside, where a train has one. */
export function rimIn({ spec, gears, carrier }: FittedTrain): RimOf | null {
  const ring = gears.find(({ gear }) => gear.internal);
  if (!ring) return null;
  const [{ name, centre }] = ring.places;
  const from = liftOf(carrier);
  return { name, centre, rootRadius: ring.profile.rootRadius, from, to: from + spec.faceWidth };
}

/**
 * Measures what a script's solids left of walls, slots, rim and openings.
 * @param swept the parts that were changed, as they were before
 * @param ring null for files without one
 */
export function measureChanged(
  parts: readonly Part[],
  swept: ReadonlyMap<string, Mesh>,
  trees: ReadonlyMap<string, TriangleTree>,
  { asked, drawn, ring }: { asked: CommonSpec; drawn: CommonSpec; ring: RimOf | null },
): ChangedFindings {
  const { scale, growth } = compensationOf(asked);
  const found: ChangedFindings = { thinness: [], rim: Number.POSITIVE_INFINITY, holes: [] };
  for (const { kind, part } of firstOfEachKind(parts)) {
    const { name, mesh } = part;
    const before = swept.get(name);
    if (!before) continue;
    const whole = sameTriangles(mesh, before);
    found.thinness.push({ name: kind, ...thinnessOf(trees.get(name)!, whole, thinnessLimits(drawn)) });
    found.holes.push(...addedHoles(kind, mesh, whole, isWorse));
    if (name === ring?.name) found.rim = rimOutside(mesh, whole, ring) / scale + 2 * growth;
  }
  return found;
}

/** The checks on numbers that look at walls, made again with what was measured. */
export function changedChecks(
  checks: readonly Check[],
  { thinness, rim }: ChangedFindings,
  { limits, tolerance }: CommonSpec,
): Check[] {
  const walls = checks.find(({ id }) => id === 'thin-features') ?? null;
  const known = checks.find(({ id }) => id === 'rim')?.value ?? Number.NEGATIVE_INFINITY;
  return [
    thinFeaturesMeasured(walls, thinness, limits.thinness),
    // Facets of the outer wall lie within it by the mesh tolerance.
    ...(rim < known - tolerance ? [rimLeft(rim, limits.rim)] : []),
  ];
}

/** Checks with those of the same id put in the place of others, and new ones at the end. */
export function replaced(checks: readonly Check[], by: readonly Check[]): Check[] {
  const ids = new Set(checks.map(({ id }) => id));
  return [
    ...checks.map((check) => by.find(({ id }) => id === check.id) ?? check),
    ...by.filter(({ id }) => !ids.has(id)),
  ];
}
