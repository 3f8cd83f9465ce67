import { escapeText } from '../escape.js';
import { figure } from '../figure.js';

/** A cell of a table: a word, a figure, or nothing known. */
export type Cell = string | number | null;

/** A figure with its unit as a sheet names it: `deg` is a degree sign, `1` a pure number. */
export function withUnit(value: number | null, unit: string): string {
  if (value === null) return '–';
  if (unit === 'deg') return `${figure(value)}°`;
  return unit === '1' ? figure(value) : `${figure(value)} ${unit}`;
}

/**
 * Everything of a page before its body, which is left open.
 * @param policy what the page may load and run
 */
export function pageHead(title: string, policy: string, style: string): string {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    `<title>${escapeText(title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
  ].join('\n');
}

/** The end of a page that `pageHead` has begun. */
export function pageFoot(version: string): string {
  return `<footer><p>Lengths in mm, angles in degrees. Made by cogweave ${escapeText(version)}.</p></footer>\n</body>\n</html>\n`;
}

/** A whole parameter file, folded away under a summary, so that the page alone is enough to make the same again. */
export function parameters(summary: string, resolved: object): string {
  const lines = JSON.stringify(resolved, null, 2).split('\n').map(escapeText);
  return `<details>\n<summary>${escapeText(summary)}</summary>\n<pre>${lines.join('\n')}</pre>\n</details>`;
}

/** A part of the page under its heading; nothing when it has no content. */
export function section(heading: string, ...content: string[]): string {
  const body = content.filter(Boolean).join('\n');
  return body && `<section>\n<h2>${escapeText(heading)}</h2>\n${body}\n</section>`;
}

/** A paragraph of plain words. */
export function paragraph(words: string): string {
  return `<p>${escapeText(words)}</p>`;
}

/** A list of plain sentences; nothing when it is empty. */
export function list(sentences: readonly string[]): string {
  return sentences.length
    ? `<ul>\n${sentences.map((s) => `<li>${escapeText(s)}</li>`).join('\n')}\n</ul>`
    : '';
}

/**
 * A table that scrolls sideways in its own box on a narrow screen. The first cell of each row heads the row;
 * every cell is escaped here.
 * @param classes class of each row, by index [none]
 */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Cell[])[],
  classes: readonly string[] = [],
): string {
  const head = heads.map((name) => `<th scope="col">${escapeText(name)}</th>`).join('');
  const body = rows.map((row, i) => {
    const marked = classes[i] ? ` class="${escapeText(classes[i])}"` : '';
    return `<tr${marked}>${row.map(cell).join('')}</tr>`;
  });
  return [
    `<div class="scroll" tabindex="0" role="region" aria-label="${escapeText(caption)}">`,
    `<table>\n<caption>${escapeText(caption)}</caption>`,
    `<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join('\n')}\n</tbody>\n</table>\n</div>`,
  ].join('\n');
}

function cell(value: Cell, index: number): string {
  const words = escapeText(typeof value === 'string' ? value : figure(value));
  if (index === 0) return `<th scope="row">${words}</th>`;
  // A figure, with or without a unit of a few letters, is set flush right.
  const isFigure = typeof value !== 'string' || /^[−\d–][\d.]*(°| ?mm[²³]?)?$/.test(value);
  return isFigure ? `<td class="figure">${words}</td>` : `<td>${words}</td>`;
}
