import type { GearRecord, MeshRecord } from '../../proof/sheetTypes.js';
import { figure } from '../figure.js';
import { type Cell, section, table } from './html.js';

type Row<T> = [name: string, cell: (record: T) => Cell];

/** A table with a column for each record. */
function columns<T>(
  caption: string,
  records: readonly T[],
  name: (record: T) => string,
  rows: Row<T>[],
): string {
  return table(
    caption,
    ['Quantity', ...records.map(name)],
    rows.map(([label, cell]) => [label, ...records.map(cell)]),
  );
}

const withUnits = (value: number | null): string => (value === null ? '–' : `${figure(value)} mm`);

/** Sizes of every kind of gear, and the readings to hold a print against. */
export function gearsSection(gears: readonly GearRecord[]): string {
  const name = ({ part }: GearRecord): string => part;
  return section(
    'Gears',
    columns('Gear data', gears, name, [
      ['Number of gears', ({ count }) => count],
      ['Teeth', ({ teeth }) => teeth],
      ['Normal module', ({ module }) => withUnits(module)],
      ['Profile shift coefficient', ({ profileShift }) => figure(profileShift, 4)],
      ['Helix angle', ({ helixAngle }) => `${figure(helixAngle)}°`],
      ['Hand (lower half of a herringbone)', ({ hand }) => hand],
      ['Reference diameter', ({ pitchDiameter }) => withUnits(pitchDiameter)],
      ['Base diameter', ({ baseDiameter }) => withUnits(baseDiameter)],
      ['Tip diameter, as made', ({ tipDiameter }) => withUnits(tipDiameter)],
      ['Root diameter, as made', ({ rootDiameter }) => withUnits(rootDiameter)],
    ]),
    columns('Readings: base tangent length, and over pins (between pins for the ring)', gears, name, [
      ['Base tangent: teeth spanned', ({ baseTangentLength: w }) => w.teethSpanned],
      ['Base tangent length, without gap', ({ baseTangentLength: w }) => withUnits(w.nominal)],
      ['Base tangent length, as drawn', ({ baseTangentLength: w }) => withUnits(w.withGap)],
      [
        'Base tangent: anvils reach across the span',
        ({ baseTangentLength: w }) => (w.measurable ? 'yes' : 'no'),
      ],
      ['Pin diameter', ({ overPins: m }) => withUnits(m.pin)],
      ['Over pins, without gap', ({ overPins: m }) => withUnits(m.nominal)],
      ['Over pins, as drawn', ({ overPins: m }) => withUnits(m.withGap)],
    ]),
  );
}

/** How the gears run together. */
export function meshesSection(meshes: readonly MeshRecord[]): string {
  return section(
    'Meshes',
    columns('Mesh data', meshes, ({ between }) => between.join(' – '), [
      ['Centre distance', (m) => withUnits(m.centreDistance)],
      ['Working transverse pressure angle', (m) => `${figure(m.workingPressureAngle)}°`],
      ['Transverse contact ratio', (m) => m.transverseContactRatio],
      ['Overlap ratio', (m) => m.overlapRatio],
      ['Gap asked for', (m) => withUnits(m.gap.asked)],
      ['Least gap found while rolling', (m) => withUnits(m.gap.rollingLeast)],
      ['Least distance of the finished bodies', (m) => withUnits(m.gap.bodies)],
      ['Least distance of the finished bodies in motion', (m) => withUnits(m.gap.motionLeast)],
      ['Normal backlash', (m) => withUnits(m.normalBacklash)],
      ['Circumferential backlash', (m) => withUnits(m.circumferentialBacklash)],
    ]),
  );
}
