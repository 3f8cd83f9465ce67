import type { ToothProfile } from '../tooth/profile.js';
import { blankOf, type Wall } from './blank.js';
import type { Mesh } from './mesh.js';
import type { Contour, Point } from './stack/contour.js';
import type { Face } from './stack/stack.js';
import { stackMesh } from './stack/stackMesh.js';
import { adaptivePitch } from './sweep/adaptivePitch.js';
import type { Sweep } from './sweep/helix.js';
import type { PitchMesh } from './sweep/pitchMesh.js';
import { NEXT } from './sweep/places.js';

/** However coarse the tolerance, chords stay this share of the module from the surface: coarser teeth cut into themselves. */
const COARSEST = 0.04;

/**
 * A gear as a closed body in its own frame: axis on z, end faces at 0 and the face width, at z = 0 the first
 * tooth on +x. A left-hand gear is the exact mirror y → −y of the right-hand one, features included.
 * @param tolerance largest distance of the mesh from the exact surface, mm
 */
export function gearBody(profile: ToothProfile, sweep: Sweep, wall: Wall, tolerance: number): Mesh {
  const { teeth, internal } = profile.gear;
  const pitch = wholePitch(
    adaptivePitch(profile, sweep, Math.min(tolerance, COARSEST * profile.gear.module)),
    sweep,
  );
  const perPitch = pitch.positions.length / 3;
  const positions = new Float64Array(3 * perPitch * teeth);
  repeatAround(pitch.positions, teeth, positions);

  const global = (id: number, tooth: number) =>
    id >= NEXT ? ((tooth + 1) % teeth) * perPitch + id - NEXT : tooth * perPitch + id;
  const triangles = new Uint32Array(pitch.triangles.length * teeth);
  // An internal gear's teeth are seen from the other side.
  const [second, third] = internal ? [2, 1] : [1, 2];
  for (let tooth = 0, at = 0; tooth < teeth; tooth++)
    for (let i = 0; i < pitch.triangles.length; i += 3, at += 3) {
      triangles[at] = global(pitch.triangles[i], tooth);
      triangles[at + 1] = global(pitch.triangles[i + second], tooth);
      triangles[at + 2] = global(pitch.triangles[i + third], tooth);
    }
  const end = (ids: readonly number[], z: number) => {
    const around = Array.from({ length: teeth }, (_, tooth) => ids.map((id) => global(id, tooth))).flat();
    return { contour: { z, points: pointsAt(positions, around) }, ids: around };
  };
  const ends = { bottom: end(pitch.bottom, 0), top: end(pitch.top, sweep.faceWidth) };

  const { rim, feature } = blankOf(wall, sweep.faceWidth, tolerance);
  const endFace = (at: 'bottom' | 'top'): Face => {
    const looks = at === 'bottom' ? 'down' : 'up';
    const teethLoop: Contour = ends[at].contour;
    const holes = feature.holes[at] ?? [];
    return rim ? { looks, outer: rim[at], holes: [teethLoop, ...holes] } : { looks, outer: teethLoop, holes };
  };
  const mesh = stackMesh(
    { walls: feature.walls, faces: [endFace('bottom'), endFace('top'), ...feature.faces] },
    { positions, triangles, ends: [ends.bottom, ends.top] },
  );
  return sweep.hand === 'left' ? mirrorY(mesh) : mesh;
}

function pointsAt(positions: Float64Array, ids: readonly number[]): Point[] {
  return ids.map((id) => [positions[3 * id], positions[3 * id + 1]]);
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
    const x = lower.positions[3 * id];
    const y = lower.positions[3 * id + 1];
    const z = lower.positions[3 * id + 2];
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

/** Mirrored in place. */
function mirrorY({ positions, triangles }: Mesh): Mesh {
  for (let i = 1; i < positions.length; i += 3) positions[i] = -positions[i];
  for (let i = 0; i < triangles.length; i += 3) {
    const second = triangles[i + 1];
    triangles[i + 1] = triangles[i + 2];
    triangles[i + 2] = second;
  }
  return { positions, triangles };
}
