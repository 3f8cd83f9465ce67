import type { PrintingRecord } from '../../proof/sheetTypes.js';
import { figure } from '../figure.js';
import { paragraph, section, table } from './html.js';

/** What the set was drawn otherwise for, and what calipers should read on the print. */
export function printingSection({ growth, firstLayerGrowth, shrinkage, sizes }: PrintingRecord): string {
  const words =
    growth === 0 && shrinkage === 0
      ? 'Drawn as asked: no growth of walls and no shrinkage are compensated.'
      : `Drawn so that the print comes out as asked with walls that stand out by ${figure(growth)} mm and a shrinkage of ${figure(shrinkage)} %.`;
  const first = `First layers are taken to stand out by a further ${figure(firstLayerGrowth)} mm.`;
  const rows = sizes.map(({ part, feature, drawn, expected }) => [`${part}, ${feature}`, drawn, expected]);
  return section(
    'Printed sizes',
    paragraph(`${words} ${first}`),
    table('Sizes that calipers can read, mm', ['Size', 'Drawn', 'Expected on the print'], rows),
  );
}
