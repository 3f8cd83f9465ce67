import type { Mesh } from '../solid/mesh.js';
import { distanceFrom, type ExactSurface } from '../solid/sweep/exactSurface.js';
import { type Sweep, turnAt } from '../solid/sweep/helix.js';
import { SAMPLES } from '../solid/sweep/samples.js';
import { toothedSurfaces } from '../solid/sweep/surfaces.js';
import type { ToothProfile } from '../tooth/profile.js';
import { sameTriangles } from './mesh/sameTriangles.js';
import { twiceArea } from './mesh/volume.js';

/** A gear's mesh held against the exact surfaces it stands for. */
export interface SurfaceDeviation {
  /** Largest distance of any sampled point of a toothed triangle from its surface, mm. */
  worst: number;
  /** Where, in the gear's own frame, mm. */
  at: [number, number, number];
  /** Triangles on the toothed side that were measured. */
  measured: number;
  /** Triangles on the toothed side whose corners lie on no one exact surface. */
  astray: number;
  /** Area of all that was measured, mm². */
  area: number;
  /** For every triangle of the mesh, 1 where it was measured. */
  toothed: Uint8Array;
}

/** A corner that is put on a surface lies within this distance of it, mm: rounding of doubles, far below any tolerance. */
export const ON_SURFACE = 1e-6;

/**
 * Measures a gear body against its exact helicoids, lands, root surfaces and bevel cones, sampled densely on every
 * triangle, edges included. Knows nothing of how the mesh was made: a triangle belongs to the surface on which all
 * three corners lie. End faces (corners at one height, 0 or the face width) and the wall away from the teeth are
 * left out.
 * @param mesh in the gear's own frame, as `gearBody` makes it
 * @param near how far from it a corner may be that counts as lying on a surface, mm [rounding]
 * @param changed given when a script joined or cut something: triangles that `swept`, the body before, does not have
 * count as what is left of a tooth where they lie within `tolerance` (mm) of its surface, and as added ones elsewhere
 */
export function surfaceDeviation(
  mesh: Mesh,
  profile: ToothProfile,
  sweep: Sweep,
  near = ON_SURFACE,
  changed?: { swept: Mesh; tolerance: number },
): SurfaceDeviation {
  const { positions } = mesh;
  return deviationFrom(
    mesh,
    gearSide(profile, sweep),
    (a, b, c) => isFace(positions, a, b, c, sweep) || isWall(positions, a, b, c, profile),
    near,
    changed,
  );
}

/**
 * The same of any toothed body.
 * @param leftOut whether a triangle, by the places of its corners in `positions`, is no part of the toothed side
 * @param onSurface how far from it a corner may be that counts as lying on a surface, mm
 */
export function deviationFrom<Body, Surface>(
  mesh: Mesh,
  side: ToothedSide<Body, Surface>,
  leftOut: (a: number, b: number, c: number) => boolean,
  onSurface: number,
  changed?: { swept: Mesh; tolerance: number },
): SurfaceDeviation {
  const { positions, triangles } = mesh;
  const found: SurfaceDeviation = {
    worst: 0,
    at: [0, 0, 0],
    measured: 0,
    astray: 0,
    area: 0,
    toothed: new Uint8Array(triangles.length / 3),
  };
  const whole = changed && sameTriangles(mesh, changed.swept);
  const corners = [new Float64Array(3), new Float64Array(3), new Float64Array(3)];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    if (leftOut(a, b, c)) continue;
    const tooth = side.toothOf(side.body, positions, a, b, c);
    carryCorner(side, tooth, positions, a, corners[0]);
    carryCorner(side, tooth, positions, b, corners[1]);
    carryCorner(side, tooth, positions, c, corners[2]);
    const asSwept = whole === undefined || whole[t / 3] === 1;
    const near = asSwept ? onSurface : changed!.tolerance;
    const own = surfacesUnder(side, corners, near);
    const nearest = own.length ? measure(positions, a, b, c, side, own, tooth) : null;
    if (!asSwept && (nearest === null || nearest.off > near)) continue;
    found.measured++;
    found.toothed[t / 3] = 1;
    found.area += twiceArea(positions, a, b, c) / 2;
    if (nearest === null) found.astray++;
    else if (nearest.off > found.worst) [found.worst, found.at] = [nearest.off, nearest.at];
  }
  return found;
}

function carryCorner<Body, Surface>(
  side: ToothedSide<Body, Surface>,
  tooth: number,
  p: Float64Array,
  at: number,
  into: Float64Array,
): void {
  for (let k = 0; k < 3; k++) into[k] = p[at + k];
  side.carry(side.body, tooth, into);
}

/** The surfaces on which all three corners lie. */
function surfacesUnder<Body, Surface>(
  side: ToothedSide<Body, Surface>,
  corners: readonly Float64Array[],
  near: number,
): Surface[] {
  const found: Surface[] = [];
  for (const surface of side.surfaces) {
    let holds = true;
    for (let i = 0; i < 3 && holds; i++) holds = side.distance(surface, corners[i]) < near;
    if (holds) found.push(surface);
  }
  return found;
}

/** Shares of the three corners in every sampled point, three numbers a point. */
const SHARES = Float64Array.from(SAMPLES.flat());

/**
 * Where a triangle's corners lie on two surfaces (along their common edge), the nearer surface counts. This is the hot
 * path: nothing is made at a point.
 */
function measure<Body, Surface>(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  side: ToothedSide<Body, Surface>,
  surfaces: readonly Surface[],
  tooth: number,
): { off: number; at: [number, number, number] } {
  const local = new Float64Array(3);
  const worst = new Float64Array(surfaces.length);
  // Which sample it is that is worst, at 3i.
  const where = new Int32Array(surfaces.length);
  for (let i = 0; i < SHARES.length; i += 3) {
    for (let k = 0; k < 3; k++) local[k] = shared(p, a + k, b + k, c + k, i);
    side.carry(side.body, tooth, local);
    for (let k = 0; k < surfaces.length; k++) {
      const off = side.distance(surfaces[k], local);
      if (off > worst[k]) {
        worst[k] = off;
        where[k] = i;
      }
    }
  }
  let nearest = 0;
  for (let k = 1; k < worst.length; k++) if (worst[k] < worst[nearest]) nearest = k;
  const i = where[nearest];
  return {
    off: worst[nearest],
    at: [shared(p, a, b, c, i), shared(p, a + 1, b + 1, c + 1, i), shared(p, a + 2, b + 2, c + 2, i)],
  };
}

/** One coordinate of a sample, from those of the corners. */
function shared(p: Float64Array, a: number, b: number, c: number, sample: number): number {
  return SHARES[sample] * p[a] + SHARES[sample + 1] * p[b] + SHARES[sample + 2] * p[c];
}

/** Whether a triangle lies in an end face. */
export function isFace(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  { faceWidth }: { faceWidth: number },
): boolean {
  const z = p[a + 2];
  return (
    z === p[b + 2] && z === p[c + 2] && (Math.abs(z) < ON_SURFACE || Math.abs(z - faceWidth) < ON_SURFACE)
  );
}

function isWall(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  { gear, rootRadius }: ToothProfile,
): boolean {
  const beyond = (i: number) => {
    const radius = Math.sqrt(p[i] ** 2 + p[i + 1] ** 2);
    return gear.internal ? radius > rootRadius + ON_SURFACE : radius < rootRadius - ON_SURFACE;
  };
  return beyond(a) && beyond(b) && beyond(c);
}

/**
 * The exact toothed side of a body: its surfaces, and how points are carried back to z = 0 and into one pitch to be asked
 * for. Functions of a module that are handed the body, since what is compiled for a closure is lost with it.
 */
export interface ToothedSide<Body, Surface> {
  body: Body;
  surfaces: readonly Surface[];
  /** Distance of a point as `carry` writes it from a surface, mm. */
  distance(surface: Surface, point: Float64Array): number;
  /** Where the tooth stands that a triangle belongs to, so that all its points are carried to the same pitch. */
  toothOf(body: Body, p: Float64Array, a: number, b: number, c: number): number;
  /**
   * Writes what the surfaces are asked with in place of x, y, z: for a gear radius and polar angle, and always the height
   * above the nearer end face.
   */
  carry(body: Body, tooth: number, point: Float64Array): void;
}

interface GearBody {
  profile: ToothProfile;
  sweep: Sweep;
}

function gearSide(profile: ToothProfile, sweep: Sweep): ToothedSide<GearBody, ExactSurface> {
  return {
    body: { profile, sweep },
    surfaces: toothedSurfaces(profile, sweep),
    distance: distanceFrom,
    toothOf: gearTooth,
    carry: carryToPitch,
  };
}

function gearTooth({ profile, sweep }: GearBody, p: Float64Array, a: number, b: number, c: number): number {
  const pitch = (2 * Math.PI) / profile.gear.teeth;
  const z = (p[a + 2] + p[b + 2] + p[c + 2]) / 3;
  const angle = Math.atan2(p[a + 1] + p[b + 1] + p[c + 1], p[a] + p[b] + p[c]) - turnAt(profile, sweep, z);
  return Math.round(angle / pitch) * pitch;
}

function carryToPitch({ profile, sweep }: GearBody, tooth: number, point: Float64Array): void {
  const x = point[0];
  const y = point[1];
  const z = point[2];
  const angle = Math.atan2(y, x) - tooth - turnAt(profile, sweep, z);
  point[0] = Math.sqrt(x * x + y * y);
  point[1] = angle - Math.round(angle / (2 * Math.PI)) * 2 * Math.PI;
  point[2] = Math.min(z, sweep.faceWidth - z);
}
