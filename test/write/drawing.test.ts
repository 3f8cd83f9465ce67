import { describe, expect, test } from 'vitest';
import { setOutlines } from '../../lib/solid/setOutlines.js';
import { Refusal } from '../../lib/spec/refusal.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { flankGap } from '../../lib/write/drawing/lineOfAction.js';
import { sheetFor } from '../../lib/write/drawing/sheetSize.js';
import { drawSet } from '../../lib/write/drawing.js';
import { spinner } from './sheets.js';

/** A set with straight teeth and a coarse module, too large for A4 (invented). */
function reducer(): PlanetarySpec {
  const spec = spinner();
  return {
    ...spec,
    name: 'hand-cranked reducer',
    module: 2.5,
    helix: { form: 'spur', angle: 0, hand: 'right' },
    sun: { teeth: 18, profileShift: 0, bore: { shape: 'hexagon', acrossFlats: 6.6 } },
    planets: { ...spec.planets, teeth: 18, count: 3 },
    ring: { ...spec.ring, teeth: 54 },
  };
}

const wordsOf = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words]) => words);
const pathsOf = (svg: string): string[] =>
  [...svg.matchAll(/<path fill-rule="evenodd"[^>]* d="([^"]*)"/g)].map(([, d]) => d);
/** Points of the first outline of a path, mm on the page. */
const pointsOf = (d: string): [number, number][] =>
  d
    .split('Z')[0]
    .slice(1)
    .split('L')
    .map((pair) => pair.split(' ').map(Number) as [number, number]);

describe('drawSet', () => {
  const svg = drawSet(spinner());

  test('is a page in mm to scale', () => {
    expect(svg).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/);
    expect(drawSet(reducer())).toMatch(/^<svg [^>]*width="297mm" height="420mm" viewBox="0 0 297 420"/);
  });

  test('states the sizes that follow from module, teeth and rack', () => {
    // d = z m_n/cos β, tips and roots at ± addendum and dedendum of rack B (ISO 53): 1.5 · 15/cos 30° etc.
    const words = wordsOf(svg);
    const reference = (1.5 * 15) / Math.cos(Math.PI / 6);
    for (const size of [reference, reference + 3, reference - 3.75, 3 * reference, 3 * reference + 3.75]) {
      expect(words).toContain(size.toFixed(3));
    }
    expect(words).toContain(`⌀ ${(3 * reference + 3.75 + 10).toFixed(3)}`);
    // Centre distance a = m_t (z1 + z2)/2.
    expect(words.filter((word) => word === reference.toFixed(3)).length).toBe(3);
    expect(words).toContain('gap 0.25 normal to the flanks,');
    expect(words).toContain('(0.283 across this section)');
  });

  test('draws true tooth outlines at full size', () => {
    const paths = pathsOf(svg);
    // Seven bodies, then two of them again in the detail.
    expect(paths.length).toBe(9);
    const sun = pointsOf(paths[0]);
    const rim = [...paths[6].matchAll(/A([\d.]+) /g)].map(([, radius]) => Number(radius));
    // The rim runs from its right end over its left end and back.
    const [right, left] = [/Z?M([\d.]+) ([\d.]+)A/, /1 0 ([\d.]+) ([\d.]+)A/].map(
      (end) => paths[6].match(end) ?? [],
    );
    const middle = [(Number(right[1]) + Number(left[1])) / 2, Number(right[2])];
    const radii = sun.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]));
    expect(Math.max(...radii)).toBeCloseTo(25.981 / 2 + 1.5, 2);
    expect(Math.min(...radii)).toBeCloseTo(25.981 / 2 - 1.875, 2);
    expect(rim).toEqual([45.846, 45.846]);
    // A circle amid the flanks cuts every tooth twice.
    const crossed = radii.filter((r, i) => r < 12.99 !== radii[(i + 1) % radii.length] < 12.99).length;
    expect(crossed).toBe(2 * 15);
  });

  test('keeps everything on the sheet', () => {
    const [frame] = [...svg.matchAll(/<rect x="20" y="10" width="180" height="277"\/>/g)];
    expect(frame).toBeDefined();
    for (const [, x, y] of svg.matchAll(/<text x="([^"]+)" y="([^"]+)"/g)) {
      expect(Number(x)).toBeGreaterThan(20);
      expect(Number(x)).toBeLessThan(200);
      expect(Number(y)).toBeGreaterThan(10);
      expect(Number(y)).toBeLessThan(287);
    }
  });

  test('holds only plain numbers, and the same ones each time', () => {
    expect(svg).not.toMatch(/NaN|Infinity|undefined|\d[eE][+-]?\d/);
    expect(drawSet(spinner())).toBe(svg);
  });

  test('needs nothing from elsewhere', () => {
    expect(svg).not.toMatch(/<(script|image|use|style|foreignObject)\b/);
    expect(svg.match(/url\([^)]*\)/g)?.every((url) => url.startsWith('url(#'))).toBe(true);
  });

  test('is well-formed and escapes the name', () => {
    const name = '</text></svg><script>x</script> & "\' \u0000';
    const named = drawSet({ ...spinner(), name });
    expect(named).toContain('&lt;/text&gt;&lt;/svg&gt;&lt;script&gt;');
    expect(named).not.toMatch(/<script/);
    const open: string[] = [];
    for (const [, close, tag, alone] of named.matchAll(/<(\/?)([a-zA-Z]+)[^>]*?(\/?)>/g)) {
      if (close) expect(open.pop()).toBe(tag);
      else if (!alone) open.push(tag);
    }
    expect(open).toEqual([]);
  });

  test('passes on a refusal of the teeth', () => {
    expect(() => drawSet({ ...spinner(), planets: { ...spinner().planets, profileShift: -3 } })).toThrow(
      Refusal,
    );
  });
});

describe('the gap in the detail', () => {
  // Across the teeth the transverse gap is the normal one over cos β_b (ISO 21771, base helix angle
  // sin β_b = sin β cos α_n); base radius z m_t cos α_t/2.
  test.each([
    ['herringbone', spinner(), 0.25 / Math.cos(Math.asin(Math.sin(Math.PI / 6) * Math.cos(Math.PI / 9)))],
    ['spur', reducer(), 0.25],
    ['spur, gap 0.1', { ...reducer(), fit: { gap: 0.1, gapShare: 1 } }, 0.1],
  ])('is there on the drawn outlines: %s', (_, given, expected) => {
    const spec = { ...given, tolerance: 0.0005 };
    const outlines = setOutlines(spec);
    const [sun, planet] = outlines;
    const helix = (spec.helix.angle * Math.PI) / 180;
    const pressure = Math.atan(Math.tan(Math.PI / 9) / Math.cos(helix));
    const base = (teeth: number) => (teeth * spec.module * Math.cos(pressure)) / Math.cos(helix) / 2;
    const { sun: s, planets: p } = spec;
    const found = flankGap(sun, planet, s.teeth / (s.teeth + p.teeth), [base(s.teeth), base(p.teeth)]);
    expect(found?.gap).toBeGreaterThan(expected - 1e-6);
    expect(found?.gap).toBeLessThan(expected + 0.0015);
  });
});

describe('sheetFor', () => {
  // ISO 216: A4 is 210 × 297; the frame leaves 20 mm on the left and 10 mm elsewhere (ISO 5457).
  test.each([
    [180, 277, 'A4'],
    [180.1, 277, 'A3'],
    [10, 277.1, 'A3'],
    [811, 1169, 'A0'],
    [812, 10, 'made to measure'],
  ])('%d × %d mm: %s', (width, height, name) => {
    expect(sheetFor(width, height).name).toBe(name);
  });

  test('refuses what is no size', () => {
    expect(() => sheetFor(Number.NaN, 10)).toThrow(Refusal);
  });
});
