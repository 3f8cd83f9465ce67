import { compensationOf } from '../fit/compensation.js';
import { boundsOf } from '../proof/partRecords.js';
import type { Part } from '../solid/mesh.js';
import { firstOfEachKind, kindOf } from '../solid/partKinds.js';
import type { Spec } from '../spec/types.js';
import { version } from '../version.js';
import { axialView } from './drawing/axialView.js';
import { boxOf, type Closest, closestPlace } from './drawing/closest.js';
import { type CutPart, cutParts } from './drawing/cutParts.js';
import { DETAIL_SIZE, detailMark, detailScale, detailView, gapWords } from './drawing/detailView.js';
import { gearRows, meshRows } from './drawing/gearTable.js';
import { itemNumbers } from './drawing/itemNumbers.js';
import { layoutFor, MARGIN, PAPER, scaleText } from './drawing/layout.js';
import { type Placing, toPage } from './drawing/placing.js';
import { axialPlane, levelPlane } from './drawing/section.js';
import { sectionHeight } from './drawing/sectionHeight.js';
import { THIN } from './drawing/styles.js';
import type { Mates, Subject } from './drawing/subject.js';
import { subjectOf } from './drawing/subjectOf.js';
import { group, rectangle } from './drawing/svg.js';
import { ROW, table } from './drawing/table.js';
import { TITLE_WIDTH, type Title, titleBlock, titleHeight } from './drawing/titleBlock.js';
import { upperView } from './drawing/upperView.js';
import { escapeText } from './escape.js';
import { figure } from './figure.js';

/**
 * The set as a workshop drawing on A4, one SVG document in mm: a section across the axes with reference, tip and root
 * circles, a section along the axis, the narrowest mesh enlarged with its gap, the sizes that matter, gear data. Views
 * are to a usual scale that is stated. Cut from the finished meshes, at the sizes that are to be printed (growth and
 * shrinkage left out). The same text for the same input.
 * @param parts those meshes, where they are at hand [built here]; left unused where the file compensates growth or
 * shrinkage, because parts are then made otherwise than they are to come out
 * @throws Refusal when the teeth cannot be made
 */
export function drawSet(spec: Spec, parts?: readonly Part[]): string {
  const { growth, scale } = compensationOf(spec);
  const asPrinted = growth === 0 && scale === 1 ? parts : undefined;
  return drawSubject(subjectOf(spec, asPrinted), spec);
}

/** Gear data beside the title block, and columns of figures in them, mm. */
const NAMES = { gears: 37, meshes: 58 };
const FIGURES = 21;

/** How far a drawn outline may leave the mesh, mm. */
const CHORD = 0.01;

/** Draws any kind of subject. */
function drawSubject(subject: Subject, spec: Spec): string {
  const { parts } = subject;
  const kinds = firstOfEachKind(parts).map(({ part }) => kindOf(part.name));
  const item = (part: string): number => kinds.indexOf(part) + 1;
  const gearData = gearRows(subject, spec.rack, spec.pressureAngle, item);
  const meshData = meshRows(subject);
  const left = ROW * (gearData.length + (subject.meshes.length ? meshData.length : 0));
  const { level: height } = sectionHeight(subject);
  // An outline may leave the mesh by what no printed line shows.
  const across = cutParts(parts, levelPlane(height), CHORD);
  const axial = cutParts(parts, axialPlane(0), CHORD);
  // A part that neither section meets, such as a clamp ring lying beside, needs no room.
  const box = boundsOf(parts.filter((part) => [...across, ...axial].some(({ name }) => name === part.name)));
  const draft = titleOf(subject, kinds, 1);
  const tallest = Math.max(left, titleHeight(draft) + (subject.mates.length ? DETAIL_SIZE.height : 0));
  const { scale, upper, lower } = layoutFor(
    { width: box.max[0] - box.min[0], depth: box.max[1] - box.min[1], height: box.max[2] - box.min[2] },
    tallest,
  );
  const middle = (axis: 0 | 1 | 2): number => (box.min[axis] + box.max[axis]) / 2;
  const above: Placing = { at: upper, about: [middle(0), middle(1)], scale };
  const along: Placing = { at: lower, about: [middle(0), middle(2)], scale };
  const [right, bottom] = [PAPER.width - MARGIN.right, PAPER.height - MARGIN.bottom];
  const title = titleOf(subject, kinds, scale);
  const tables = [
    table([MARGIN.left, bottom - left], gearData, { names: NAMES.gears, figures: FIGURES }),
    subject.meshes.length
      ? table([MARGIN.left, bottom - ROW * meshData.length], meshData, {
          names: NAMES.meshes,
          figures: FIGURES,
        })
      : '',
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${PAPER.width}mm" height="${PAPER.height}mm" viewBox="0 0 ${PAPER.width} ${PAPER.height}" role="img">`,
    `<title>${escapeText(`${subject.name}: drawing, ${subject.title}, sections across and along the axis`)}</title>`,
    group({ fill: '#fff', stroke: 'none' }, rectangle([0, 0], PAPER.width, PAPER.height)),
    group(
      { ...THIN, 'stroke-width': 0.5 },
      rectangle([MARGIN.left, MARGIN.top], right - MARGIN.left, bottom - MARGIN.top),
    ),
    upperView(subject, across, above),
    itemNumbers(
      parts.map(({ name }) => name),
      across,
      above,
      upper[0] - (scale * (box.max[0] - box.min[0])) / 2 - 14,
      toPage([0, 0], above)[1],
    ),
    axialView(subject, axial, height, along),
    detailOf(subject, across, above, [right - TITLE_WIDTH, bottom - tallest]),
    ...tables,
    titleBlock([right - TITLE_WIDTH, bottom - titleHeight(title)], title),
    '</svg>\n',
  ]
    .filter(Boolean)
    .join('\n');
}

/** The narrowest of the meshes, enlarged. */
function detailOf(
  subject: Subject,
  cut: readonly CutPart[],
  above: Placing,
  corner: readonly [number, number],
): string {
  const found = subject.mates.flatMap((mates) => {
    const [one, other] = mates.between.map((name) => cut.find((part) => part.name === name));
    const place = one && other ? closestPlace(one.loops, other.loops, mates.pitchPoint) : null;
    return place ? [{ mates, place }] : [];
  });
  if (!found.length) return '';
  const narrowest = found.reduce<{ mates: Mates; place: Closest }>(
    (best, next) => (next.place.distance < 0.97 * best.place.distance ? next : best),
    found[0],
  );
  const { mates, place } = narrowest;
  const [{ module }] = subject.records;
  const { teeth, pitchDiameter } = subject.records[0];
  const enlarged = detailScale(Math.max(module, pitchDiameter / teeth));
  const meshing = cut.filter(({ name }) => mates.between.includes(name));
  const gears = subject.gears.filter(({ part }) => mates.between.includes(part));
  const words = [mates.between.map(kindOf).join(' and '), ...gapWords(mates.gap, mates.gapAcross)];
  return [
    detailMark(place, enlarged, above, rightOf(cut, above)),
    detailView(meshing, gears, place, enlarged, corner, words),
  ].join('\n');
}

/** Page x of the right edge of what is cut. */
function rightOf(cut: readonly CutPart[], above: Placing): number {
  const [, , right] = boxOf(cut.flatMap(({ loops }) => loops));
  return toPage([right, 0], above)[0];
}

function titleOf(subject: Subject, kinds: readonly string[], scale: number): Title {
  const gears = subject.records.map(({ part }) => String(part));
  const others = kinds.filter((kind) => !gears.includes(kind));
  return {
    name: subject.name,
    subject: subject.title,
    facts: [
      ...others.map((kind) => [`Item ${kinds.indexOf(kind) + 1}`, kind.replaceAll('-', ' ')] as const),
      ...subject.mates.slice(0, 1).map(({ gap }) => ['Gap between flanks, normal', figure(gap)] as const),
      ...subject.facts,
      ['Scale', scaleText(scale)],
      ['Dimensions', 'mm, as printed'],
      ['Sheet', 'A4'],
      ['Drawn by', `cogweave ${version}`],
    ],
  };
}
