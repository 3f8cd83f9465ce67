import type { FittedSet } from '../../fit/fitSet.js';
import type { Spec } from '../../spec/types.js';
import { type GearOutline, gearOutline } from '../../tooth/outline.js';
import type { ToothProfile } from '../../tooth/profile.js';
import { chunkBoxes, type Strand, strandsApart } from './outlineDistance.js';

/** Least gap of one kind of mesh while the set turns through a whole pitch, mm. */
export interface RollingGap {
  /** Over all planets and phases; 0 where teeth run into each other. */
  least: number;
  /** On each flank of the planet's teeth (clockwise, counter-clockwise side). */
  bySide: [number, number];
  /** Planet (1 first) and share of the pitch at which it is least. */
  planet: number;
  phase: number;
}

/** Phases simulated through one pitch. */
const PHASES = 24;
/** Chords of the outlines stay this share of the gap from the curves. */
const CHORD_SHARE = 0.003;
/** Distances beyond this many gaps are not looked for. */
const REACH = 2;

/**
 * Turns sun, planets and ring together through one whole pitch with the carrier held, in the transverse plane on
 * the exact outlines, and measures the least normal distance of every mesh at every phase.
 */
export function rollSet(spec: Spec, set: FittedSet): { inner: RollingGap; outer: RollingGap } {
  const { gap } = spec.fit;
  const outlines = {
    sun: prepared(set.profiles.sun, gap),
    planet: prepared(set.profiles.planet, gap),
    ring: prepared(set.profiles.ring, gap),
  };
  const margin = REACH * gap;
  const start = (): RollingGap => ({ least: margin, bySide: [margin, margin], planet: 1, phase: 0 });
  const inner = start();
  const outer = start();
  const { sunTeeth, planetTeeth, ringTeeth } = teethOf(spec);
  for (let step = 0; step < PHASES; step++) {
    const phase = step / PHASES;
    const pitches = 2 * Math.PI * phase;
    set.planets.forEach(({ angle, rotation }, i) => {
      const x = set.centreDistance * Math.cos(angle);
      const y = set.centreDistance * Math.sin(angle);
      const planetTurn = rotation - pitches / planetTeeth;
      const measure = (mate: 'sun' | 'ring', mateTurn: number, into: RollingGap) => {
        const tip = set.profiles[mate].tipRadius;
        const near = (px: number, py: number) =>
          mate === 'sun' ? Math.hypot(px, py) < tip + margin : Math.hypot(px, py) > tip - margin;
        const planetStrands = strands(outlines.planet, planetTurn, x, y, near);
        const reach = set.profiles.planet.tipRadius + margin;
        const mateStrands = strands(
          outlines[mate],
          mateTurn,
          0,
          0,
          (px, py) => Math.hypot(px - x, py - y) < reach,
        );
        record(into, nearnesses(planetStrands, mateStrands, margin), i + 1, phase);
      };
      measure('sun', pitches / sunTeeth, inner);
      measure('ring', set.ringRotation - pitches / ringTeeth, outer);
    });
  }
  return { inner, outer };
}

function teethOf(spec: Spec) {
  return { sunTeeth: spec.sun.teeth, planetTeeth: spec.planets.teeth, ringTeeth: spec.ring.teeth };
}

/** Segments of a tooth by number: see `ToothProfile.segments`. */
const FLANKS = [2, 4] as const;

/** Least distance overall, and on either flank of the planet. */
function nearnesses(planet: Strand[], mate: Strand[], margin: number): [number, number, number] {
  const least = (chosen: Strand[], bound: number) => {
    let found = bound;
    for (const p of chosen) for (const m of mate) found = strandsApart(p, m, found);
    return found;
  };
  const [clockwise, counter] = FLANKS.map((flank) =>
    least(
      planet.filter(({ segment }) => segment === flank),
      margin,
    ),
  );
  const elsewhere = planet.filter(({ segment }) => segment !== FLANKS[0] && segment !== FLANKS[1]);
  return [least(elsewhere, Math.min(clockwise, counter)), clockwise, counter];
}

function record(
  into: RollingGap,
  [least, clockwise, counter]: [number, number, number],
  planet: number,
  phase: number,
) {
  into.bySide = [Math.min(into.bySide[0], clockwise), Math.min(into.bySide[1], counter)];
  if (least < into.least) Object.assign(into, { least, planet, phase });
}

interface Prepared extends GearOutline {
  shortening: Float64Array;
}

/**
 * The outline with its shortening from plane to space. A surface swept along a helix that turns by k per mm has
 * the normal (n, −k r×n) at the point r whose outline normal is n.
 */
function prepared(profile: ToothProfile, gap: number): Prepared {
  const outline = gearOutline(profile, CHORD_SHARE * gap);
  const turn = Math.tan(profile.sizes.helixAngle) / profile.sizes.referenceRadius;
  const count = outline.segments.length;
  const shortening = new Float64Array(count);
  const { points } = outline;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const [dx, dy] = [points[2 * j] - points[2 * i], points[2 * j + 1] - points[2 * i + 1]];
    const [x, y] = [(points[2 * i] + points[2 * j]) / 2, (points[2 * i + 1] + points[2 * j + 1]) / 2];
    const lever = (x * dx + y * dy) / Math.hypot(dx, dy);
    shortening[i] = 1 / Math.sqrt(1 + (turn * lever) ** 2);
  }
  return { ...outline, shortening };
}

/** The runs of an outline, one segment of one tooth each, that have a point where `near` holds, placed. */
function strands(
  outline: Prepared,
  rotation: number,
  dx: number,
  dy: number,
  near: (x: number, y: number) => boolean,
): Strand[] {
  const { points, segments, shortening } = outline;
  const cos = Math.cos(rotation);
  const sin = Math.sin(rotation);
  const count = segments.length;
  const runs: Strand[] = [];
  for (let from = 0; from < count; ) {
    let to = from + 1;
    while (to < count && segments[to] === segments[from]) to++;
    const placed = new Float64Array(2 * (to - from + 1));
    let within = false;
    for (let i = from; i <= to; i++) {
      const x = points[2 * (i % count)];
      const y = points[2 * (i % count) + 1];
      const px = x * cos - y * sin + dx;
      const py = x * sin + y * cos + dy;
      placed[2 * (i - from)] = px;
      placed[2 * (i - from) + 1] = py;
      within ||= near(px, py);
    }
    if (within) {
      const own = shortening.subarray(from, to);
      runs.push({
        points: placed,
        segment: segments[from],
        shortening: own,
        leastShortening: own.reduce((a, b) => Math.min(a, b)),
        boxes: chunkBoxes(placed),
      });
    }
    from = to;
  }
  return runs;
}
