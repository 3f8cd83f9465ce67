import type { Mesh } from '../../solid/mesh.js';
import { leastDistance } from '../mesh/leastDistance.js';
import type { DistanceTree } from '../mesh/triangleTree.js';
import { movedTree } from '../motion/movedTree.js';
import { type Mates, partOf, type Scene, type ToothZone } from './scene.js';
import { relativeMotion, type Turning } from './turning.js';

/** Phases of a pitch at which the meshes of mates are measured, the printed one first. */
export const PHASES = 12;
/** Distances are looked for up to this many gaps. */
const REACH = 2;
/** Rounding of heights, mm. */
const ON_FACE = 1e-6;

/** The least distance of two mates over the phases of a pitch. */
export interface ToothGap {
  /** mm; null where it is more than was looked for at every phase. */
  distance: number | null;
  point: [number, number, number];
  /** Share of a pitch. */
  phase: number;
}

/** Measures the toothed sides of two finished meshes at equal steps through a pitch. */
export function toothPhases(
  mates: Mates,
  turnings: readonly [Turning, Turning],
  { slab: [from, to], herringbone, gap, pitch }: Pick<Scene, 'slab' | 'herringbone' | 'gap' | 'pitch'>,
): ToothGap {
  const reach = REACH * gap;
  const slab: [number, number] = [from, herringbone ? (from + to) / 2 : to];
  const margin = reach + pitch / 2;
  const [first, second] = mates.meshes.map((mesh, i) => toothed(mesh, slab, mates.zones[1 - i], margin));
  const found: ToothGap = { distance: null, point: [0, 0, 0], phase: 0 };
  if (!first || !second) return found;
  for (let step = 0; step < PHASES; step++) {
    // Half a pitch either way.
    const phase = step / PHASES - (step > PHASES / 2 ? 1 : 0);
    const moved = movedTree(first, relativeMotion(turnings[0], turnings[1], phase), [0, 0, 0]);
    const near = leastDistance(moved, second, found.distance ?? reach);
    if (near && near.distance < (found.distance ?? Number.POSITIVE_INFINITY))
      Object.assign(found, { distance: near.distance, point: near.pointB, phase: step / PHASES });
  }
  return found;
}

/**
 * The toothed side of a body as far as its mate may reach it within half a pitch. End faces are left out: where both bodies end
 * at the same heights, the nearest point is never in the middle of one.
 */
function toothed(
  mesh: Mesh,
  slab: readonly [number, number],
  zone: ToothZone,
  margin: number,
): DistanceTree | null {
  const { positions: p, triangles } = mesh;
  const [from, to] = slab;
  return partOf(mesh, (t) => {
    const a = 3 * triangles[3 * t];
    const b = 3 * triangles[3 * t + 1];
    const c = 3 * triangles[3 * t + 2];
    const low = Math.min(p[a + 2], p[b + 2], p[c + 2]);
    const high = Math.max(p[a + 2], p[b + 2], p[c + 2]);
    if (low < from - ON_FACE || high > to + ON_FACE) return false;
    if (high - low < ON_FACE && (low - from < ON_FACE || to - high < ON_FACE)) return false;
    return mayReach(
      zone,
      margin,
      Math.min(p[a], p[b], p[c]),
      Math.max(p[a], p[b], p[c]),
      Math.min(p[a + 1], p[b + 1], p[c + 1]),
      Math.max(p[a + 1], p[b + 1], p[c + 1]),
    );
  });
}

/** Whether a box seen along z may have a point within a zone, widened by a margin. */
function mayReach(zone: ToothZone, margin: number, x0: number, x1: number, y0: number, y1: number): boolean {
  if (zone.kind === 'below') return y0 < zone.y + margin;
  const [x, y] = zone.centre;
  if (zone.kind === 'within') {
    const dx = Math.max(0, x0 - x, x - x1);
    const dy = Math.max(0, y0 - y, y - y1);
    return dx * dx + dy * dy < (zone.radius + margin) ** 2;
  }
  const dx = Math.max(Math.abs(x0 - x), Math.abs(x1 - x));
  const dy = Math.max(Math.abs(y0 - y), Math.abs(y1 - y));
  return dx * dx + dy * dy > (zone.radius - margin) ** 2;
}
