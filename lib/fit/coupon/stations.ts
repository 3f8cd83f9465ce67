import { Refusal } from '../../refusal.js';
import { lengthOf } from '../../spec/kinds/rack.js';
import { ROUNDING } from '../../spec/nearest.js';
import { resolveSpec } from '../../spec/resolveSpec.js';
import type { CommonSpec, RackSpec } from '../../spec/types.js';
import { sturdyWall } from '../../spec/usual.js';
import { radians } from '../../tooth/gear.js';
import { type FittedTrain, fitDrawn, fitTrain } from '../train/fitTrain.js';
import { trainNumbers } from '../train/trainNumbers.js';
import { keyHole, PINION_SHARE, pinionOf } from './pinion.js';
import { shown } from './readGaps.js';

/** One small gear on its own toothed wall, at its own gap. */
export interface Station {
  /** `pinion-1` …, in the order of the gaps. */
  part: string;
  /** mm, as asked. */
  gap: number;
  spec: RackSpec;
  asked: FittedTrain;
  /** As it is drawn: growth and shrinkage compensated. */
  drawn: FittedTrain;
}

/** The stations of a coupon and what they have in common. Lengths as asked, mm. */
export interface Stations {
  stations: readonly Station[];
  /** What differs from the teeth of the file, each in one sentence. */
  adjustments: string[];
}

/** A coupon's face is this many modules wide, and not less or more than so many mm: to hold pinions, and to be quick. */
const FACE = { modules: 3.5, least: 4, most: 8 };
/** Share of the face that one bevel may take: as deep as the set's wherever that leaves some face in the middle. */
const MOST_BEVEL = 0.34;
/** Finest mesh that a coupon needs, mm: its gaps differ by little. */
const TOLERANCE = 0.004;
/** Lengths that differ by less are told as one, mm. */
const TOLD = 5e-4;
/** Steeper teeth with bevels as deep as theirs take very many triangles: they keep the file's tolerance. */
const STEEP = 40;
/** Helix angle of a coupon where the file's teeth do not hold a pinion along its axis, degrees. */
const ANGLE = 30;
/** Flatter herringbones let a pinion move by more than half the face. */
const LEAST_ANGLE = 15;
/** A pinion rolls at least so far from end to end, in transverse pitches. */
const TRAVEL = 1.25;
/** Least distance of a pinion's tips from the walls beside it, and how much more than the gap it is, mm. */
const WALL_CLEARANCE = { least: 0.4, over: 0.1 };

/** Distance of a pinion's tips from the smooth walls of its slot, mm, as asked. */
export function wallClearance(gap: number): number {
  return Math.max(WALL_CLEARANCE.least, gap + WALL_CLEARANCE.over);
}

/**
 * Small herringbone gears with the teeth of a file, one for each gap, each on a toothed bar of its own.
 * @param like the file whose module, pressure angle, rack, helix, layer, printer and filament they share
 * @param gaps ascending, mm
 * @throws Refusal where such teeth cannot be made; a gap that does not fit them is refused as `gaps`
 */
export function stationsLike(like: CommonSpec, gaps: readonly number[]): Stations {
  const adjustments: string[] = [];
  const { helix } = like;
  const holds = helix.form === 'herringbone' && helix.angle >= LEAST_ANGLE;
  const angle = holds ? helix.angle : ANGLE;
  if (!holds)
    adjustments.push(
      `herringbone teeth at ${ANGLE}° in place of the file's ${helix.form} ones${helix.angle ? ` at ${helix.angle}°` : ''}: they hold the small gears along their axes`,
    );
  if (like.fit.gapShare !== PINION_SHARE)
    adjustments.push(
      `${100 * PINION_SHARE} % of each gap taken from the pinion in place of ${100 * like.fit.gapShare} %: its few teeth have thin tips`,
    );
  const pinion = pinionOf(like, angle, gaps[gaps.length - 1]);
  const faceWidth = wholeLayers(Math.min(like.faceWidth, faceFor(like)), like.printer.layer);
  const common = {
    module: like.module,
    pressureAngle: like.pressureAngle,
    rack: like.rack,
    helix: { form: 'herringbone', angle, hand: helix.hand },
    faceWidth,
    pinion: { ...pinion, bore: keyHole(like, pinion, angle) },
    bar: barOf(like, pinion, { angle, faceWidth, gap: gaps[gaps.length - 1] }),
    printer: like.printer,
    filament: like.filament,
    tolerance: angle > STEEP ? like.tolerance : Math.min(like.tolerance, TOLERANCE),
  };
  const bevel = bevelAt(like, gaps[0], faceWidth).size;
  if (faceWidth < like.faceWidth - TOLD)
    adjustments.push(`faces ${faceWidth} mm wide in place of ${like.faceWidth} mm: quicker to print`);
  if (bevel < like.bevel.size - TOLD)
    adjustments.push(
      `bevels ${bevel} mm deep in place of the file's ${like.bevel.size} mm: they leave a face between them, and no tooth is deeper`,
    );
  const stations = gaps.map((gap, i): Station => {
    const spec = specAt(gap, {
      ...common,
      kind: 'rack',
      bevel: bevelAt(like, gap, faceWidth),
      fit: { gap, gapShare: PINION_SHARE },
    });
    const asked = fitTrain(trainNumbers(spec));
    return { part: `pinion-${i + 1}`, gap, spec, asked, drawn: fitDrawn(asked) };
  });
  return { stations, adjustments };
}

function specAt(gap: number, object: { kind: 'rack'; [key: string]: unknown }): RackSpec {
  try {
    return resolveSpec(object, 'coupon');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const [first, ...rest] = error.problems.map((problem) =>
      problem.parameter === 'fit.gap'
        ? {
            ...problem,
            parameter: 'gaps',
            value: shown(gap),
            rule: `${problem.rule} (as fit.gap)`,
            nearest: problem.nearest.map((value) => shown(Math.floor(Number(value) * 100 + ROUNDING) / 100)),
          }
        : problem,
    );
    throw new Refusal([first, ...rest]);
  }
}

function faceFor({ module }: CommonSpec): number {
  return Math.min(FACE.most, Math.max(FACE.least, FACE.modules * module));
}

/** A bar as long as the pinion needs to roll, its length that of the slot. */
function barOf(
  like: CommonSpec,
  { teeth, profileShift }: { teeth: number; profileShift: number },
  { angle, faceWidth, gap }: { angle: number; faceWidth: number; gap: number },
) {
  const cos = Math.cos(radians(angle));
  const tipDiameter = like.module * (teeth / cos + 2 * (like.rack.addendum + profileShift));
  const sizes = {
    module: like.module,
    helix: { ...like.helix, form: 'herringbone', angle },
    faceWidth,
  } as const;
  const pitch = (Math.PI * like.module) / cos;
  const least = tipDiameter + 2 * wallClearance(gap) + TRAVEL * pitch;
  let count = 1;
  while (lengthOf(count, sizes) < least) count++;
  return {
    teeth: count,
    length: Math.ceil(lengthOf(count, sizes) * 100 + 1) / 100,
    backing: backingOf(like),
  };
}

/** Height of the numbers, mm, and the wall beside them, above and below. */
export const LABEL = { size: 4, margin: 0.9 } as const;

/** The wall behind the teeth carries the number, and is as thick as any bar's. */
function backingOf({ rack, module }: CommonSpec): number {
  return round(Math.max(sturdyWall({ rack, module }), LABEL.size + 2 * LABEL.margin));
}

/** As a set with the file's bevel and this gap has it: no deeper than its teeth stand out. */
function bevelAt({ bevel, rack, module }: CommonSpec, gap: number, faceWidth: number) {
  const byFace = (MOST_BEVEL * faceWidth) / Math.tan(radians(bevel.angle));
  const size = Math.min(bevel.size, rack.addendum * module + gap, byFace);
  return { angle: bevel.angle, size: Math.floor(1000 * size + ROUNDING) / 1000 };
}

/** An even number of layers, so that both halves of a herringbone are alike. */
function wholeLayers(length: number, layer: number): number {
  return round(2 * layer * Math.max(1, Math.round(length / (2 * layer))));
}

function round(length: number): number {
  return Math.round(1000 * length) / 1000;
}
