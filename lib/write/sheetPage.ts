import type { Sheet } from '../proof/sheetTypes.js';
import { escapeText } from './escape.js';
import { checksSection, verdict } from './sheetPage/checks.js';
import { gearsSection, meshesSection } from './sheetPage/gears.js';
import { list, pageFoot, pageHead, parameters, section } from './sheetPage/html.js';
import type { LiveData } from './sheetPage/live/liveData.js';
import { LIVE_STYLE, liveSection, SCRIPT_SOURCE } from './sheetPage/live/liveSection.js';
import { playSection } from './sheetPage/play.js';
import { printingSection } from './sheetPage/printing.js';
import { STYLE } from './sheetPage/style.js';
import { partsSection, trainSection } from './sheetPage/train.js';

/** The page may load nothing from anywhere: it holds all it shows. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";
/** With the live view, its own script may run too. */
const LIVE_POLICY = `${POLICY}; script-src ${SCRIPT_SOURCE}`;

/**
 * The sheet as one HTML page that needs nothing but itself: verdict, drawing, every check with its figure
 * against its limit, gear and mesh data, readings for calipers and pins, ratios, parts, cautions and
 * adjustments. Readable on a screen of 400 px, by day and by night, and on paper.
 * @param sheet what is known of the set; every text in it is escaped
 * @param drawing an SVG document as `drawSet` makes it, put in as it stands
 * @param live what a view that turns is to show [no such view]
 */
export function sheetPage(sheet: Sheet, drawing: string, live: LiveData | null = null): string {
  const name = escapeText(sheet.name);
  return [
    pageHead(`${sheet.name}: sheet`, live ? LIVE_POLICY : POLICY, `${STYLE}${live ? LIVE_STYLE : ''}`),
    '<header>',
    `<h1>${name}</h1>`,
    verdict(sheet.checks),
    '</header>',
    '<main>',
    section('Cautions', list(sheet.cautions)),
    figureOf(drawing),
    ...(live ? [liveSection(live)] : []),
    checksSection(sheet.checks),
    section('Adjustments', list(sheet.adjustments)),
    gearsSection(sheet.gears),
    meshesSection(sheet.meshes),
    trainSection(sheet.train),
    playSection(sheet.play),
    printingSection(sheet.printing),
    sheet.mounting ? section('Mounting in a panel', list(sheet.mounting.says)) : '',
    partsSection(sheet.parts),
    section('Parameters', parameters('The parameter file with every default filled in', sheet.resolved)),
    '</main>',
    pageFoot(sheet.cogweave),
  ]
    .filter(Boolean)
    .join('\n');
}

function figureOf(drawing: string): string {
  const caption = 'Shrunk to the width of this page; the drawing file prints to scale.';
  return section(
    'Drawing',
    `<figure>\n<div>${drawing.trim()}</div>\n<figcaption>${caption}</figcaption>\n</figure>`,
  );
}
