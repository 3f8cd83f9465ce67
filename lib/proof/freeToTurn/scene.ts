import type { Mesh } from '../../solid/mesh.js';
import { type DistanceTree, triangleTree } from '../mesh/triangleTree.js';
import type { Turning } from './turning.js';

/** One body that takes part in the motion, as printed or where it is used. */
export interface MovingBody {
  /** As the sheet calls it. */
  name: string;
  turning: Turning;
  tree: DistanceTree;
  /**
   * Of a toothed body what stands outside the body that its teeth are cut in, so that rolling teeth say nothing about it:
   * a foot, letters that stand up, what a script joined. Null for nothing.
   */
  outside?: DistanceTree | null;
  /** Bodies with the same word are copies of each other, each turned about its own axis [its name]. */
  copyOf?: string;
  /** It may be put on its gear in more ways than one, so that no turn of it is left out. */
  anyTurn?: boolean;
}

/** Two toothed bodies in mesh. */
export interface Mates {
  between: [string, string];
  /** As swept, before a script changed them: no tooth comes nearer than these do. */
  meshes: [Mesh, Mesh];
  /** Where the teeth of each are, which the other one reaches into. */
  zones: [ToothZone, ToothZone];
  /** Mates with the same word pass through the same places in every pitch. */
  cycle: string;
}

/** Within a circle, beyond one, or below a height, mm. */
export type ToothZone =
  | { kind: 'within' | 'beyond'; centre: readonly [number, number]; radius: number }
  | { kind: 'below'; y: number };

/** A body on its seat is lifted by this much, so that faces that lie on each other do not count as crossing, mm. */
export const HAIR = 1e-3;

/** All that moves, and what is asked of it. Lengths in mm. */
export interface Scene {
  bodies: MovingBody[];
  mates: Mates[];
  /** Bodies that lie against each other where they are used, by name; they must not run into each other. */
  seated: readonly (readonly [string, string])[];
  /** Parts that lie beside the others on the bed. */
  loose: { name: string; tree: DistanceTree }[];
  /** Everything on the bed. */
  printed: ReadonlyMap<string, DistanceTree>;
  /** End faces of the toothed bodies, from and to. */
  slab: [number, number];
  /** Both halves of a herringbone are the same, mirrored. */
  herringbone: boolean;
  /** Circumferential pitch at the tips, at most. */
  pitch: number;
  /** Pitches that a bar slides by from end to end; 0 without one. */
  travel: number;
  gap: number;
  /** How far a measured distance may be below what is asked. */
  allowed: number;
  /** What two bodies keep. */
  least(a: string, b: string): number;
}

/**
 * A tree of the triangles of a mesh that are kept; null where there are none. It is an open surface, which nothing lies
 * inside of, so it has no corners to be asked for that.
 */
export function partOf(mesh: Mesh, keeps: (triangle: number) => boolean): DistanceTree | null {
  const { positions, triangles } = mesh;
  const kept: number[] = [];
  for (let t = 0; t < triangles.length; t += 3)
    if (keeps(t / 3)) kept.push(triangles[t], triangles[t + 1], triangles[t + 2]);
  if (!kept.length) return null;
  return { ...triangleTree({ positions, triangles: Uint32Array.from(kept) }), shellPoints: [] };
}
