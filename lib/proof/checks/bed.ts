import type { Part } from '../../solid/mesh.js';
import { kindOf } from '../../solid/partKinds.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import { printerProfiles } from '../../spec/profiles/printers.js';
import { ranges } from '../../spec/ranges.js';
import type { CommonSpec, Spec } from '../../spec/types.js';
import { wallsOf } from '../../spec/walls.js';
import type { Check } from '../check.js';
import { meshBounds } from '../mesh/volume.js';
import type { Change } from '../nearest/changes.js';
import { sayWays } from '../nearest/words.js';

/**
 * Sides of the box around all parts, as they lie on the bed, against the room that the printer has. A `must` once the
 * file says which printer it is, by its name or its bed; until then the usual bed is only what most have.
 * The bed is z = 0, and nothing may lie under it, whatever the printer: the set would be printed standing on that, and
 * all the rest of it in the air.
 * @param help what is said of a set that finds no room [sizes that would fit]
 */
export function bed({ spec, parts }: { spec: Spec; parts: readonly Part[] }, help = advice): Check {
  const boxes = parts.map(({ mesh }) => meshBounds(mesh));
  const lowest = Math.min(...boxes.map(({ min }) => min[2]));
  const sides = [0, 1, 2].map(
    (axis) => Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis])),
  );
  const { width, depth, height } = spec.printer.bed;
  const rooms = [width, depth, height];
  const over = sides.map((side, i) => side - rooms[i]);
  const worst = over.indexOf(Math.max(...over));
  const holds = over[worst] <= ROUNDING;
  const size = (lengths: readonly number[]) => lengths.map((length) => length.toFixed(1)).join(' × ');
  const room = `the set is ${size(sides)} mm; ${namesPrinter(spec) ? 'the printer has' : 'a usual printer has'} room for ${size(rooms)} mm`;
  if (lowest < -UNDER)
    return {
      id: 'bed',
      holds: false,
      level: 'must',
      value: lowest,
      limit: 0,
      unit: 'mm',
      says: `${[...new Set(parts.flatMap((part, i) => underBed(part, boxes[i].min[2])))].join(', ')} under the bed, z = 0; ${room}`,
    };
  return {
    id: 'bed',
    holds,
    level: namesPrinter(spec) ? 'must' : 'should',
    value: sides[worst],
    limit: rooms[worst],
    unit: 'mm',
    says: room + (holds ? '' : help(spec, sides, parts)),
  };
}

/** How far below the bed a corner counts as under it, mm: modelling scripts round, and nothing prints that fine. */
export const UNDER = 1e-4;

/** Says how deep a part reaches, and by which of a script's solids; nothing for one that stands on the bed. */
function underBed({ name, unlike, added = [] }: Part, lowest: number): string[] {
  if (lowest >= -UNDER) return [];
  const by = added.filter((one) => one.operation === 'join' && one.lowest < -UNDER);
  const solids = by.map(({ parameter }) => parameter).join(', ');
  return [`${unlike ? name : kindOf(name)} reaches ${(-lowest).toFixed(2)} mm${solids && ` (${solids})`}`];
}

function namesPrinter({ printer: { profile, bed: own } }: CommonSpec): boolean {
  const { bed: usual } = printerProfiles.usual;
  const sides = ['width', 'depth', 'height'] as const;
  return profile !== 'usual' || sides.some((side) => own[side] !== usual[side]);
}

/** Rounding of doubles in a set that fills its bed, mm. */
const ROUNDING = 1e-9;

/** Wall that stays as it is at any module, mm; gears with teeth outside have none. */
function rimOf(spec: Spec): number {
  return spec.kind === 'planetary' ? spec.ring.rim : (wallsOf(spec)[0] ?? 0);
}

/** Everything but the rim grows with the module; offers are rounded to the safe side. */
function advice(spec: Spec, [x, y, z]: readonly number[], parts: readonly Part[]): string {
  // For the other kinds `helpedBodies` tries what finds room where that stops the job. A script's solids do not grow.
  const estimates =
    (spec.kind === 'planetary' || !namesPrinter(spec)) && !parts.some(({ added }) => added !== undefined);
  const { faceWidth, printer } = spec;
  const { path, value } = moduleGiven(spec);
  const rim = rimOf(spec);
  const { width, depth, height } = printer.bed;
  const across = Math.min(width, depth);
  const [wide, high] = [Math.max(x, y) > across, z > height];
  const fits = Math.floor((100 * value * (across - 2 * rim)) / (Math.max(x, y) - 2 * rim)) / 100;
  const lower = Math.floor(100 * (faceWidth - (z - height))) / 100;
  const ways: Change[] = [];
  if (wide && fits >= ranges.module[0]) ways.push({ [path]: fits });
  if (high && lower >= ranges.faceWidth[0]) ways.push({ faceWidth: lower });
  return [
    wide && `; ${across} mm across would fit`,
    high && `; a height of ${height} mm would fit`,
    estimates && ways.length === Number(wide) + Number(high)
      ? `: with this rim and these features, ${sayWays(ways, ' and ')} or less`
      : '',
  ]
    .filter(Boolean)
    .join('');
}
