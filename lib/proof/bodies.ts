import type { FittedSet } from '../fit/fitSet.js';
import { gearKinds } from '../solid/buildSet.js';
import type { Part } from '../solid/mesh.js';
import { placed } from '../solid/place.js';
import type { Spec } from '../spec/types.js';
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
  deviation: SurfaceDeviation;
}

/** Least distance between two bodies, mm; null when it is more than was looked for. */
export interface BodyGap {
  between: [string, string];
  distance: number | null;
}

/** What was measured on the finished meshes. */
export interface BodyFindings {
  /** One body of each kind: sun, planet-1, ring. Equal planets are the same mesh, turned. */
  bodies: BodyFinding[];
  sunPlanet: BodyGap[];
  planetRing: BodyGap[];
  /** Neighbouring planets. */
  planets: BodyGap[];
  /** One tree a part, in their order. */
  trees: TriangleTree[];
}

/** Distances are looked for up to this many gaps. */
const REACH = 3;

/** Measures the parts that `buildFitted` made. */
export function measureBodies(spec: Spec, set: FittedSet, parts: readonly Part[]): BodyFindings {
  const trees = parts.map(({ mesh }) => triangleTree(mesh));
  const [sun, ring] = [0, parts.length - 1];
  const planets = parts.map((_, i) => i).slice(1, -1);
  const gap = (a: number, b: number): BodyGap => ({
    between: [parts[a].name, parts[b].name],
    distance: leastDistance(trees[a], trees[b], REACH * spec.fit.gap)?.distance ?? null,
  });
  const neighbours =
    planets.length > 1 ? planets.map((p, i) => gap(p, planets[(i + 1) % planets.length])) : [];
  return {
    bodies: [sun, 1, ring].map((i) => measureBody(spec, set, parts[i], trees[i])),
    sunPlanet: planets.map((p) => gap(sun, p)),
    planetRing: planets.map((p) => gap(p, ring)),
    planets: planets.length === 2 ? neighbours.slice(0, 1) : neighbours,
    trees,
  };
}

function measureBody(spec: Spec, set: FittedSet, part: Part, tree: TriangleTree): BodyFinding {
  const { profile, sweep, rotation, centre } = gearKinds(spec, set).find(({ first }) => first === part.name)!;
  const back = placed({ ...part.mesh, positions: part.mesh.positions }, 0, [-centre[0], -centre[1]]);
  return {
    name: part.name,
    volume: meshVolume(part.mesh),
    edges: edgeDefects(part.mesh),
    crossings: selfIntersections(part.mesh, tree).length,
    deviation: surfaceDeviation(placed(back, -rotation, [0, 0]), profile, sweep),
  };
}
