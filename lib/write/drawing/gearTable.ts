import type { PartOutline } from '../../solid/setOutlines.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { gearSizes } from '../../tooth/gear.js';
import { setGears } from '../../train/setGears.js';
import { figure } from '../figure.js';
import { kindOf } from './outlines.js';
import { PLAIN, THIN } from './styles.js';
import { group, line, type PagePoint, rectangle, text } from './svg.js';

/** Width of the column of names and of each column of figures, and height of a row, mm. */
const NAMES = 37;
const COLUMN = 21;
const ROW = 4.7;

type Kind = 'sun' | 'planet' | 'ring';
const KINDS: readonly Kind[] = ['sun', 'planet', 'ring'];

/** Width and height of the table, mm. */
export function gearTableSize(spec: PlanetarySpec): { width: number; height: number } {
  return { width: NAMES + COLUMN * KINDS.length, height: ROW * rowsOf(spec, []).length };
}

/** Gear data, one column a kind of gear, with its top left corner at `corner`. */
export function gearTable(corner: PagePoint, spec: PlanetarySpec, gears: readonly PartOutline[]): string {
  const { width, height } = gearTableSize(spec);
  const [left, top] = corner;
  const rows = rowsOf(spec, gears);
  const middles = KINDS.map((_, i) => left + NAMES + COLUMN * (i + 0.5));
  return [
    group(
      THIN,
      rectangle(corner, width, height),
      ...rows.slice(1).map((_, i) => line([left, top + ROW * (i + 1)], [left + width, top + ROW * (i + 1)])),
      ...KINDS.map((_, i) => left + NAMES + COLUMN * i).map((x) => line([x, top], [x, top + height])),
    ),
    group(
      PLAIN,
      ...rows.flatMap(([name, ...cells], row) => {
        const base = top + ROW * (row + 1) - 1.4;
        const bold = row === 0;
        return [
          text([left + 1.5, base], name, { size: 2.8, bold }),
          ...cells.map((cell, i) => text([middles[i], base], cell, { size: 2.8, anchor: 'middle', bold })),
        ];
      }),
    ),
  ].join('\n');
}

/** Rows of the table: name, then a cell a kind; the same number of them whatever `gears` holds. */
function rowsOf(spec: PlanetarySpec, gears: readonly PartOutline[]): string[][] {
  const nominal = setGears(spec);
  const made = (kind: Kind) => gears.find((gear) => kindOf(gear) === kind)?.radii;
  const row = (name: string, cell: (kind: Kind) => string): string[] => [name, ...KINDS.map(cell)];
  const diameter = (radius: number | undefined): string => (radius === undefined ? '–' : figure(2 * radius));
  const counts = { sun: 1, planet: spec.planets.count, ring: 1 };
  return [
    row('Gear', (kind) => `${KINDS.indexOf(kind) + 1}  ${kind}`),
    row('Number off', (kind) => String(counts[kind])),
    row('Teeth', (kind) => String(nominal[kind].teeth)),
    row('Normal module', () => figure(spec.module)),
    row('Normal pressure angle', () => `${figure(spec.pressureAngle)}°`),
    row('Helix', () => spec.helix.form),
    row('Helix angle', () => `${figure(spec.helix.angle)}°`),
    row('Hand', (kind) => handOf(spec, kind)),
    row('Profile shift coefficient', (kind) => figure(nominal[kind].profileShift, 4)),
    row('Reference diameter', (kind) => diameter(gearSizes(nominal[kind]).referenceRadius)),
    row('Tip diameter', (kind) => diameter(made(kind)?.tip)),
    row('Root diameter', (kind) => diameter(made(kind)?.root)),
    row('Face width', () => figure(spec.faceWidth)),
  ];
}

/** Hand of a gear's helix; of its lower half when herringbone. */
function handOf({ helix }: PlanetarySpec, kind: Kind): string {
  if (helix.form === 'spur') return '–';
  const other = helix.hand === 'right' ? 'left' : 'right';
  const hand = kind === 'sun' ? helix.hand : other;
  return helix.form === 'herringbone' ? `${hand} (lower)` : hand;
}
