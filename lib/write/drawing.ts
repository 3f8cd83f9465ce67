import { type PartOutline, setOutlines } from '../solid/setOutlines.js';
import { planetaryOnly } from '../spec/kinds.js';
import type { PlanetarySpec, Spec } from '../spec/types.js';
import { gearSizes } from '../tooth/gear.js';
import { setGears } from '../train/setGears.js';
import { DETAIL_RADIUS, detailMark, detailScale, detailView } from './drawing/detailView.js';
import { dimension } from './drawing/dimension.js';
import { gearTable, gearTableSize } from './drawing/gearTable.js';
import { type FlankGap, flankGap } from './drawing/lineOfAction.js';
import { kindOf, type Placing, toPage } from './drawing/outlines.js';
import { partNumbers } from './drawing/partNumbers.js';
import { sectionView } from './drawing/sectionView.js';
import { MARGIN, sheetFor } from './drawing/sheetSize.js';
import { hatchDefinitions, THIN } from './drawing/styles.js';
import { group, num, type PagePoint, rectangle } from './drawing/svg.js';
import { TITLE_WIDTH, type Title, titleBlock, titleHeight } from './drawing/titleBlock.js';
import { escapeText } from './escape.js';
import { figure } from './figure.js';

/** Room around the set for dimensions and part numbers, and between the views, mm. */
const AROUND = 16;

/**
 * The set as a drawing to scale, one SVG document in mm: transverse section with the true outlines of the
 * teeth, reference, tip and root circles, axes, outer diameter, centre distance, the gap in an enlarged
 * detail, gear data. On the smallest sheet of the A series that holds it at full size. The same text for the
 * same input.
 * @throws Refusal when the teeth cannot be made
 */
export function drawSet(spec: Spec): string {
  return drawPlanetary(planetaryOnly(spec));
}

function drawPlanetary(spec: PlanetarySpec): string {
  const gears = setOutlines({ ...spec, tolerance: drawnTolerance(spec) });
  const outer = Math.max(...gears.map((gear) => gear.outer ?? gear.radii.tip));
  const table = gearTableSize(spec);
  const gap = gapOf(spec, gears);
  const detail = gap ? 2 * DETAIL_RADIUS + AROUND : 0;
  const facts = titleOf(spec, '');
  const blocks = Math.max(table.height, titleHeight(facts));
  const sheet = sheetFor(
    Math.max(2 * (outer + AROUND), table.width + TITLE_WIDTH),
    2 * (outer + AROUND) + detail + blocks,
  );
  const frame = {
    width: sheet.width - MARGIN.left - MARGIN.right,
    height: sheet.height - MARGIN.top - MARGIN.bottom,
  };
  const [right, bottom] = [sheet.width - MARGIN.right, sheet.height - MARGIN.bottom];
  const middle = MARGIN.left + frame.width / 2;
  const spare = frame.height - 2 * (outer + AROUND) - detail - blocks;
  const placing: Placing = { at: [middle, MARGIN.top + outer + AROUND + spare / 3] };
  const detailAt: PagePoint = [middle - DETAIL_RADIUS, bottom - blocks - detail / 2 - spare / 3];
  const title = titleOf(spec, sheet.name);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(sheet.width)}mm" height="${num(sheet.height)}mm" viewBox="0 0 ${num(sheet.width)} ${num(sheet.height)}" role="img">`,
    `<title>${escapeText(`${spec.name}: drawing of the gear set, transverse section`)}</title>`,
    hatchDefinitions(),
    group({ fill: '#fff', stroke: 'none' }, rectangle([0, 0], sheet.width, sheet.height)),
    group({ ...THIN, 'stroke-width': 0.5 }, rectangle([MARGIN.left, MARGIN.top], frame.width, frame.height)),
    sectionView(gears, placing),
    dimensions(gears, outer, placing),
    partNumbers(gears, outer, placing),
    ...(gap ? detailOf(spec, gears, gap, detailAt, placing) : []),
    gearTable([right - TITLE_WIDTH - table.width, bottom - table.height], spec, gears),
    titleBlock([right - TITLE_WIDTH, bottom - titleHeight(title)], title),
    '</svg>\n',
  ].join('\n');
}

/** Chords that stay within 0.05 mm of the true outline on paper, enlarged detail included. */
function drawnTolerance(spec: PlanetarySpec): number {
  const { transverseModule } = gearSizes(setGears(spec).sun);
  return Math.min(spec.tolerance, 0.05 / detailScale(transverseModule));
}

function titleOf(spec: PlanetarySpec, sheet: string): Title {
  return {
    name: spec.name,
    subject: 'Planetary gear set, transverse section',
    facts: [
      ['Gap between flanks, normal, parts centred', figure(spec.fit.gap)],
      ['Teeth', 'whole, without end bevels'],
      ['Scale', '1 : 1'],
      ['Dimensions', 'mm'],
      ['Sheet', sheet],
      ['Drawn by', 'cogweave'],
    ],
  };
}

function gapOf(spec: PlanetarySpec, gears: readonly PartOutline[]): FlankGap | null {
  const { sun, planet } = setGears(spec);
  const [one, two] = (['sun', 'planet'] as const).map((kind) => gears.find((gear) => kindOf(gear) === kind));
  if (!one || !two) return null;
  const ratio = sun.teeth / (sun.teeth + planet.teeth);
  return flankGap(one, two, ratio, [gearSizes(sun).baseRadius, gearSizes(planet).baseRadius]);
}

function detailOf(
  spec: PlanetarySpec,
  gears: readonly PartOutline[],
  gap: FlankGap,
  at: PagePoint,
  placing: Placing,
): string[] {
  const { transverseModule, baseHelixAngle } = gearSizes(setGears(spec).sun);
  const scale = detailScale(transverseModule);
  const mates = gears.filter(
    (gear) => gear.name === 'sun' || gear === gears.find((g) => kindOf(g) === 'planet'),
  );
  const words = [`gap ${figure(spec.fit.gap)} normal to the flanks,`, 'the same to both sides'];
  if (baseHelixAngle > 0)
    words.push(`(${figure(spec.fit.gap / Math.cos(baseHelixAngle))} across this section)`);
  return [detailMark(gap, scale, placing), detailView(mates, gap, scale, at, words)];
}

/** Outer diameter below the set and centre distance above it. */
function dimensions(gears: readonly PartOutline[], outer: number, placing: Placing): string {
  const page = (x: number, y: number): PagePoint => toPage([x, y], placing);
  const planet = gears.find((gear) => kindOf(gear) === 'planet');
  const below = dimension(page(-outer, 0), page(outer, 0), -(outer + 9), `⌀ ${figure(2 * outer)}`);
  if (!planet) return below;
  const distance = Math.hypot(...planet.centre);
  const above = dimension(page(0, 0), page(...planet.centre), outer + 7, figure(distance));
  return [below, above].join('\n');
}
