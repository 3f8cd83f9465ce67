// The sheet's page in a real browser: what moves, against the Willis equation; what it shows, against the sheet.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { proveSet } from '../../lib/proof/proveSet.js';
import { subjectOf } from '../../lib/write/drawing/subjectOf.js';
import { drawSet } from '../../lib/write/drawing.js';
import { liveOf } from '../../lib/write/sheetPage/live/liveOf.js';
import { sheetPage } from '../../lib/write/sheetPage.js';
import { setOf } from '../sets.js';
import { noBrowser, openBrowser } from './browser.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

describe.skipIf(noBrowser)(`the page of a sheet in a browser ${noBrowser}`, () => {
  const spec = setOf(15, 15, 45, 5);
  const { sheet, parts } = proveSet(spec);
  const html = sheetPage(sheet, drawSet(spec, parts), liveOf(sheet, subjectOf(spec, parts)));
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());

  /** A fresh page, with everything that it complained of or asked for. */
  async function opened(options: Parameters<Browser['newPage']>[0] = {}) {
    const page = await browser.newPage(options);
    const heard: string[] = [];
    page.on('console', (message) => heard.push(message.text()));
    page.on('pageerror', (error) => heard.push(error.message));
    page.on('request', (request) => heard.push(request.url()));
    await page.setContent(html, { waitUntil: 'load' });
    return { page, heard };
  }
  /** Degrees that each part has turned, as the page says. */
  async function turned(page: Page): Promise<Record<string, number>> {
    const words = (await page.textContent('#live-status')) ?? '';
    return Object.fromEntries(
      words.split(' · ').map((one) => {
        const [, name, angle] = one.match(/^(.*) ([−\d.]+)°$/)!;
        return [name, Number(angle.replace('−', '-'))];
      }),
    );
  }

  test('loads without a complaint, asks nobody for anything, and is small', async () => {
    const { page, heard } = await opened();
    await page.locator('#live-space').scrollIntoViewIfNeeded();
    await page.waitForTimeout(200);
    expect(heard).toEqual([]);
    expect(html.length).toBeLessThan(3e6);
    await page.close();
  });

  test('turns as the Willis equation says, whatever is held', async () => {
    const { page } = await opened();
    const { ratios } = sheet.train;
    const cases = [
      { choice: 0, driver: 'sun', driven: 'planets’ axes', still: 'ring', ratio: ratios.ringHeld },
      { choice: 1, driver: 'sun', driven: 'ring', still: 'planets’ axes', ratio: ratios.carrierHeld },
      { choice: 2, driver: 'ring', driven: 'planets’ axes', still: 'sun', ratio: ratios.sunHeld },
    ];
    for (const { choice, driver, driven, still, ratio } of cases) {
      await page.check(`input[name="live-held"][value="${choice}"]`);
      await page.locator('#live-plane').focus();
      for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
      const angles = await turned(page);
      expect(angles[driver]).toBe(120);
      expect(angles[still]).toBe(0);
      expect(angles[driven]).toBeCloseTo(120 / ratio, 1);
    }
    await page.close();
  });

  test('follows the pointer that drags the sun round', async () => {
    const { page } = await opened();
    await page.locator('#live-plane').scrollIntoViewIfNeeded();
    const box = (await page.locator('#live-plane').boundingBox())!;
    const middle = [box.x + box.width / 2, box.y + box.height / 2];
    const arm = box.width * 0.09;
    await page.mouse.move(middle[0] + arm, middle[1]);
    await page.mouse.down();
    for (let i = 1; i <= 9; i++) {
      const angle = (i * Math.PI) / 18;
      await page.mouse.move(middle[0] + arm * Math.cos(angle), middle[1] - arm * Math.sin(angle));
    }
    await page.mouse.up();
    expect((await turned(page)).sun).toBeCloseTo(90, 0);
    await page.close();
  });

  test('shows the gaps that the sheet holds', async () => {
    const { page } = await opened();
    const words = (await page.textContent('#live-plot-words')) ?? '';
    for (const { between, gap } of sheet.meshes) {
      expect(words).toContain(`${between.join(' and ')}: now`);
      expect(Math.min(...gap.rollingCurve!)).toBe(gap.rollingLeast);
      expect(words).toContain(`least ${gap.rollingLeast!.toFixed(3)} mm, asked ${gap.drawn} mm`);
    }
    // The line itself: its lowest place, in the units of the axis beside it.
    const lowest = await page.$$eval('#live-plot .curve', (lines) =>
      lines.map((line) =>
        Math.max(
          ...line
            .getAttribute('points')!
            .split(' ')
            .map((at) => Number(at.split(',')[1])),
        ),
      ),
    );
    const grid = await page.$$eval('#live-plot .grid', (lines) =>
      lines.map((line) => Number(line.getAttribute('y1'))),
    );
    const perMm = (grid[0] - grid[1]) / 0.1;
    lowest.forEach((y, i) => {
      expect((grid[0] - y) / perMm).toBeCloseTo(sheet.meshes[i].gap.rollingLeast!, 6);
    });
    await page.close();
  });

  test('draws bodies and sections, and stands still until it is told to turn', async () => {
    const { page } = await opened({ reducedMotion: 'reduce' });
    const seen = (id: string) =>
      page.$eval(id, (canvas) => (canvas as unknown as { toDataURL(): string }).toDataURL().length);
    expect(await seen('#live-plane')).toBeGreaterThan(10_000);
    const before = await turned(page);
    await page.waitForTimeout(300);
    expect(await turned(page)).toEqual(before);
    await page.click('#live-play');
    await expect.poll(async () => (await turned(page)).sun, { timeout: 20_000 }).not.toBe(0);
    await page.close();
  });

  test.each([
    [400, 'light'],
    [1400, 'dark'],
  ] as const)('is accessible and does not scroll sideways at %d px, %s', async (width, colorScheme) => {
    // axe-core is put in from outside, which the page itself would not let happen.
    const { page } = await opened({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
    await page.addScriptTag({ content: AXE });
    const found = await page.evaluate('axe.run()');
    const { violations } = found as { violations: { id: string; nodes: { html: string }[] }[] };
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    await page.close();
  });
});
