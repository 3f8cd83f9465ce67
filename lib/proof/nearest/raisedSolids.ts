import { compensationOf } from '../../fit/compensation.js';
import { unlessRefused } from '../../refusal.js';
import type { Change } from '../../solid/additions.js';
import type { Part } from '../../solid/mesh.js';
import { ceilThousandth } from '../../spec/nearest.js';
import type { CommonSpec } from '../../spec/types.js';
import { type Check, mustFail } from '../check.js';
import { UNDER } from '../checks/bed.js';

/** What is looked at of a set that is proved. */
interface ProvedParts {
  sheet: { checks: Check[] };
  parts: Part[];
}

/**
 * A set whose script put solids under the bed, told whether they pass every check that stops a job once each stands on
 * it: tried by building and proving the set with them raised.
 * @param prove the same set with another change
 */
export function helpedUnderBed<P extends ProvedParts>(
  proved: P,
  change: Change,
  spec: CommonSpec,
  prove: (change: Change) => ProvedParts,
): P {
  const bed = proved.sheet.checks.find(({ id }) => id === 'bed');
  const up = under(proved.parts, compensationOf(spec).scale);
  // A cut may have taken off what was under it.
  if (bed?.holds !== false || up.size === 0 || !change.raised) return proved;
  const help = passes(change.raised(up), prove)
    ? `; ${[...up].map(([parameter, by]) => `${parameter} ${by} mm higher`).join(', ')} would pass`
    : '; raised onto the bed it does not pass either: a stand is printed by itself, and the set put on it';
  const checks = proved.sheet.checks.map((check) =>
    check === bed ? { ...check, says: check.says + help } : check,
  );
  return { ...proved, sheet: { ...proved.sheet, checks } };
}

/** How much higher, mm, each solid stands that now begins under the bed, by its parameter. */
function under(parts: readonly Part[], scale: number): Map<string, number> {
  const low = parts
    .flatMap(({ added = [] }) => added)
    .filter(({ operation, lowest }) => operation === 'join' && lowest < -UNDER);
  return new Map(low.map(({ parameter, lowest }) => [parameter, ceilThousandth(-lowest / scale)]));
}

function passes(change: Change, prove: (change: Change) => ProvedParts): boolean {
  return unlessRefused(() => !prove(change).sheet.checks.some(mustFail), false);
}
