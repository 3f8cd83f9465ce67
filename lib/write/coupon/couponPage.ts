import type { CouponSheet, StationRecord } from '../../proof/coupon/couponSheet.js';
import { escapeText } from '../escape.js';
import { figure } from '../figure.js';
import { checksSection, verdict } from '../sheetPage/checks.js';
import { list, pageFoot, pageHead, paragraph, parameters, section, table } from '../sheetPage/html.js';
import { STYLE } from '../sheetPage/style.js';
import { partsSection } from '../sheetPage/train.js';

/** The page may load nothing from anywhere: it holds all it shows. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/**
 * The sheet of a coupon as one HTML page that needs nothing but itself, with what to do with the print and room to
 * write down how each station came out.
 * @param drawing an SVG document as `couponDrawing` makes it; '' for none
 */
export function couponPage(sheet: CouponSheet, drawing: string): string {
  const name = escapeText(sheet.name);
  return [
    pageHead(`${sheet.name}: sheet`, POLICY, STYLE),
    '<header>',
    `<h1>${name}</h1>`,
    verdict(sheet.checks),
    '</header>',
    '<main>',
    section('Cautions', list(sheet.cautions)),
    section('What to do', steps(sheet)),
    stationsSection(sheet.stations),
    gaugeSection(sheet),
    section('Drawing', drawing && `<figure>\n<div>${drawing.trim()}</div>\n</figure>`),
    checksSection(sheet.checks),
    section('Adjustments', list(sheet.adjustments)),
    partsSection(sheet.parts),
    section('Parameters', parameters('What all stations share', sheet.resolved)),
    '</main>',
    pageFoot(sheet.cogweave),
  ]
    .filter(Boolean)
    .join('\n');
}

function steps({ name, printTime, stations: [first] }: CouponSheet): string {
  const words = [
    `Print it flat as it lies, no supports, with the settings that the set will have${printTime ? `: about ${figure(Math.round(printTime.minutes))} minutes (${printTime.how})` : ''}.`,
    'Lift the frame off as one piece, its pinions in it; the gauge lies beside. Turn each pinion with a key or screwdriver in its hole, away from your other hand, from the largest gap to the smallest, and roll it along its slot.',
    'Note how each came out. fused: does not come free. tight: turns only with force. free: turns by itself. loose: rattles or skips.',
    `Log each: cogweave trial log.yaml add --sheet ${name}.sheet.json --gap ${first.gap.asked.toFixed(2)} --outcome fused.`,
    `Put calipers to the gauge and log what they read: cogweave trial log.yaml add --sheet ${name}.sheet.json --reading "length bar = 30.10" --reading "width bar = 16.10" --reading "hole = 9.85".`,
    'Ask for advice, and make the set with it: cogweave trial log.yaml advise --write my-printer.yaml, then cogweave make FILE --out DIR --profile my-printer.yaml.',
  ];
  return `<ol>\n${words.map((step) => `<li>${escapeText(step)}</li>`).join('\n')}\n</ol>`;
}

function stationsSection(stations: readonly StationRecord[]): string {
  const fixed = (value: number | null | undefined, digits: number) =>
    value === null || value === undefined ? '–' : value.toFixed(digits);
  const rows = stations.map(({ part, gap, firstLayer, play }) => [
    `${gap.asked.toFixed(2)}, ${part}`,
    fixed(gap.drawn, 4),
    fixed(gap.rollingLeast, 4),
    fixed(gap.body, 4),
    firstLayer === null ? 'far apart' : fixed(firstLayer, 3),
    fixed(play?.pushedOff, 2),
    '',
  ]);
  const heads = ['Gap', 'Drawn', 'Rolling', 'Measured', 'First layers', 'Axial play', 'How it came out'];
  return section('Stations', table('Gaps of the stations, mm', heads, rows));
}

function gaugeSection({ printing }: CouponSheet): string {
  const rows = printing.sizes.map(({ part, feature, drawn, expected }) => [
    `${part} ${feature}`,
    drawn.toFixed(3),
    expected.toFixed(3),
    '',
  ]);
  const heads = ['Size', 'Drawn', 'Expected on the print', 'What calipers read'];
  const words = `Drawn for walls that stand out by ${figure(printing.growth)} mm and a shrinkage of ${figure(printing.shrinkage)} %. Close the jaws above the bevelled edges.`;
  return section('Gauge', paragraph(words), table('Sizes for calipers, mm', heads, rows));
}
