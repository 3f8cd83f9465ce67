import { sentences } from '../fit/adjustment.js';
import type { Train, TrainBar } from '../fit/train/train.js';
import { barPitch } from '../spec/kinds/rack.js';
import type { Spec } from '../spec/types.js';
import { version } from '../version.js';
import { arrangementOf } from './arrangements/arrangementOf.js';
import { cautions } from './cautions.js';
import type { NamingCheck } from './check.js';
import type { AllFindings, PlanFindings } from './findings.js';
import { gearRecords } from './gearRecords.js';
import { meshRecords } from './meshRecords.js';
import { partRecords } from './partRecords.js';
import { printingRecord } from './printing/printingRecord.js';
import type { BarRecord, Sheet, SheetOf } from './sheetTypes.js';

/** The sheet of whatever a file asks for; what was not measured is null or empty. */
export function sheetOf<S extends Spec>(
  found: PlanFindings<S> & Partial<AllFindings<S>>,
  checks: readonly NamingCheck[],
): SheetOf<S> {
  const { spec, numbers, drawnNumbers, parts, bodies } = found;
  const own = arrangementOf(spec);
  const gears = gearRecords(numbers);
  const mounting = own.mounting?.(spec);
  const sheet = {
    name: spec.name,
    resolved: spec,
    gears,
    ...(numbers.bar && { bar: barRecord(numbers, numbers.bar) }),
    meshes: meshRecords(found),
    train: own.record(numbers),
    checks: checks.map(({ sets: _, ...check }) => check),
    parts: parts && bodies ? partRecords(parts, bodies) : [],
    play: found.play ?? null,
    printing: printingRecord(numbers, drawnNumbers, gears),
    ...(mounting && { mounting }),
    cautions: cautions(
      { smallParts: found.smallParts, fingerGaps: own.fingerGaps?.(found) },
      { ...spec.filament, name: spec.filament.material },
    ),
    adjustments: sentences(found.adjustments ?? numbers.adjustments),
    cogweave: version,
  };
  return sheet as Sheet as SheetOf<S>;
}

function barRecord({ spec }: Train, bar: TrainBar): BarRecord {
  const rootHeight = bar.backing;
  return {
    teeth: bar.teeth,
    module: bar.bar.module,
    transversePitch: barPitch(spec),
    length: bar.length,
    datumHeight: rootHeight - bar.root,
    rootHeight,
    tipHeight: rootHeight - bar.root + bar.tip,
    helixAngle: bar.bar.helixAngle,
    hand: spec.helix.form === 'spur' ? 'none' : bar.hand,
  };
}
