import type { Part } from '../../solid/mesh.js';
import { firstOfEachKind } from '../../solid/partKinds.js';
import { directions, likelyPoses, type Placed } from './poses.js';
import { refinePose } from './refinePose.js';
import { marginAt, type Pose } from './smallPartsCylinder.js';

/** Whether one loose part goes wholly into the small-parts cylinder. */
export interface SmallPart {
  /** Kind of the part: `sun`, `planet`, `ring` … */
  part: string;
  fits: boolean;
  /** The best way found to hold it, as directions in its own frame; null when none comes near. */
  orientation: {
    /** Out of the mouth. */
    axis: [number, number, number];
    /** To the deepest side of the floor. */
    deepSide: [number, number, number];
  } | null;
  /** How far, mm, every wall could come in (negative: would have to give way); null when nothing comes near. */
  margin: number | null;
}

/** A part counts as fitting when it lacks no more than this, mm: the search is not finer. */
const SEARCH = 0.01;
/** Directions in which the first extreme points are taken. */
const FIRST_POINTS = 64;
/** Steps tried when many poses are sifted, and when one is made as good as it gets. */
const BRIEF = 300;
const FULL = 2500;
/** Rounds of adding points that stick out. */
const MOST_ROUNDS = 20;

/** Each kind of loose part against the small-parts cylinder. The first part of a kind stands for all of them. */
export function smallParts(parts: readonly Part[]): SmallPart[] {
  return firstOfEachKind(parts).map(({ kind, part: { mesh } }) => ({
    part: kind,
    ...fitsSmallPartsCylinder(mesh.positions),
  }));
}

/**
 * Whether a body goes wholly into the small-parts cylinder in some orientation, uncompressed. The cylinder is
 * convex, so the body's vertices decide.
 * A few extreme points are placed first; while others stick out of the place found, they join. A body whose few
 * points do not fit does not fit; one said to fit has every vertex inside. Between the two stands the search, a
 * dense set of orientations refined: a body that only just fits in one odd way may be missed.
 * @param positions x, y, z of vertex i at 3i, mm
 */
export function fitsSmallPartsCylinder(positions: Float64Array): Omit<SmallPart, 'part'> {
  const points = centred(positions);
  const reach = reachOf(points);
  const chosen = new Set(
    directions(FIRST_POINTS).flatMap((direction) => farthestBothWays(points, direction)),
  );
  const starts = likelyPoses(pick(points, chosen));
  if (!starts.length) return { fits: false, orientation: null, margin: null };
  const refine = (from: Placed, tries = FULL) => refinePose(pick(points, chosen), from, reach, tries);
  const [first, second] = starts.map((start) => refine(start, BRIEF)).sort((a, b) => b.margin - a.margin);
  let best = refine(first);
  if (second) best = better(best, refine(second));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = chosen.size;
    for (const i of stickingOut(points, best)) chosen.add(i);
    if (chosen.size === before) break;
    best = refine(best);
  }
  const margin = marginAt(points, best.pose, best.cx, best.cy);
  const row = (pose: Pose, at: number): [number, number, number] => [pose[at], pose[at + 1], pose[at + 2]];
  return {
    fits: margin >= -SEARCH,
    orientation: { axis: row(best.pose, 6), deepSide: row(best.pose, 0) },
    margin,
  };
}

function better(a: Placed, b: Placed): Placed {
  return b.margin > a.margin ? b : a;
}

/** Points of a body about the middle of its box. */
function centred(positions: Float64Array): Float64Array {
  const points = new Float64Array(positions.length);
  for (let axis = 0; axis < 3; axis++) {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = axis; i < positions.length; i += 3) {
      least = Math.min(least, positions[i]);
      most = Math.max(most, positions[i]);
    }
    for (let i = axis; i < positions.length; i += 3) points[i] = positions[i] - (least + most) / 2;
  }
  return points;
}

function reachOf(points: Float64Array): number {
  let most = 0;
  for (let i = 0; i < points.length; i += 3)
    most = Math.max(most, points[i] ** 2 + points[i + 1] ** 2 + points[i + 2] ** 2);
  return Math.sqrt(most);
}

/** The points farthest along a direction and against it. */
function farthestBothWays(
  points: Float64Array,
  [x, y, z]: readonly [number, number, number],
): [number, number] {
  let most = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  let first = 0;
  let last = 0;
  for (let i = 0; i < points.length; i += 3) {
    const along = x * points[i] + y * points[i + 1] + z * points[i + 2];
    if (along > most) [most, first] = [along, i];
    if (along < least) [least, last] = [along, i];
  }
  return [first, last];
}

function pick(points: Float64Array, chosen: ReadonlySet<number>): Float64Array {
  const picked = new Float64Array(3 * chosen.size);
  let at = 0;
  for (const i of chosen) {
    picked.set(points.subarray(i, i + 3), at);
    at += 3;
  }
  return picked;
}

/** The points that decide the margin of a pose: farthest from the axis, highest, and nearest to the floor. */
function stickingOut(points: Float64Array, { pose, cx, cy }: Placed): number[] {
  const { 0: a, 1: b, 2: c, 3: d, 4: e, 5: f, 6: g, 7: h, 8: k } = pose;
  let farthest = 0;
  let top = Number.NEGATIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  let wall = 0;
  let mouth = 0;
  let floor = 0;
  for (let i = 0; i < points.length; i += 3) {
    const px = points[i];
    const py = points[i + 1];
    const pz = points[i + 2];
    const x = a * px + b * py + c * pz;
    const z = g * px + h * py + k * pz;
    const away = (x - cx) ** 2 + (d * px + e * py + f * pz - cy) ** 2;
    if (away > farthest) [farthest, wall] = [away, i];
    if (z > top) [top, mouth] = [z, i];
    if (x + z < lowest) [lowest, floor] = [x + z, i];
  }
  return [wall, mouth, floor];
}
