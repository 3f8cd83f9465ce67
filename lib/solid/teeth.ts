import type { Point } from '../stack/contour.js';
import type { ToothProfile } from '../tooth/profile.js';
import type { OpenSurface } from './stack/stackMesh.js';
import { adaptivePitch } from './sweep/adaptivePitch.js';
import type { Sweep } from './sweep/helix.js';
import type { PitchMesh } from './sweep/pitchMesh.js';
import { NEXT } from './sweep/places.js';

/** The toothed side of a right-handed gear from one end face to the other, with its two open ends: bottom, then top. */
export type Teeth = OpenSurface & {
  ends: readonly [OpenSurface['ends'][number], OpenSurface['ends'][number]];
};

/** Pitches that were made already, to be handed from gear to gear of one set: often sun and planets differ by hand alone. */
export type KnownPitches = Map<string, WholePitch>;

/** A pitch of a right-handed gear from end face to end face; ids from `NEXT` on mean the following pitch. */
interface WholePitch {
  positions: Float64Array;
  triangles: Uint32Array;
  /** Outline in the end faces. */
  bottom: readonly number[];
  top: readonly number[];
}

/**
 * The teeth of a gear, right-handed. Their pitch is taken from `known` where it is there already, and put there otherwise.
 * @param tolerance largest distance from the exact surface, mm
 */
export function teethOf(profile: ToothProfile, sweep: Sweep, tolerance: number, known: KnownPitches): Teeth {
  const key = JSON.stringify([tolerance, profile, { ...sweep, hand: null }]);
  let pitch = known.get(key);
  if (!pitch) {
    pitch = wholePitch(adaptivePitch(profile, sweep, tolerance), sweep);
    known.set(key, pitch);
  }
  return around(pitch, profile, sweep);
}

/** A herringbone pitch gets its upper half as the mirror image of the lower one, sharing the middle vertices. */
function wholePitch({ positions, triangles, bottom, top }: PitchMesh, sweep: Sweep): WholePitch {
  if (sweep.form !== 'herringbone')
    return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles), bottom, top };
  const middle = sweep.faceWidth / 2;
  const lower = positions.length / 3;
  const image = new Uint32Array(lower);
  let count = lower;
  for (let id = 0; id < lower; id++) image[id] = positions[3 * id + 2] === middle ? id : count++;
  const imageOf = (id: number) => (id >= NEXT ? image[id - NEXT] + NEXT : image[id]);

  const both = new Float64Array(3 * count);
  both.set(positions);
  for (let id = 0; id < lower; id++) {
    const at = 3 * image[id];
    both[at] = positions[3 * id];
    both[at + 1] = positions[3 * id + 1];
    both[at + 2] = sweep.faceWidth - positions[3 * id + 2];
  }
  const length = triangles.length;
  const folded = new Uint32Array(2 * length);
  folded.set(triangles);
  for (let i = 0; i < length; i += 3) {
    folded[length + i] = imageOf(triangles[i]);
    folded[length + i + 1] = imageOf(triangles[i + 2]);
    folded[length + i + 2] = imageOf(triangles[i + 1]);
  }
  return { positions: both, triangles: folded, bottom, top: bottom.map(imageOf) };
}

/** The pitch repeated for every tooth. */
function around(pitch: WholePitch, { gear: { teeth, internal } }: ToothProfile, { faceWidth }: Sweep): Teeth {
  const perPitch = pitch.positions.length / 3;
  const positions = new Float64Array(3 * perPitch * teeth);
  const triangles = new Uint32Array(pitch.triangles.length * teeth);
  for (let tooth = 0; tooth < teeth; tooth++) {
    repeat(pitch.positions, (2 * Math.PI * tooth) / teeth, positions, tooth * pitch.positions.length);
    const next = ((tooth + 1) % teeth) * perPitch - NEXT;
    renumber(pitch.triangles, tooth * perPitch, next, internal, triangles, tooth * pitch.triangles.length);
  }
  const bottom = endOutline(pitch.bottom, 0, teeth, perPitch, positions);
  const top = endOutline(pitch.top, faceWidth, teeth, perPitch, positions);
  return { positions, triangles, ends: [bottom, top] };
}

/**
 * Writes the triangles of one tooth to `into`, from `at` on.
 * @param own what is added to its ids, `next` to those of the next tooth
 * @param internal whether they are seen from the other side
 */
function renumber(
  triangles: Uint32Array,
  own: number,
  next: number,
  internal: boolean,
  into: Uint32Array,
  at: number,
): void {
  const second = internal ? 2 : 1;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i];
    const b = triangles[i + second];
    const c = triangles[i + 3 - second];
    into[at + i] = a + (a >= NEXT ? next : own);
    into[at + i + 1] = b + (b >= NEXT ? next : own);
    into[at + i + 2] = c + (c >= NEXT ? next : own);
  }
}

/** The outline of all teeth in an end face. */
function endOutline(
  outline: readonly number[],
  z: number,
  teeth: number,
  perPitch: number,
  positions: Float64Array,
): Teeth['ends'][number] {
  const ids: number[] = [];
  const points: Point[] = [];
  for (let tooth = 0; tooth < teeth; tooth++)
    for (let i = 0; i < outline.length; i++) {
      const id = outline[i];
      const vertex = id >= NEXT ? ((tooth + 1) % teeth) * perPitch + id - NEXT : tooth * perPitch + id;
      ids.push(vertex);
      points.push([positions[3 * vertex], positions[3 * vertex + 1]]);
    }
  return { contour: { z, points }, ids };
}

/** Writes vertices turned about the axis, radians, to `into` from `at` on. */
function repeat(pitch: Float64Array, angle: number, into: Float64Array, at: number): void {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  for (let i = 0; i < pitch.length; i += 3) {
    const x = pitch[i];
    const y = pitch[i + 1];
    into[at + i] = x * cos - y * sin;
    into[at + i + 1] = x * sin + y * cos;
    into[at + i + 2] = pitch[i + 2];
  }
}
