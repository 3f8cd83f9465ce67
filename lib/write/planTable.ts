import { USUAL_RIM } from '../spec/usual.js';
import { merits } from '../train/merit.js';
import type { PlanRow } from '../train/planRow.js';
import type { Plan } from '../train/planSets.js';
import type { ResolvedWanted, Span } from '../train/planWanted.js';
import { aligned } from './aligned.js';

/**
 * A plan in aligned lines of plain text: what was searched for, the sets found with the number that `--row` takes,
 * then the near misses with the reason each one fails. Lengths in mm, angles in degrees.
 */
export function planTable({ wanted, rows, nearMisses }: Plan): string {
  const lines = [...headLines(wanted), ''];
  if (rows.length)
    lines.push(
      ...aligned(
        [['row', ...heads(wanted)], ...rows.map((row, i) => [String(i + 1), ...cells(row, wanted)])],
        'right',
      ),
    );
  else lines.push('no set answers this');
  if (rows.length < wanted.limit) lines.push(...moreLines(wanted));
  if (nearMisses.length) {
    const missed = aligned([heads(wanted), ...nearMisses.map((row) => cells(row, wanted))], 'right');
    lines.push('', 'near misses, each for one reason:', `${missed[0]}  fails`);
    lines.push(...nearMisses.map(({ fails }, i) => `${missed[i + 1]}  ${fails}`));
  }
  return lines.join('\n');
}

/** What else could be searched, where little was found. */
function moreLines({ shifts, spacing }: ResolvedWanted): string[] {
  const more = [
    ...(shifts === 'none' ? ['--shifts solve: teeth with profile shifts'] : []),
    ...(spacing === 'equal' ? ['--spacing nearest: planets at uneven angles'] : []),
  ];
  return more.length ? ['', `not searched: ${more.join('; ')}`] : [];
}

const heads = ({ shifts, spacing }: ResolvedWanted) => [
  'sun',
  'planet',
  'ring',
  'planets',
  'module',
  ...(shifts === 'solve' ? ['x sun', 'x planet', 'x ring'] : []),
  ...(spacing === 'nearest' ? ['spacing', 'unbal %'] : []),
  'outer mm',
  'open deg',
  'drop mm',
  'ring held',
  'carrier held',
  'sun held',
  'engagement',
  'merit',
];

function cells(row: PlanRow, { shifts, spacing }: ResolvedWanted): string[] {
  const { sun, planet, ring } = row.profileShifts;
  return [
    ...[row.sunTeeth, row.planetTeeth, row.ringTeeth, row.planets, row.module].map(String),
    ...(shifts === 'solve' ? [sun, planet, ring].map((shift) => shift.toFixed(3)) : []),
    ...(spacing === 'nearest' ? [row.spacing, (100 * row.unbalance).toFixed(2)] : []),
    row.outerDiameter.toFixed(2),
    row.opening.arc.toFixed(2),
    row.opening.drop.toFixed(2),
    ...[row.ratios.ringHeld, row.ratios.carrierHeld, row.ratios.sunHeld].map((ratio) => ratio.toFixed(3)),
    row.engagement.toFixed(3),
    row.merit.toFixed(4),
  ];
}

function headLines(wanted: ResolvedWanted): string[] {
  const { helixForm, helixAngle, gap, module, bed, largest, rim, by } = wanted;
  const helix = helixForm === 'spur' ? 'spur' : `${helixForm} at ${helixAngle}°`;
  const rimText = rim === null ? `rim of ${USUAL_RIM}` : `rim ${rim} mm`;
  const most = Math.min(bed, largest ?? bed);
  const hole = wanted.hole === null ? '' : `, to go into a hole of ${wanted.hole} mm`;
  const form = `${helix}, pressure angle ${wanted.pressureAngle}°`;
  return [
    `teeth: ${form}, face width ${wanted.faceWidth} mm, gap ${gap} mm, ${rimText}, at most ${most} mm across${hole}`,
    `searched: sun ${span(wanted.sunTeeth)}, planet ${span(wanted.planetTeeth)}, ring ${span(wanted.ringTeeth)} teeth, ${span(wanted.planets)} planets, module ${module.join(', ')}`,
    ...(wanted.shifts === 'solve'
      ? [
          'with profile shifts x too: ring teeth up to 2 more or fewer than sun + 2 × planet, and teeth undercut or refused without',
        ]
      : []),
    `merit ${by}: ${merits[by].says}`,
  ];
}

function span({ least, most }: Span): string {
  return least === most ? String(least) : `${least}–${most}`;
}
