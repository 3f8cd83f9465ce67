import { describe, expect, test } from 'vitest';
import { sheetPage } from '../../lib/write/sheetPage.js';
import { inventedSheet } from './sheets.js';

const DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"><circle r="3"/></svg>\n';
/** The words of the page, tags gone. */
const wordsOf = (page: string): string =>
  page
    .replace(/<(style|svg)\b.*?<\/\1>/gs, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
/** Cells of the table row that a word heads. */
function rowOf(page: string, head: string): string[] {
  const row = page.match(new RegExp(`<tr[^>]*><th scope="row">${head}</th>(.*?)</tr>`))?.[1] ?? '';
  return [...row.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, words]) => words);
}

describe('sheetPage', () => {
  const page = sheetPage(inventedSheet(), DRAWING);

  test('shows the drawing as it is and nothing from elsewhere', () => {
    expect(page).toContain(DRAWING.trim());
    expect(page).not.toMatch(/<(script|link|img|iframe|object|base)\b/i);
    expect(page).not.toMatch(/\b(src|href|@import|url)\s*[=(]/i);
    expect(page).toContain("default-src 'none'");
  });

  test('says of each check whether it holds, with figure, limit and unit', () => {
    expect(rowOf(page, 'neighbours')).toEqual([
      'holds',
      'must',
      '1.559 mm',
      '0.25 mm',
      'Neighbouring planets clear each other.',
    ]);
    expect(rowOf(page, 'contact-ratio').slice(0, 4)).toEqual(['fails', 'should', '1.111', '1.2']);
    expect(rowOf(page, 'overhang').slice(2, 4)).toEqual(['44.9°', '50°']);
    expect(rowOf(page, 'watertight').slice(2, 4)).toEqual(['0 open edges', '0 open edges']);
    expect(rowOf(page, 'small-parts').slice(2, 4)).toEqual(['–', '–']);
  });

  test('puts what fails first', () => {
    const ids = [...page.matchAll(/<tr class="(?:holds|fails)"><th scope="row">(.*?)<\/th>/g)].map(
      ([, id]) => id,
    );
    expect(ids[0]).toBe('contact-ratio');
    expect(ids.at(-1)).toBe('small-parts');
    expect(ids.length).toBe(inventedSheet().checks.length);
  });

  test('sums the checks up in one sentence', () => {
    expect(wordsOf(page)).toContain(
      'Every check that must hold does. Of those that should, these fail: contact-ratio.',
    );
    const sheet = inventedSheet();
    sheet.checks[0].holds = false;
    expect(wordsOf(sheetPage(sheet, DRAWING))).toContain(
      'Do not print: a check that must hold fails (coaxial).',
    );
    sheet.checks[1].holds = false;
    expect(wordsOf(sheetPage(sheet, DRAWING))).toContain(
      'Do not print: checks that must hold fail (coaxial, neighbours).',
    );
    for (const check of sheet.checks) check.holds = true;
    expect(wordsOf(sheetPage(sheet, DRAWING))).toContain('So does every check that should.');
  });

  test('shows every figure of gears, meshes, train and parts', () => {
    expect(rowOf(page, 'Base tangent length, as drawn')).toEqual(['100.016 mm', '200.016 mm', '–']);
    expect(rowOf(page, 'Base tangent: anvils reach across the span')).toEqual(['yes', 'yes', 'no']);
    expect(rowOf(page, 'Over pins, without gap')).toEqual(['100.018 mm', '200.018 mm', '300.018 mm']);
    expect(rowOf(page, 'Tip diameter, as made')).toEqual(['100.013 mm', '200.013 mm', '300.013 mm']);
    expect(rowOf(page, 'Least distance of the finished bodies')).toEqual(['0.251 mm', '–']);
    expect(rowOf(page, 'carrier')).toEqual(['sun', 'ring', '3', 'against each other']);
    expect(rowOf(page, 'ring')).toEqual(['sun', 'carrier', '4', 'the same way']);
    expect(rowOf(page, 'sun')).toEqual(['ring', 'carrier', '1.333', 'the same way']);
    expect(wordsOf(page)).toContain('17.25° at the set&apos;s axis');
    expect(wordsOf(page)).toContain('29 × 28.5 × 20');
    for (const words of [...inventedSheet().cautions, ...inventedSheet().adjustments])
      expect(page).toContain(words);
  });

  test('leaves out headings that would stand over nothing', () => {
    expect(sheetPage({ ...inventedSheet(), cautions: [], adjustments: [] }, DRAWING)).not.toMatch(
      /Cautions|Adjustments/,
    );
  });

  test('is well-formed: every element that opens closes in order', () => {
    const open: string[] = [];
    for (const [, close, name] of page
      .replace(/<!doctype[^>]*>/, '')
      .matchAll(/<(\/?)([a-z][a-z0-9]*)[^>]*?(?<!\/)>/g)) {
      if (name === 'meta') continue;
      if (close) expect(open.pop()).toBe(name);
      else open.push(name);
    }
    expect(open).toEqual([]);
  });

  test('escapes every text, wherever it stands', () => {
    const evil = '<script>alert("x")</script><b onmouseover=\'y\'>&amp;';
    const poisoned = JSON.parse(JSON.stringify(inventedSheet()), (_, value) =>
      typeof value === 'string' ? `${value}${evil}` : value,
    );
    const poisonedPage = sheetPage(poisoned, DRAWING);
    expect(poisonedPage).not.toMatch(/<script|<b /);
    // The page's own tags are what they were, but for the list of the checks' classes.
    const tags = (text: string): number => text.match(/<[a-z/]/g)?.length ?? 0;
    expect(tags(poisonedPage)).toBe(tags(page));
    expect(poisonedPage).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;');
  });
});
