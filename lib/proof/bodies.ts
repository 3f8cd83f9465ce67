import type { Mesh, Part } from '../solid/mesh.js';
import { firstOfEachKind, kindOf } from '../solid/partKinds.js';
import { placed, raised } from '../solid/place.js';
import { BACK } from '../solid/sweep/centred.js';
import type { Sweep } from '../solid/sweep/helix.js';
import type { ToothProfile } from '../tooth/profile.js';
import type { BodyPair } from './bodyPairs.js';
import { type EdgeDefects, edgeDefects } from './mesh/edges.js';
import { leastDistance } from './mesh/leastDistance.js';
import { selfIntersections } from './mesh/selfIntersection.js';
import { type TriangleTree, triangleTree } from './mesh/triangleTree.js';
import { meshVolume } from './mesh/volume.js';
import { ON_SURFACE, type SurfaceDeviation, surfaceDeviation } from './surfaceDeviation.js';

/** What was measured on one body. */
export interface BodyFinding {
  name: string;
  volume: number;
  edges: EdgeDefects;
  /** Pairs of triangles that cross, at most ten. */
  crossings: number;
  /** Null for a body without teeth. */
  deviation: SurfaceDeviation | null;
  /** Area of toothed surface that a script's solids cut away or cover, mm². */
  teethLost: number;
}

/** A pair of bodies and their least distance, mm; null when it is more than was looked for. */
export interface BodyGap extends BodyPair {
  distance: number | null;
}

/** What was measured on the finished meshes. */
export interface BodyFindings {
  /** The first body of each kind (equal planets are the same mesh, turned), and every one that a script changed. */
  bodies: BodyFinding[];
  /** Every pair that was asked for, in that order. */
  gaps: BodyGap[];
  /** One tree a part, by name. */
  trees: ReadonlyMap<string, TriangleTree>;
}

/** Parts that a script changed, by name, as they were swept before. */
export interface ChangedBodies {
  swept: ReadonlyMap<string, Mesh>;
  /** Largest distance of a mesh from the exact surface, mm. */
  tolerance: number;
}

/** Distances are looked for up to this many gaps. */
const REACH = 3;

/**
 * Measures parts as they were built.
 * @param kinds the toothed ones, each as its first part was made and placed
 * @param pairs whose distances are measured; parts that are not there are an error of the caller
 * @param gap mm; distances are looked for up to three times as far
 * @param changed the parts that a script changed, as they were swept before, and the mesh tolerance, mm
 */
export function measureBodies(
  parts: readonly Part[],
  kinds: readonly ToothedBody[],
  pairs: readonly BodyPair[],
  gap: number,
  changed?: ChangedBodies,
): BodyFindings {
  const first = new Set(firstOfEachKind(parts).map(({ part }) => part));
  const trees = new Map(parts.map(({ name, mesh }) => [name, triangleTree(mesh)]));
  return {
    bodies: parts
      .filter((part) => changed?.swept.has(part.name) || first.has(part))
      .map((part) => measureBody(part, kinds, trees.get(part.name)!, changed)),
    gaps: pairs.map((pair) => {
      const [first, second] = pair.between.map((name) => trees.get(name)!);
      const reach = Math.max(REACH * gap, pair.least ?? 0);
      return { ...pair, distance: leastDistance(first, second, reach)?.distance ?? null };
    }),
    trees,
  };
}

function measureBody(
  part: Part,
  kinds: readonly ToothedBody[],
  tree: TriangleTree,
  changed?: ChangedBodies,
): BodyFinding {
  const kind = kinds.find(({ first }) => first === part.name);
  const before = changed?.swept.get(part.name);
  const swept = kind && before;
  const deviation = kind
    ? kind.deviation(part.mesh, swept && { swept, tolerance: changed!.tolerance })
    : null;
  return {
    name: part.name,
    volume: meshVolume(part.mesh),
    edges: edgeDefects(part.mesh),
    crossings: selfIntersections(part.mesh, tree).length,
    deviation,
    teethLost: swept ? kind.deviation(swept).area - deviation!.area : 0,
  };
}

/** How the first part of a toothed kind is held against its exact surfaces. */
export interface ToothedBody {
  /** Its name. */
  first: string;
  /**
   * @param mesh of that part, in its place
   * @param changed given when a script changed it: the body as it was swept, and the mesh tolerance, mm
   */
  deviation(mesh: Mesh, changed?: { swept: Mesh; tolerance: number }): SurfaceDeviation;
}

/** A gear as it was made and placed. */
export interface MadeGear {
  first: string;
  profile: ToothProfile;
  sweep: Sweep;
  /** What its mesh keeps to, mm. */
  tolerance: number;
  /** Turn about its own axis, radians. */
  rotation: number;
  /** Place of its axis, mm. */
  centre: readonly [number, number];
  /** How high it stands over the bed, mm [0]. */
  lift?: number;
}

/** A gear is measured in its own frame. */
export function toothedGear(gear: MadeGear): ToothedBody {
  const { first, profile, sweep, rotation, centre, lift = 0, tolerance } = gear;
  const back = (mesh: Mesh) =>
    placed(placed(raised(mesh, -lift), 0, [-centre[0], -centre[1]]), -rotation, [0, 0]);
  return {
    first,
    deviation: (mesh, changed) =>
      surfaceDeviation(
        back(mesh),
        profile,
        sweep,
        // Concave sides stand back by that share of how far their facets would stand out.
        BACK * tolerance + ON_SURFACE,
        changed && { ...changed, swept: back(changed.swept) },
      ),
  };
}

/** The gaps between two kinds of parts, in the order measured. */
export function gapsBetween({ gaps }: BodyFindings, [first, second]: readonly string[]): BodyGap[] {
  return gaps.filter(({ between: [a, b] }) => kindOf(a) === first && kindOf(b) === second);
}
