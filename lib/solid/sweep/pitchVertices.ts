import type { ToothProfile } from '../../tooth/profile.js';
import type { ExactSurface } from './exactSurface.js';
import { bevelHeight, lipHeight, type Sweep, twistRate } from './helix.js';
import type { Steps } from './steps.js';
import { type RimVertex, zipPatch } from './zip.js';

/** A run of triangles of one pitch: which exact surface it stands for, and which of the step sizes governs it. */
export interface Patch {
  kind: 'flank' | 'land' | 'root';
  surface: ExactSurface;
  /** First triangle, and one past the last. */
  from: number;
  to: number;
  /** The first so many triangles stand for all: the others are the same, moved along the helix. */
  alike: number;
  /** How far a triangle on its back stands out over the patch's edge, mm: counts as a deviation. */
  folded: number;
}

/** One pitch while it is being built: right-handed, over one helix. Lengths in mm, angles in radians. */
export interface PitchDraft {
  profile: ToothProfile;
  sweep: Sweep;
  steps: Steps;
  /** Turn for one mm along the axis. */
  rate: number;
  /** Axial length built: the face width, or half of it when herringbone. */
  length: number;
  /** Heights of the vertices along helices up to the foot of the flanks, and along the tip edges, which bevels shorten. */
  levels: number[];
  tipLevels: number[];
  /** True when the upper end is an end face too, with its own bevel. */
  bevelTop: boolean;
  positions: number[];
  triangles: number[];
  patches: Patch[];
}

/** An empty draft with its levels laid out. */
export function startPitch(profile: ToothProfile, sweep: Sweep, steps: Steps): PitchDraft {
  const rate = twistRate(profile, sweep);
  const herringbone = sweep.form === 'herringbone';
  const length = herringbone ? sweep.faceWidth / 2 : sweep.faceWidth;
  const bevel = bevelHeight(sweep);
  const levels = levelsBetween(0, length, rate / steps.rootTurn);
  const tipLevels = levelsBetween(bevel, herringbone ? length : length - bevel, rate / steps.tipTurn);
  return {
    profile,
    sweep,
    steps,
    rate,
    length,
    levels,
    tipLevels,
    bevelTop: !herringbone,
    positions: [],
    triangles: [],
    patches: [],
  };
}

/** Evenly from low to high, both exactly: end faces and the herringbone's middle are known by their height. */
function levelsBetween(low: number, high: number, perMm: number): number[] {
  const count = Math.max(1, Math.ceil((high - low) * perMm - 1e-9));
  return Array.from({ length: count + 1 }, (_, j) => (j === count ? high : low + ((high - low) * j) / count));
}

/**
 * Heights of the vertices along the helix of an outline point on the root side of the bevels: `levels`, squeezed between
 * the lips where there are any.
 */
export function levelsAt({ profile, sweep, levels, length, bevelTop }: PitchDraft, radius: number): number[] {
  const low = lipHeight(profile, sweep, radius);
  if (low === 0) return levels;
  const high = bevelTop ? length - low : length;
  const last = levels.length - 1;
  return levels.map((z, j) => (j === last ? high : low + (z * (high - low)) / length));
}

/** A new vertex: a point of the outline, turned to height z. */
export function addVertex(draft: PitchDraft, [x, y]: readonly [number, number], z: number): number {
  const cos = Math.cos(draft.rate * z);
  const sin = Math.sin(draft.rate * z);
  return draft.positions.push(x * cos - y * sin, x * sin + y * cos, z) / 3 - 1;
}

/** New vertices along the helix of one point of the outline. */
export function addColumn(
  draft: PitchDraft,
  point: readonly [number, number],
  heights: readonly number[] = draft.sweep.lips ? levelsAt(draft, Math.hypot(...point)) : draft.levels,
): number[] {
  const column: number[] = [];
  for (const z of heights) column.push(addVertex(draft, point, z));
  return column;
}

/**
 * Records the triangles that `fill` emits as one patch.
 * @param alike how many of them stand for all [all]
 */
export function addPatch(
  draft: PitchDraft,
  kind: Patch['kind'],
  surface: ExactSurface,
  fill: (emit: (a: number, b: number, c: number) => void) => void,
  alike = Number.POSITIVE_INFINITY,
): void {
  const from = draft.triangles.length / 3;
  fill((a, b, c) => void draft.triangles.push(a, b, c));
  const to = draft.triangles.length / 3;
  draft.patches.push({ kind, surface, from, to, alike: Math.min(alike, to - from), folded: 0 });
}

/** A patch zipped along its straight generators: see `zipPatch`. */
export function addZipped(
  draft: PitchDraft,
  kind: Patch['kind'],
  surface: ExactSurface,
  rim: readonly RimVertex[],
): void {
  addPatch(draft, kind, surface, (emit) => zipPatch(rim, emit));
}

/** A column as rim vertices, upward; `angle` is the ruling angle of its outline point. */
export function rimOf(
  draft: PitchDraft,
  ids: readonly number[],
  heights: readonly number[],
  angle: number,
): RimVertex[] {
  const rim: RimVertex[] = [];
  for (let j = 0; j < ids.length; j++) rim.push({ id: ids[j], ruling: angle + draft.rate * heights[j] });
  return rim;
}

/** The vertex ids of a rim. */
export function idsOf(rim: readonly RimVertex[]): number[] {
  return rim.map((vertex) => vertex.id);
}
