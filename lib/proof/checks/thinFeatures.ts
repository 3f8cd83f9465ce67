import { boreRadius } from '../../features/bore.js';
import type { Train } from '../../fit/train/train.js';
import { ranges } from '../../spec/ranges.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import type { Thinness } from '../printing/thinness.js';
import type { TallWall, ThinPlace } from '../printing/thinPlaces.js';
import { rimThickness } from './rim.js';

/** A wall that stands by itself. */
export interface ThinWall {
  what: string;
  /** As drawn, mm. */
  thickness: number;
  /** What in the file would make it thicker. */
  mend: string;
}

/**
 * The tallest wall for its thickness, as drawn: a ring's rim outside its root circle, a gear's wall between bore and
 * root circle, a bar's backing, each as high as the face is wide; no record where there is none. Common practice, no source.
 */
export function thinFeatures({ spec, drawnNumbers }: PlanFindings): Check[] {
  const walls = wallsOf(drawnNumbers);
  return walls.length ? [thinWalls(walls, drawnNumbers.spec.faceWidth, spec.limits.thinness)] : [];
}

/** Rings first. */
function wallsOf({ gears, bar }: Train): ThinWall[] {
  const rings = gears.filter(({ gear }) => gear.internal);
  const bored = gears.filter(({ bore }) => bore.shape !== 'none');
  return [
    ...rings.map((ring) => ({
      what: `the ${ring.part}'s rim`,
      thickness: rimThickness(ring),
      mend: `a thicker ${ring.key}.rim`,
    })),
    ...bored.map(({ part, radii, bore }) => ({
      what: `the ${part}'s wall around its bore`,
      thickness: radii.root - boreRadius(bore),
      mend: 'a smaller bore',
    })),
    ...(bar ? [{ what: "the bar's backing", thickness: bar.backing, mend: 'a thicker bar.backing' }] : []),
  ];
}

/** The same of any walls of one height, mm. */
export function thinWalls(walls: readonly ThinWall[], height: number, limit: number): Check {
  const thinnest = walls.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const ratio = height / thinnest.thickness;
  const holds = ratio <= limit;
  return {
    id: 'thin-features',
    holds,
    level: 'should',
    value: ratio,
    limit,
    unit: '1',
    says:
      `${thinnest.what} is ${thinnest.thickness.toFixed(2)} mm thick and ${height.toFixed(1)} mm high, ${ratio.toFixed(1)} times as high as thick` +
      (holds
        ? ''
        : `; ${mended(height, limit, thinnest.mend)}${lower(limit, thinnest.thickness)} would pass`),
  };
}

/** A face width that a file can hold; nothing where that would be less. */
function lower(limit: number, thickness: number): string {
  const faceWidth = Math.floor(10 * limit * thickness) / 10;
  return faceWidth >= ranges.faceWidth[0] ? ` or faceWidth ${faceWidth.toFixed(1)}` : '';
}

function mended(height: number, limit: number, mend: string): string {
  return `${mend} that leaves ${(Math.ceil((100 * height) / limit) / 100).toFixed(2)} mm of wall`;
}

/**
 * The same with what was measured on the meshes of parts that a script changed: walls that hold no line, slots that fuse,
 * and walls too high for their thickness. What is too thin to print goes before what is too high.
 * @param numbers the check of the walls that the file describes; null for a file without
 */
export function thinFeaturesMeasured(
  numbers: Check | null,
  bodies: readonly (Thinness & { name: string })[],
  limit: number,
): Check {
  const thin = bodies
    .flatMap(({ name, thinnest }) => (thinnest ? [{ name, ...thinnest }] : []))
    .sort((a, b) => a.thickness / a.least - b.thickness / b.least);
  const tall = bodies
    .flatMap(({ name, tallest }) => (tallest ? [{ name, ...tallest }] : []))
    .sort((a, b) => b.height / b.thickness - a.height / a.thickness);
  const found = [...thin.map(thinInWords), ...tall.map((wall) => tallInWords(wall, limit))];
  const says = [...(numbers ? [numbers.says] : []), ...(found.length ? found : [NOTHING_THIN])].join('; ');
  const base = { id: 'thin-features', holds: false, level: 'should', says } as const;
  if (thin.length) return { ...base, value: thin[0].thickness, limit: thin[0].least, unit: 'mm' };
  const ratio = tall.length ? tall[0].height / tall[0].thickness : null;
  const value = Math.max(ratio ?? 0, numbers?.value ?? 0);
  return {
    ...base,
    holds: ratio === null && (numbers?.holds ?? true),
    value: ratio === null && !numbers ? null : value,
    limit,
    unit: '1',
  };
}

const NOTHING_THIN = 'nothing that a script added or left is too thin to print';

function thinInWords({ name, between, thickness, least, at }: ThinPlace & { name: string }): string {
  const place = at.map((x) => x.toFixed(1)).join(', ');
  return between === 'wall'
    ? `${name} is ${thickness.toFixed(3)} mm thick at ${place}, where a line takes ${least.toFixed(2)} mm: it does not print, or only as a crumb`
    : `${name} has a slot of ${thickness.toFixed(3)} mm at ${place}, where only ${least.toFixed(2)} mm stay open: it fuses`;
}

function tallInWords({ name, thickness, height, at }: TallWall & { name: string }, limit: number): string {
  const ratio = (height / thickness).toFixed(1);
  return `a wall of ${name} at ${at.map((x) => x.toFixed(1)).join(', ')} is ${thickness.toFixed(2)} mm thick and ${height.toFixed(1)} mm high, ${ratio} times as high as thick, where ${limit} times would pass`;
}
