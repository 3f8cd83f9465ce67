import type { ToothProfile } from '../tooth/profile.js';
import { circle } from './bore.js';
import { fillPlane } from './cap.js';
import type { Mesh } from './mesh.js';
import { adaptivePitch } from './sweep/adaptivePitch.js';
import type { Sweep } from './sweep/helix.js';
import type { PitchMesh } from './sweep/pitchMesh.js';
import { NEXT } from './sweep/pitchVertices.js';

/** What bounds a gear body on the side away from its teeth. Lengths in mm. */
export type Wall =
  /** A bore through an external gear, its outline counter-clockwise; empty for a solid gear. */
  | { bore: readonly [number, number][] }
  /** The outer radius of a ring. */
  | { rimRadius: number };

/** However coarse the tolerance, chords stay this share of the module from the surface: coarser teeth cut into themselves. */
const COARSEST = 0.04;

/**
 * A gear as a closed body in its own frame: axis on z, end faces at 0 and the face width, at z = 0 the first
 * tooth on +x. A left-hand gear is the exact mirror y → −y of the right-hand one.
 * @param tolerance largest distance of the mesh from the exact surface, mm
 */
export function gearBody(profile: ToothProfile, sweep: Sweep, wall: Wall, tolerance: number): Mesh {
  const { teeth, internal } = profile.gear;
  const pitch = wholePitch(
    adaptivePitch(profile, sweep, Math.min(tolerance, COARSEST * profile.gear.module)),
    sweep,
  );
  const perPitch = pitch.positions.length / 3;
  const wallOutline = 'bore' in wall ? wall.bore : circle(wall.rimRadius, tolerance);
  const positions = new Float64Array(3 * (perPitch * teeth + 2 * wallOutline.length));
  repeatAround(pitch.positions, teeth, positions);

  const global = (id: number, tooth: number) =>
    id >= NEXT ? ((tooth + 1) % teeth) * perPitch + id - NEXT : tooth * perPitch + id;
  const around = (ids: readonly number[]) =>
    Array.from({ length: teeth }, (_, tooth) => ids.map((id) => global(id, tooth))).flat();

  const triangles: number[] = [];
  const addTriangles = (ids: readonly number[], flip: boolean) => {
    for (let i = 0; i < ids.length; i += 3)
      if (flip) triangles.push(ids[i], ids[i + 2], ids[i + 1]);
      else triangles.push(ids[i], ids[i + 1], ids[i + 2]);
  };
  for (let tooth = 0; tooth < teeth; tooth++)
    addTriangles(
      pitch.triangles.map((id) => global(id, tooth)),
      internal,
    );

  const wallBottom: number[] = [];
  const wallTop: number[] = [];
  wallOutline.forEach(([x, y], i) => {
    const at = perPitch * teeth + 2 * i;
    positions.set([x, y, 0, x, y, sweep.faceWidth], 3 * at);
    wallBottom.push(at);
    wallTop.push(at + 1);
  });
  addTriangles(wallQuads(wallBottom, wallTop), !internal);

  const face = (teethLoop: number[], wallLoop: number[]) =>
    fillPlane(
      internal ? [wallLoop, teethLoop] : wallLoop.length ? [teethLoop, wallLoop] : [teethLoop],
      positions,
    );
  addTriangles(face(around(pitch.bottom), wallBottom), true);
  addTriangles(face(around(pitch.top), wallTop), false);

  const mesh = { positions, triangles: Uint32Array.from(triangles) };
  return sweep.hand === 'left' ? mirrorY(mesh) : mesh;
}

/** A herringbone pitch gets its upper half as the mirror image of the lower one, sharing the middle vertices. */
function wholePitch(
  lower: PitchMesh,
  sweep: Sweep,
): Pick<PitchMesh, 'positions' | 'triangles' | 'bottom' | 'top'> {
  if (sweep.form !== 'herringbone') return lower;
  const positions = [...lower.positions];
  const image: number[] = [];
  const middle = sweep.faceWidth / 2;
  for (let id = 0; 3 * id < lower.positions.length; id++) {
    const [x, y, z] = lower.positions.slice(3 * id, 3 * id + 3);
    image.push(z === middle ? id : positions.push(x, y, sweep.faceWidth - z) / 3 - 1);
  }
  const imageOf = (id: number) => (id >= NEXT ? image[id - NEXT] + NEXT : image[id]);
  const triangles = [...lower.triangles];
  for (let i = 0; i < lower.triangles.length; i += 3)
    triangles.push(
      imageOf(lower.triangles[i]),
      imageOf(lower.triangles[i + 2]),
      imageOf(lower.triangles[i + 1]),
    );
  return { positions, triangles, bottom: lower.bottom, top: lower.bottom.map(imageOf) };
}

function repeatAround(pitch: readonly number[], teeth: number, into: Float64Array): void {
  for (let tooth = 0; tooth < teeth; tooth++) {
    const cos = Math.cos((2 * Math.PI * tooth) / teeth);
    const sin = Math.sin((2 * Math.PI * tooth) / teeth);
    for (let i = 0; i < pitch.length; i += 3) {
      const at = tooth * pitch.length + i;
      into[at] = pitch[i] * cos - pitch[i + 1] * sin;
      into[at + 1] = pitch[i] * sin + pitch[i + 1] * cos;
      into[at + 2] = pitch[i + 2];
    }
  }
}

/** The prism wall between two equal loops, wound for an outward normal. */
function wallQuads(bottom: readonly number[], top: readonly number[]): number[] {
  return bottom.flatMap((id, i) => {
    const next = (i + 1) % bottom.length;
    return [id, bottom[next], top[next], id, top[next], top[i]];
  });
}

function mirrorY({ positions, triangles }: Mesh): Mesh {
  const mirrored = positions.slice();
  for (let i = 1; i < mirrored.length; i += 3) mirrored[i] = -mirrored[i];
  const turned = triangles.slice();
  for (let i = 0; i < turned.length; i += 3)
    [turned[i + 1], turned[i + 2]] = [triangles[i + 2], triangles[i + 1]];
  return { positions: mirrored, triangles: turned };
}
