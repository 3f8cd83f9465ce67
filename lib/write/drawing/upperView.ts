import { firstOfEachKind, kindOf } from '../../solid/partKinds.js';
import { radians } from '../../tooth/gear.js';
import { polar } from '../../tooth/polar.js';
import { figure } from '../figure.js';
import { boxOf } from './closest.js';
import { cutEnd } from './cutEnd.js';
import { type CutPart, cutFace } from './cutParts.js';
import { arcDimension, dimension } from './dimension.js';
import { type Placing, toPage } from './placing.js';
import { CHAIN, PLAIN, THIN } from './styles.js';
import type { PlacedGear, Subject } from './subject.js';
import { circle, group, line, text } from './svg.js';

/** How far axes run out beyond what they belong to, mm. */
const OVERRUN = 3;

/**
 * The set cut across its axes and looked at from above: hatched parts, reference, tip and root circles, axes, the
 * trace of the axial section, centre distance and the widest opening.
 */
export function upperView(subject: Subject, cut: readonly CutPart[], placing: Placing): string {
  const { gears } = subject;
  const scale = placing.scale ?? 1;
  const round = (gear: PlacedGear, radius: number): string =>
    circle(toPage(gear.centre, placing), scale * radius);
  const [left, , right, top] = boxOf(cut.flatMap(({ loops }) => loops));
  const [[x0, y0], [x1]] = [toPage([left, 0], placing), toPage([right, 0], placing)];
  const teeth = gears.filter(({ radii }) => Number.isFinite(radii.tip));
  return [
    ...cut.map((part) => cutFace(part, placing)),
    group(THIN, ...teeth.flatMap((gear) => [round(gear, gear.radii.tip), round(gear, gear.radii.root)])),
    group(CHAIN, ...teeth.map((gear) => round(gear, gear.radii.reference)), ...axes(subject, placing)),
    group(CHAIN, line([x0 - OVERRUN, y0], [x1 + OVERRUN, y0])),
    cutEnd([x0 - OVERRUN, y0], -1, 'up', 'A'),
    cutEnd([x1 + OVERRUN, y0], 1, 'up', 'A'),
    group(PLAIN, text([MIDDLE_LABEL(x0, x1), toPage([0, top], placing)[1] - 12.5], 'B–B', LABEL)),
    ...distanceOf(subject, top, placing),
    ...openingOf(subject, cut, placing),
  ].join('\n');
}

const LABEL = { size: 4, bold: true, anchor: 'end' } as const;
/** Left of the middle, where no dimension stands. */
const MIDDLE_LABEL = (left: number, right: number): number => (left + right) / 2 - 4;

/** An upright axis through every gear, along the line to the set's axis, and the circle that planets sit on. */
function axes({ gears }: Subject, placing: Placing): string[] {
  const lines = gears.map(({ centre, radii }) => {
    const distance = Math.hypot(...centre);
    const [ux, uy] = distance > 1e-9 ? [centre[0] / distance, centre[1] / distance] : [0, 1];
    const arm = Math.max(radii.tip, radii.root) + OVERRUN / (placing.scale ?? 1);
    const along = (t: number) => toPage([centre[0] + t * ux, centre[1] + t * uy], placing);
    return line(along(-arm), along(arm));
  });
  const planets = gears.filter(({ part }) => kindOf(part) === 'planet');
  const orbit = planets.slice(0, 1).map(({ centre }) => {
    const radius = (placing.scale ?? 1) * Math.hypot(...centre);
    return circle(toPage([0, 0], placing), radius);
  });
  return [...lines, ...orbit];
}

/** The centre distance above the view. */
function distanceOf({ gears, centreDistance }: Subject, top: number, placing: Placing): string[] {
  if (!centreDistance) return [];
  const [one, two] = centreDistance.between.map((name) => gears.find(({ part }) => part === name));
  if (!one || !two) return [];
  const [a, b] = [toPage(one.centre, placing), toPage(two.centre, placing)];
  const up = a[1] - toPage([0, top], placing)[1] + 7;
  return [dimension(a, b, up, figure(centreDistance.value))];
}

/** The widest opening, outside everything else. */
function openingOf({ opening }: Subject, cut: readonly CutPart[], placing: Placing): string[] {
  if (!opening || opening.value <= 0) return [];
  const kinds = firstOfEachKind(cut).map(({ part }) => part);
  const ring = kinds.find(({ name }) => name === 'ring') ?? kinds[kinds.length - 1];
  const rim = Math.max(...ring.loops.flat().map(([x, y]) => Math.hypot(x, y)));
  const radius = rim * (placing.scale ?? 1) + 6;
  const ends = [opening.from, opening.to].map((angle) => polar(1, radians(angle)));
  return [arcDimension(toPage([0, 0], placing), radius, ends, `${figure(opening.value, 2)}° open`)];
}
