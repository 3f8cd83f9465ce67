import type { FittedTrain, PlacedBar, PlacedGear } from '../../fit/train/fitTrain.js';
import type { Place } from '../../fit/train/place.js';
import { gearIn, type TrainMesh } from '../../fit/train/train.js';
import { halfThicknessAt, roundPoints } from '../../tooth/bar.js';
import type { Going } from './leastAround.js';
import { nearnesses } from './nearnesses.js';
import type { Strand } from './outlineDistance.js';
import { type RollingMesh, refinedMesh } from './refinedMesh.js';
import { CHORD_SHARE } from './rollingError.js';
import { cutIntoRuns, type PreparedOutline, preparedOutline, strandsNear, type Zone } from './strandsNear.js';

/** Least gap of one mesh of a train while it runs through a whole pitch, mm. */
export interface RollingGap {
  /** The mate: the side that `bySide` is not of. */
  of: string;
  /** Over all copies and all phases, those between the ones of `curve` too; 0 where teeth run into each other. */
  least: number;
  /** On each flank (clockwise, counter-clockwise side) of the planet's teeth, or of the first gear's. */
  bySide: [number, number];
  /** Copy (1 first) and share of the pitch at which it is least. */
  copy: number;
  phase: number;
  /** The two, as a message calls them. */
  mates: [string, string];
  /** Least over all copies at each of the phases looked at first, from 0 on in equal steps. */
  curve: number[];
}

/** Phases simulated through one pitch before less is looked for between them. */
const PHASES = 24;
/** Distances beyond this many gaps are not looked for. */
const REACH = 2;

/**
 * Turns a train through one whole pitch, axes held, a bar sliding with its pinion, in the transverse plane on the exact
 * outlines, and measures the least normal distance of every mesh. Every planet is looked at at phases evenly spread;
 * between them the first one (all others pass through the same phases, which the check `assembly` sees to), and whichever
 * comes nearest.
 * @param enough where less than this is found no further phases are looked at, mm [all are]
 */
export function rollTrain(train: FittedTrain, enough = 0): RollingGap[] {
  const sagitta = CHORD_SHARE * train.spec.fit.gap;
  const outlines = new Map(train.gears.map(({ part, profile }) => [part, preparedOutline(profile, sagitta)]));
  return train.meshes.map((mesh) => {
    const [own, mate] = sides(train, mesh);
    const outline = outlines.get(own.part)!;
    const copies = own.places.flatMap((place) =>
      matesOf(train, mate, outlines, sagitta).map((other) => meshOf(own, place, outline, other)),
    );
    const { copy, ...found } = rolled(copies, train.spec.fit.gap, enough);
    const of = mate?.part ?? 'bar';
    const mates: [string, string] = own.orbits ? [of, `${own.part} ${copy}`] : [own.part, of];
    return { of, copy, mates, ...found };
  });
}

/** Of a mesh the gear whose flanks are told apart, a planet before others; and its mate, null for a bar. */
function sides(train: FittedTrain, { between }: TrainMesh): [PlacedGear, PlacedGear | null] {
  const [one, two] = between.map((part) => (part === 'bar' ? null : gearIn(train, part)));
  return two?.orbits ? [two, one] : [one!, two];
}

function matesOf(
  { bar }: FittedTrain,
  mate: PlacedGear | null,
  outlines: ReadonlyMap<string, PreparedOutline>,
  sagitta: number,
): Mate[] {
  if (!mate) return [slidingBar(bar!, sagitta)];
  return mate.places.map((place) => turningMate(mate, place, outlines.get(mate.part)!));
}

/** The least gap of one kind of mesh, by its copies. */
function rolled(
  meshes: readonly RollingMesh[],
  gap: number,
  enough: number,
): Omit<RollingGap, 'of' | 'mates'> {
  const margin = REACH * gap;
  const found = {
    least: margin,
    bySide: [margin, margin] as [number, number],
    copy: 1,
    phase: 0,
    curve: [] as number[],
  };
  for (let step = 0; step < PHASES && !(found.least < enough); step++) {
    const all = meshes.map((mesh) => nearnesses(...mesh.strands(step / PHASES, [margin, margin]), margin));
    found.curve.push(Math.min(margin, ...all.map(([least]) => least)));
    for (const [i, [least, clockwise, counter]] of all.entries()) {
      found.bySide = [Math.min(found.bySide[0], clockwise), Math.min(found.bySide[1], counter)];
      if (least < found.least) Object.assign(found, { least, copy: i + 1, phase: step / PHASES });
    }
  }
  if (found.least < enough) return found;
  for (const copy of new Set([found.copy, 1])) {
    const refined = refinedMesh(meshes[copy - 1], PHASES, found, gap);
    if (refined.least < found.least) found.copy = copy;
    Object.assign(found, refined);
  }
  return found;
}

/** One copy of a mesh. */
function meshOf(
  { gear, profile, way }: PlacedGear,
  { centre: [x, y], rotation }: Place,
  outline: PreparedOutline,
  mate: Mate,
): RollingMesh {
  const { tipRadius } = profile;
  const turn = (way * 2 * Math.PI) / gear.teeth;
  return {
    first: { turn, x, y, slide: 0, reach: tipRadius },
    mate: mate.going,
    strands: (phase, [margin, mateMargin]) => [
      strandsNear(outline, rotation + turn * phase, x, y, mate.zone(margin)),
      mate.strands(phase, { kind: 'within', x, y, radius: tipRadius + mateMargin }),
    ],
  };
}

/** What a gear runs with. */
interface Mate {
  going: Going;
  /** Everything within a margin of its teeth, mm. */
  zone(margin: number): Zone;
  /** Its outline within a zone when the train has run on by a share of a pitch. */
  strands(phase: number, zone: Zone): Strand[];
}

function turningMate(
  { profile, gear, way }: PlacedGear,
  { centre: [x, y], rotation }: Place,
  outline: PreparedOutline,
): Mate {
  const turn = (way * 2 * Math.PI) / gear.teeth;
  const reach = Math.max(profile.tipRadius, profile.rootRadius);
  return {
    going: { turn, x, y, slide: 0, reach },
    zone: (margin) =>
      gear.internal
        ? { kind: 'beyond', x, y, radius: profile.tipRadius - margin }
        : { kind: 'within', x, y, radius: profile.tipRadius + margin },
    strands: (phase, zone) => strandsNear(outline, rotation + turn * phase, x, y, zone),
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
