import { PLAIN, THIN } from './styles.js';
import { group, line, type PagePoint, rectangle, text } from './svg.js';

/** Height of a row, mm. */
export const ROW = 4;

/** A column of names, then columns of figures, mm. */
export interface TableWidths {
  names: number;
  figures: number;
}

/** Rows of a name and its figures, ruled, the first one bold; its top left corner at `corner`. */
export function table(corner: PagePoint, rows: readonly (readonly string[])[], widths: TableWidths): string {
  const [left, top] = corner;
  const columns = (rows[0]?.length ?? 1) - 1;
  const [width, height] = [widths.names + columns * widths.figures, ROW * rows.length];
  const edges = Array.from({ length: columns }, (_, i) => left + widths.names + widths.figures * i);
  return [
    group(
      THIN,
      rectangle(corner, width, height),
      ...rows.slice(1).map((_, i) => line([left, top + ROW * (i + 1)], [left + width, top + ROW * (i + 1)])),
      ...edges.map((x) => line([x, top], [x, top + height])),
    ),
    group(
      PLAIN,
      ...rows.flatMap(([name, ...cells], row) => {
        const base = top + ROW * (row + 1) - 1.1;
        const bold = row === 0;
        return [
          text([left + 1.5, base], name, { size: 2.7, bold }),
          ...cells.map((cell, i) =>
            text([edges[i] + widths.figures / 2, base], cell, { size: 2.7, anchor: 'middle', bold }),
          ),
        ];
      }),
    ),
  ].join('\n');
}
