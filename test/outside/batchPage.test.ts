// The index page of a batch in a real browser: it loads, sorts, and axe-core finds nothing against it.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type BatchRow, batchPage } from '../../lib/write/batchPage.js';
import { noBrowser, openBrowser } from './browser.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rows of an invented batch for the exhibit table; names and values that a page could trip over. */
const row = (name: string, gap: number | null, change: Partial<BatchRow> = {}): BatchRow => ({
  name,
  status: 'made',
  overrides: { 'fit.gap': gap },
  size: [80, 80, 12],
  gears: [],
  gaps: [{ between: 'sun–planet', asked: 0.25, rolling: gap, bodies: gap }],
  checks: { held: 9, failed: [] },
  triangles: 1000,
  volume: 20_000,
  files: [`${name}.stl`, `${name}.png`],
  refusal: null,
  ...change,
});
const says = ['fit.gap: 9: must be at most 1.125 mm'];
const rows: BatchRow[] = [
  row('table 10 %25#?', 0.25, { triangles: 900, volume: 20_000 }),
  row('table 9 <b>&amp;', 0.1, {
    triangles: 12_000,
    volume: 3_000,
    checks: { held: 8, failed: ['undercut'] },
  }),
  row('refused', null, {
    status: 'refused',
    gaps: [],
    size: null,
    triangles: null,
    volume: null,
    files: [],
    refusal: { code: 'beyond-limit', parameter: 'fit.gap', value: 9, rule: '', nearest: [], says },
  }),
  row('table 2', 0.2, { triangles: 5_000, volume: 100_000 }),
];

describe.skipIf(noBrowser)(`the index of a batch in a browser ${noBrowser}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'cogweave-'));
  const address = pathToFileURL(join(folder, 'index.html')).href;
  let browser: Browser;
  beforeAll(async () => {
    writeFileSync(join(folder, 'index.html'), [...batchPage('table <spinner>', rows)].join(''));
    const picture = PNG.sync.write(new PNG({ width: 8, height: 6 }));
    for (const { files } of rows)
      for (const file of files) writeFileSync(join(folder, file), file.endsWith('.png') ? picture : '');
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  /** A fresh page, with everything that it complained of or asked for. */
  async function opened(options: Parameters<Browser['newPage']>[0] = {}) {
    const page = await browser.newPage(options);
    const complaints: string[] = [];
    const requests: string[] = [];
    page.on('console', (message) => complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('requestfailed', (request) => complaints.push(request.url()));
    page.on('request', (request) => requests.push(request.url()));
    await page.goto(address, { waitUntil: 'load' });
    return { page, complaints, requests };
  }
  const named = (page: Page) => page.$$eval('tbody th', (cells) => cells.map((cell) => cell.textContent));
  const sorted = async (page: Page, column: string) => {
    await page.getByRole('button', { name: column, exact: true }).click();
    return named(page);
  };

  test('shows each variant with its picture, links to its files, and asks for nothing else', async () => {
    const { page, complaints, requests } = await opened();
    const [first, second, refused, last] = rows.map(({ name }) => name);
    expect(await named(page)).toEqual([first, second, refused, last]);
    const widths = () =>
      page.$$eval('img', (all) => all.map((one) => (one as { naturalWidth?: number }).naturalWidth));
    await expect.poll(widths).toEqual([8, 8, 8]);
    const links = await page.$$eval('a', (all) => all.map((one) => (one as { href?: string }).href ?? ''));
    expect(links.map((href) => decodeURIComponent(new URL(href).pathname))).toEqual(
      rows.flatMap(({ files }) => files.map((file) => join(folder, file))),
    );
    expect(await page.textContent('td.refused')).toBe(`refused: ${says[0]}`);
    expect(complaints).toEqual([]);
    expect(requests.every((url) => url === address || url.endsWith('.png'))).toBe(true);
    await page.close();
  });

  test('sorts by figures and by words, either way, what has none last; with the keyboard too', async () => {
    const { page, complaints } = await opened();
    const [ten, nine, refused, two] = rows.map(({ name }) => name);
    expect(await sorted(page, 'triangles')).toEqual([ten, two, nine, refused]);
    expect(await sorted(page, 'triangles')).toEqual([nine, two, ten, refused]);
    expect(await sorted(page, 'volume, cm³')).toEqual([nine, ten, two, refused]);
    expect(await sorted(page, 'least gap, mm')).toEqual([nine, two, ten, refused]);
    expect(await sorted(page, 'variant')).toEqual([refused, two, nine, ten]);
    expect(await page.$$eval('[aria-sort]', (heads) => heads.map((head) => head.textContent))).toEqual([
      'variant',
    ]);
    await page.keyboard.press('Enter');
    expect(await named(page)).toEqual([ten, nine, two, refused]);
    expect(await page.getAttribute('[aria-sort]', 'aria-sort')).toBe('descending');
    expect(complaints).toEqual([]);
    await page.close();
  });

  test.each([
    [400, 'light'],
    [1400, 'dark'],
  ] as const)('is accessible and does not scroll sideways at %d px, %s', async (width, colorScheme) => {
    // axe-core is put in from outside, which the page itself would not let happen.
    const { page } = await opened({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
    await sorted(page, 'status');
    await page.addScriptTag({ content: AXE });
    const { violations } = (await page.evaluate('axe.run()')) as {
      violations: { id: string; nodes: { html: string }[] }[];
    };
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    await page.close();
  });
});
