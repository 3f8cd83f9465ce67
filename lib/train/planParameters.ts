import { printerProfiles } from '../spec/profiles/printers.js';
import type { PlanRow } from './planRow.js';
import type { ResolvedWanted } from './planWanted.js';

/** What of a row a parameter file states. */
export type RowCounts = Pick<
  PlanRow,
  'sunTeeth' | 'planetTeeth' | 'ringTeeth' | 'planets' | 'module' | 'spacing' | 'profileShifts'
>;

/**
 * The parameter file of a row, as plain data for `resolveSpec`: everything that was asked of the search, so that
 * the set made is the one that was found. Lengths in mm, angles in degrees.
 */
export function planParameters(row: RowCounts, wanted: ResolvedWanted) {
  const shifts = row.profileShifts;
  const usual = printerProfiles.usual.bed;
  // Of a bed that is named only the sides are known: nothing is said against gears higher than the usual one.
  const height = Math.max(usual.height, wanted.faceWidth);
  const bed = wanted.bed === usual.width ? {} : { bed: { width: wanted.bed, depth: wanted.bed, height } };
  return {
    kind: 'planetary' as const,
    module: row.module,
    pressureAngle: wanted.pressureAngle,
    rack: wanted.rack,
    helix: { form: wanted.helixForm, angle: wanted.helixAngle, hand: 'right' as const },
    faceWidth: wanted.faceWidth,
    sun: { teeth: row.sunTeeth, profileShift: shifts.sun },
    planets: {
      teeth: row.planetTeeth,
      count: row.planets,
      spacing: row.spacing,
      profileShift: shifts.planet,
    },
    ring: {
      teeth: row.ringTeeth,
      profileShift: shifts.ring,
      ...(wanted.rim === null ? {} : { rim: wanted.rim }),
    },
    fit: { gap: wanted.gap },
    printer: { ...(wanted.nozzle === null ? {} : { nozzle: wanted.nozzle }), ...bed },
  };
}
