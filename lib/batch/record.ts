import type { Check } from '../proof/check.js';
import type { Sheet } from '../proof/sheetTypes.js';
import { describeProblem, type Problem } from '../refusal.js';
import type { BatchRow, RefusalRecord } from '../write/batchPage.js';
import type { FileRecord } from '../write/digests.js';

/** What is kept of one variant, in `records/NAME.json`: its row of the summary, and what a later run goes by. */
export interface VariantRecord extends BatchRow {
  /** All that the files depend on; null where the parameters themselves are refused. */
  fingerprint: string | null;
  written: FileRecord[];
}

/** The row of a variant of which nothing is known but what it changes. */
export function emptyRow(name: string, overrides: BatchRow['overrides']): BatchRow {
  return {
    name,
    status: 'missing',
    overrides,
    size: null,
    gears: [],
    gaps: [],
    checks: { held: 0, failed: [] },
    triangles: null,
    volume: null,
    files: [],
    refusal: null,
  };
}

/** What a row says of the sheet. Lengths in mm, volume in mm³. */
export function sheetFigures(
  sheet: Sheet,
): Omit<BatchRow, 'name' | 'status' | 'overrides' | 'files' | 'refusal'> {
  const { parts, checks } = sheet;
  const total = (figure: 'triangles' | 'volume') =>
    parts.length ? parts.reduce((sum, part) => sum + part.count * part[figure], 0) : null;
  return {
    size: parts.length ? sides(parts.map(({ bounds }) => bounds)) : null,
    gears: sheet.gears.map(({ part, teeth, count, module }) => ({ part, teeth, count, module })),
    gaps: sheet.meshes.map(({ between, gap }) => ({
      between: between.join('/'),
      asked: gap.asked,
      rolling: gap.rollingLeast,
      bodies: gap.bodies,
    })),
    checks: {
      held: checks.filter(({ holds }) => holds).length,
      failed: checks.filter(({ holds, level }) => !holds && level !== 'note').map(({ id }) => id),
    },
    triangles: total('triangles'),
    volume: total('volume'),
  };
}

/** Problems of the parameters, as a row carries them. */
export function refusalOf(problems: readonly Problem[]): RefusalRecord {
  const [{ code, parameter, value, rule, nearest }] = problems;
  const says = problems.map(describeProblem);
  return { code, parameter, value: short(value), rule, nearest: nearest.map(short), says };
}

/** Checks that stop a job, as a row carries them. */
export function stoppedBy(checks: readonly Check[]): RefusalRecord {
  const [{ id, value, says }] = checks;
  return {
    code: 'check-failed',
    parameter: id,
    value,
    rule: says,
    nearest: [],
    says: checks.map((check) => `${check.id}: ${check.says}`),
  };
}

const LONGEST_VALUE = 200;

/** A value of a hostile file may be large; what it was is seen from its beginning. */
function short(value: unknown): unknown {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > LONGEST_VALUE ? `${text.slice(0, LONGEST_VALUE)}…` : value;
}

function sides(bounds: readonly Sheet['parts'][number]['bounds'][]): [number, number, number] {
  const side = (axis: number) =>
    Math.max(...bounds.map(({ max }) => max[axis])) - Math.min(...bounds.map(({ min }) => min[axis]));
  return [side(0), side(1), side(2)];
}
