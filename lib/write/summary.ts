import type { Check } from '../proof/check.js';
import type { BarRecord, GearRecord, MeshRecord, Sheet } from '../proof/sheetTypes.js';
import { standing } from '../proof/standing.js';
import { aligned, sidesOf } from './aligned.js';
import { type Paint, plain } from './paint.js';

/**
 * The sheet in a few aligned lines of plain text: gears, gaps, then the checks, those that fail first and in
 * full. Lengths in mm, angles in degrees.
 * @param paint colours for a terminal [none]
 */
export function summaryText(sheet: Sheet, paint: Paint = plain): string {
  const told = sheet.checks.filter(({ holds }) => !holds);
  const count = (word: string) => sheet.checks.filter((check) => standing(check) === word).length;
  return [
    paint('head', sheet.name),
    '',
    ...withHead([gearHead, ...sheet.gears.map(gearRow)], paint),
    '',
    ...('bar' in sheet && sheet.bar ? [barLine(sheet.bar), ''] : []),
    ...(sheet.meshes.length ? [...withHead([gapHead, ...sheet.meshes.map(gapRow)], paint), ''] : []),
    `checks: ${count('holds')} hold, ${count('fails')} fail, ${count('noted')} noted`,
    ...checkLines(byWeight(sheet.checks), paint),
    ...told.map((check) => `${paint(standing(check), check.id)}: ${check.says}`),
    ...sheet.adjustments.map((text) => `adjusted: ${text}`),
    ...sheet.cautions.map((text) => `caution: ${text}`),
  ]
    .map((line) => line.trimEnd())
    .join('\n');
}

const gearHead = ['gear', 'count', 'teeth', 'pitch mm', 'tip mm', 'root mm', 'shift', 'helix deg'];

function gearRow(gear: GearRecord): string[] {
  return [
    gear.part,
    String(gear.count),
    String(gear.teeth),
    gear.pitchDiameter.toFixed(3),
    gear.tipDiameter.toFixed(3),
    gear.rootDiameter.toFixed(3),
    gear.profileShift.toFixed(3),
    gear.hand === 'none' ? '0' : `${shown(gear.helixAngle)} ${gear.hand}`,
  ];
}

const gapHead = ['mesh', 'gap asked mm', 'rolling', 'bodies', 'contact ratio', 'centre distance mm'];

function gapRow(mesh: MeshRecord): string[] {
  return [
    mesh.between.join('/'),
    shown(mesh.gap.asked),
    shown(mesh.gap.rollingLeast),
    shown(mesh.gap.bodies),
    (mesh.transverseContactRatio + mesh.overlapRatio).toFixed(3),
    mesh.centreDistance.toFixed(3),
  ];
}

function barLine({ teeth, length, transversePitch, datumHeight }: BarRecord): string {
  return `bar: ${teeth} teeth at ${transversePitch.toFixed(3)} mm, ${length.toFixed(3)} mm long, datum line ${datumHeight.toFixed(3)} mm above its foot`;
}

function withHead(rows: readonly (readonly string[])[], paint: Paint): string[] {
  const [head, ...rest] = aligned(rows, sidesOf(rows));
  return [paint('head', head), ...rest];
}

/** The first word is painted once it is in its place. */
function checkLines(checks: readonly Check[], paint: Paint): string[] {
  const rows = checks.map(checkRow);
  return aligned(rows, sidesOf(rows)).map((line, i) =>
    line.replace(rows[i][0], (word) => paint(standing(checks[i]), word)),
  );
}

function checkRow(check: Check): string[] {
  const unit = check.unit === '1' ? '' : check.unit;
  const figure = check.value === null ? 'not measured' : `${shown(check.value)} ${unit}`;
  return [
    standing(check) === 'fails' ? 'FAILS' : standing(check),
    check.level,
    check.id,
    figure.trim(),
    check.limit === null ? '' : `limit ${shown(check.limit)}`,
  ];
}

/** Failing before holding, then by weight; checks of the same rank keep their order. */
function byWeight(checks: readonly Check[]): Check[] {
  const weight = { must: 0, should: 1, note: 2 };
  const rank = ({ holds, level }: Check) => (holds ? 3 : 0) + weight[level];
  return [...checks].sort((a, b) => rank(a) - rank(b));
}

/** A figure with at most four decimals. */
function shown(value: number | null): string {
  return value === null ? '-' : String(Number(value.toFixed(4)));
}
