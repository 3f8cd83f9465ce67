import stringWidth from 'string-width';

/** Where the cells of a column start or end at the same place. */
export type Side = 'left' | 'right';

/**
 * Rows of cells as lines of plain text, columns two spaces apart. Cells are as wide as a terminal shows them: Chinese
 * letters and the like take two places, accents and colours none.
 * @param sides of every column; one for all, or one each
 */
export function aligned(rows: readonly (readonly string[])[], sides: Side | readonly Side[]): string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.max(0, ...rows.map((row) => stringWidth(row[column] ?? ''))),
  );
  return rows.map((row) =>
    row
      .map((cell, i) => {
        const padding = ' '.repeat(widths[i] - stringWidth(cell));
        const side = typeof sides === 'string' ? sides : (sides[i] ?? 'left');
        return side === 'left' ? cell + padding : padding + cell;
      })
      .join('  ')
      .trimEnd(),
  );
}

/** A column of figures ends at the same place, any other starts there; told by the last row. */
export function sidesOf(rows: readonly (readonly string[])[]): Side[] {
  return (rows[rows.length - 1] ?? []).map((cell) => (/^-?[\d.]/.test(cell) ? 'right' : 'left'));
}
