import type { FittedTrain, PlacedBar, PlacedGear } from '../../fit/trains/fitTrain.js';
import { halfThicknessAt, roundPoints } from '../../tooth/bar.js';
import type { Going } from '../rolling/leastAround.js';
import { nearnesses } from '../rolling/nearnesses.js';
import type { Strand } from '../rolling/outlineDistance.js';
import { type RollingMesh, refinedMesh } from '../rolling/refinedMesh.js';
import { CHORD_SHARE } from '../rolling/rollingError.js';
import {
  cutIntoRuns,
  type PreparedOutline,
  preparedOutline,
  strandsNear,
  type Zone,
} from '../rolling/strandsNear.js';

/** Least gap of a pinion and its mate while they run through a whole pitch, mm. */
export interface TrainRolling {
  /** 0 where teeth run into each other. */
  least: number;
  /** On each flank of the pinion's teeth (clockwise, counter-clockwise side). */
  bySide: [number, number];
  /** Share of the pitch at which it is least. */
  phase: number;
  /** Least at each of the phases looked at first, from 0 on in equal steps. */
  curve: number[];
}

/** Phases simulated through one pitch before less is looked for between them. */
const PHASES = 24;
/** Distances beyond this many gaps are not looked for. */
const REACH = 2;

/**
 * Turns a pinion through one whole pitch, its mate turning or (a bar) sliding with it, in the transverse plane on the
 * exact outlines, and measures the least normal distance, at phases evenly spread and between them. Null for one gear by
 * itself.
 * @param enough where less than this is found no further phases are looked at, mm [all are]
 */
export function rollTrain({ spec, gears, bar }: FittedTrain, enough = 0): TrainRolling | null {
  const [pinion, wheel] = gears;
  if (!wheel && !bar) return null;
  const { gap } = spec.fit;
  const margin = REACH * gap;
  const mesh = meshOf(pinion, wheel, bar, CHORD_SHARE * gap);
  const found: TrainRolling = { least: margin, bySide: [margin, margin], phase: 0, curve: [] };
  for (let step = 0; step < PHASES && !(found.least < enough); step++) {
    const phase = step / PHASES;
    const [least, clockwise, counter] = nearnesses(...mesh.strands(phase, [margin, margin]), margin);
    found.curve.push(least);
    found.bySide = [Math.min(found.bySide[0], clockwise), Math.min(found.bySide[1], counter)];
    if (least < found.least) Object.assign(found, { least, phase });
  }
  if (found.least < enough) return found;
  return { ...found, ...refinedMesh(mesh, PHASES, found, gap) };
}

function meshOf(pinion: PlacedGear, wheel: PlacedGear, bar: PlacedBar | null, sagitta: number): RollingMesh {
  const own = preparedOutline(pinion.profile, sagitta);
  const mate = bar ? slidingBar(bar, sagitta) : turningWheel(wheel, sagitta);
  const { tipRadius } = pinion.profile;
  const turn = (2 * Math.PI) / pinion.gear.teeth;
  return {
    first: { turn, x: 0, y: 0, slide: 0, reach: tipRadius },
    mate: mate.going,
    strands: (phase, [margin, mateMargin]) => [
      strandsNear(own, pinion.rotation + turn * phase, 0, 0, mate.zone(margin)),
      mate.strands(phase, { kind: 'within', x: 0, y: 0, radius: tipRadius + mateMargin }),
    ],
  };
}

/** What a pinion runs with. */
interface Mate {
  going: Going;
  /** Everything within a margin of its teeth, mm. */
  zone(margin: number): Zone;
  /** Its outline within a zone when the pinion has turned by a share of its pitch. */
  strands(phase: number, zone: Zone): Strand[];
}

function turningWheel({ profile, gear, centre: [cx, cy], rotation }: PlacedGear, sagitta: number): Mate {
  const outline = preparedOutline(profile, sagitta);
  const way = gear.internal ? 1 : -1;
  const turn = (way * 2 * Math.PI) / gear.teeth;
  const reach = Math.max(profile.tipRadius, profile.rootRadius);
  return {
    going: { turn, x: cx, y: cy, slide: 0, reach },
    zone: (margin) =>
      gear.internal
        ? { kind: 'beyond', x: cx, y: cy, radius: profile.tipRadius - margin }
        : { kind: 'within', x: cx, y: cy, radius: profile.tipRadius + margin },
    strands: (phase, zone) => strandsNear(outline, rotation + turn * phase, cx, cy, zone),
  };
}

/** A pinion that turns counter-clockwise carries the bar below it towards +x, a pitch for a pitch. */
function slidingBar(bar: PlacedBar, sagitta: number): Mate {
  const outline = barOutline(bar, sagitta);
  const { datum, profile } = bar;
  return {
    going: { turn: 0, x: 0, y: 0, slide: profile.transversePitch, reach: 0 },
    zone: (margin) => ({ kind: 'below', y: datum + profile.tip + margin }),
    strands: (phase, zone) => strandsNear(outline, 0, phase * profile.transversePitch, datum, zone),
  };
}

/** The toothed side of a bar and the pitches beside it, so that teeth are there at every phase. */
function barOutline({ profile, firstTooth, teeth }: PlacedBar, sagitta: number): PreparedOutline {
  const { transversePitch, helixAngle, root, tip } = profile;
  const round = roundPoints(profile, sagitta);
  const tipHalf = halfThicknessAt(profile, tip) / Math.cos(helixAngle);
  const points: number[] = [];
  const segments: number[] = [];
  const add = (x: number, v: number, segment: number) => {
    points.push(x, v);
    segments.push(segment);
  };
  // From +x to −x, as an outline around the body runs; a tooth's segments are numbered as a gear's.
  for (let tooth = teeth; tooth >= -1; tooth--) {
    const middle = firstTooth + tooth * transversePitch;
    for (const [i, [u, v]] of round.entries()) add(middle + u, v, i === round.length - 1 ? 2 : 1);
    add(middle + tipHalf, tip, 3);
    add(middle - tipHalf, tip, 4);
    for (const [i, [u, v]] of round.toReversed().entries())
      add(middle - u, v, i === round.length - 1 ? 0 : 5);
  }
  // Closed far below, where no pinion reaches.
  const away = root - 10 * transversePitch;
  add(points[points.length - 2] - transversePitch, away, 6);
  add(points[0] + transversePitch, away, 6);
  const all = Float64Array.from(points);
  return cutIntoRuns({ points: all, segments: Uint8Array.from(segments) }, shortenings(all, helixAngle));
}

/** A line's normal (n_x, n_y) becomes (n_x, n_y, −n_x tan β) in space when the line is carried along the slant. */
function shortenings(points: Float64Array, helixAngle: number): Float64Array {
  const count = points.length / 2;
  return Float64Array.from({ length: count }, (_, i) => {
    const j = (i + 1) % count;
    const [dx, dy] = [points[2 * j] - points[2 * i], points[2 * j + 1] - points[2 * i + 1]];
    return 1 / Math.hypot(1, (dy / Math.hypot(dx, dy)) * Math.tan(helixAngle));
  });
}
