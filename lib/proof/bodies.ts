import type { GearKind } from '../solid/buildSet.js';
import type { Part } from '../solid/mesh.js';
import { firstOfEachKind, kindOf } from '../solid/partKinds.js';
import { placed } from '../solid/place.js';
import type { BodyPair } from './bodyPairs.js';
import { type EdgeDefects, edgeDefects } from './mesh/edges.js';
import { leastDistance } from './mesh/leastDistance.js';
import { selfIntersections } from './mesh/selfIntersection.js';
import { type TriangleTree, triangleTree } from './mesh/triangleTree.js';
import { meshVolume } from './mesh/volume.js';
import { type SurfaceDeviation, surfaceDeviation } from './surfaceDeviation.js';

/** What was measured on one body. */
export interface BodyFinding {
  name: string;
  volume: number;
  edges: EdgeDefects;
  /** Pairs of triangles that cross, at most ten. */
  crossings: number;
  /** Null for a body without teeth. */
  deviation: SurfaceDeviation | null;
}

/** A pair of bodies and their least distance, mm; null when it is more than was looked for. */
export interface BodyGap extends BodyPair {
  distance: number | null;
}

/** What was measured on the finished meshes. */
export interface BodyFindings {
  /** The first body of each kind, in the order of the parts. Equal planets are the same mesh, turned. */
  bodies: BodyFinding[];
  /** Every pair that was asked for, in that order. */
  gaps: BodyGap[];
  /** One tree a part, by name. */
  trees: ReadonlyMap<string, TriangleTree>;
}

/** Distances are looked for up to this many gaps. */
const REACH = 3;

/**
 * Measures parts as they were built.
 * @param kinds the toothed ones, each as its first part was made and placed
 * @param pairs whose distances are measured; parts that are not there are an error of the caller
 * @param gap mm; distances are looked for up to three times as far
 */
export function measureBodies(
  parts: readonly Part[],
  kinds: readonly GearKind[],
  pairs: readonly BodyPair[],
  gap: number,
): BodyFindings {
  const trees = new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
  return {
    bodies: firstOfEachKind(parts).map(({ part }) => measureBody(part, kinds, trees.get(part.name)!)),
    gaps: pairs.map((pair) => {
      const [first, second] = pair.between.map((name) => trees.get(name)!);
      const reach = Math.max(REACH * gap, pair.least ?? 0);
      return { ...pair, distance: leastDistance(first, second, reach)?.distance ?? null };
    }),
    trees,
  };
}

function measureBody(part: Part, kinds: readonly GearKind[], tree: TriangleTree): BodyFinding {
  const kind = kinds.find(({ first }) => first === part.name);
  return {
    name: part.name,
    volume: meshVolume(part.mesh),
    edges: edgeDefects(part.mesh),
    crossings: selfIntersections(part.mesh, tree).length,
    deviation: kind ? deviationOf(part, kind) : null,
  };
}

function deviationOf({ mesh }: Part, { profile, sweep, rotation, centre }: GearKind): SurfaceDeviation {
  const back = placed(mesh, 0, [-centre[0], -centre[1]]);
  return surfaceDeviation(placed(back, -rotation, [0, 0]), profile, sweep);
}

/** The gaps between two kinds of parts, in the order measured. */
export function gapsBetween({ gaps }: BodyFindings, first: string, second: string): BodyGap[] {
  return gaps.filter(({ between: [a, b] }) => kindOf(a) === first && kindOf(b) === second);
}
