import type { Check } from '../proof/check.js';
import type { GearRecord, MeshRecord, Sheet } from '../proof/sheetTypes.js';
import { standing } from '../proof/standing.js';

/**
 * The sheet in a few aligned lines of plain text: gears, gaps, then the checks, those that fail first and in
 * full. Lengths in mm, angles in degrees.
 */
export function summaryText(sheet: Sheet): string {
  const told = sheet.checks.filter(({ holds }) => !holds);
  const count = (word: string) => sheet.checks.filter((check) => standing(check) === word).length;
  return [
    sheet.name,
    '',
    ...aligned([gearHead, ...sheet.gears.map(gearRow)]),
    '',
    ...aligned([gapHead, ...sheet.meshes.map(gapRow)]),
    '',
    `checks: ${count('holds')} hold, ${count('fails')} fail, ${count('noted')} noted`,
    ...aligned(byWeight(sheet.checks).map(checkRow)),
    ...told.map((check) => `${check.id}: ${check.says}`),
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

/** Rows of cells as lines; the first column starts at the same place, figures end at the same place. */
function aligned(rows: readonly string[][]): string[] {
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column].length))) ?? [];
  const numeric = widths.map((_, column) => rows.slice(-1).every((row) => /^-?[\d.]/.test(row[column])));
  return rows.map((row) =>
    row.map((cell, i) => (numeric[i] ? cell.padStart(widths[i]) : cell.padEnd(widths[i]))).join('  '),
  );
}
