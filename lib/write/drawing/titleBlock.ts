import { PLAIN, THIN } from './styles.js';
import { group, line, type PagePoint, rectangle, text } from './svg.js';

/** Width of the block, mm. */
export const TITLE_WIDTH = 80;

/** Height of a line of small print and of the name, mm. */
const SMALL = 5;
const LARGE = 10;
/** Width of a letter against its height, about, in the widest of the faces asked for. */
const LETTER = 0.68;

export interface Title {
  name: string;
  /** What the drawing shows. */
  subject: string;
  /** Label and figure, in order. */
  facts: readonly (readonly [label: string, figure: string])[];
}

/** Height of the block, mm. */
export function titleHeight({ facts }: Title): number {
  return LARGE + SMALL * (facts.length + 1);
}

/** Name, subject and facts under one another, with the top left corner at `corner`. */
export function titleBlock(corner: PagePoint, title: Title): string {
  const [left, top] = corner;
  const right = left + TITLE_WIDTH;
  const rows = title.facts.map((_, i) => top + LARGE + SMALL * (i + 1));
  return [
    group(
      THIN,
      rectangle(corner, TITLE_WIDTH, titleHeight(title)),
      ...rows.map((y) => line([left, y], [right, y])),
    ),
    group(
      PLAIN,
      text([left + 2, top + 7.5], fitted(title.name, 5), { size: sizeFor(title.name, 5), bold: true }),
      text([left + 2, top + LARGE + 4], fitted(title.subject, 3), { size: sizeFor(title.subject, 3) }),
      ...title.facts.flatMap(([label, figure], i) => [
        text([left + 2, rows[i] + 3.5], label, { size: 2.8 }),
        text([right - 2, rows[i] + 3.5], figure, { size: 2.8, anchor: 'end' }),
      ]),
    ),
  ].join('\n');
}

/** Smallest letters that still print well, mm. */
const LEAST_SIZE = 2;
const ROOM = TITLE_WIDTH - 4;

function sizeFor(words: string, size: number): number {
  return Math.max(LEAST_SIZE, Math.min(size, ROOM / (LETTER * words.length)));
}

/** The words, cut short where even the smallest letters would leave the block. */
function fitted(words: string, size: number): string {
  const room = Math.floor(ROOM / (LETTER * sizeFor(words, size)) + 0.5);
  const letters = [...words];
  return letters.length > room ? `${letters.slice(0, room - 1).join('')}…` : words;
}
