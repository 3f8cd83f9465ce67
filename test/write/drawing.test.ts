import { describe, expect, test } from 'vitest';
import { inspectSet } from '../../lib/proof/proveSet.js';
import { Refusal } from '../../lib/refusal.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { PlanetarySpec } from '../../lib/spec/types.js';
import { hatching } from '../../lib/write/drawing/hatching.js';
import { layoutFor, scaleText } from '../../lib/write/drawing/layout.js';
import { simplified } from '../../lib/write/drawing/simplified.js';
import { drawSet } from '../../lib/write/drawing.js';
import { figure } from '../../lib/write/figure.js';
import { box } from './meshes.js';
import { spinner as fineSpinner } from './sheets.js';

/** Meshed coarsely: a drawing takes it as it is. */
const spinner = (): PlanetarySpec => ({ ...fineSpinner(), tolerance: 0.03 });

/** A set with straight teeth and a coarse module, too large for A4 at full size (invented). */
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
type Point = [number, number];
/** Points of the outlines of a path, mm on the page. */
const outlinesOf = (d: string): Point[][] =>
  d
    .split('Z')
    .filter(Boolean)
    .map((outline) =>
      outline
        .slice(1)
        .split('L')
        .map((pair) => pair.split(' ').map(Number) as Point),
    );

describe('drawSet', () => {
  const spec = spinner();
  const svg = drawSet(spec);
  const halved = drawSet(reducer());

  test('is an A4 page in mm', () => {
    for (const page of [svg, halved])
      expect(page).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/);
    expect(wordsOf(svg)).toContain('1 : 1');
    expect(wordsOf(halved)).toContain('1 : 2');
  });

  test('states the sizes that the sheet states', () => {
    const words = wordsOf(svg);
    const sheet = inspectSet(spec);
    for (const gear of sheet.gears)
      for (const size of [
        gear.pitchDiameter,
        gear.baseDiameter,
        gear.tipDiameter,
        gear.rootDiameter,
        gear.baseTangentLength.withGap,
        gear.overPins.withGap,
      ])
        expect(words).toContain(figure(size));
    const ring = sheet.parts.find(({ name }) => name === 'ring')!;
    const outer = Number(words.find((word) => word.startsWith('⌀'))?.slice(2));
    // Corners of the rim's chords need not lie on the axes of the box.
    expect(Math.abs(outer - (ring.bounds.max[0] - ring.bounds.min[0]))).toBeLessThan(2 * spec.tolerance);
    expect(words).toContain(figure(ring.bounds.max[2]));
    for (const mesh of sheet.meshes) {
      expect(words).toContain(figure(mesh.centreDistance));
      expect(words).toContain(figure(mesh.normalBacklash));
    }
    expect(words).toContain(`${figure(sheet.train.opening.arc, 2)}° open`);
  });

  test('states the sizes that follow from module, teeth and rack', () => {
    // d = z m_n/cos β, tips and roots at ± addendum and dedendum of rack B (ISO 53): 1.5 · 15/cos 30° etc.
    const words = wordsOf(svg);
    const reference = (1.5 * 15) / Math.cos(Math.PI / 6);
    for (const size of [reference, reference + 3, reference - 3.75, 3 * reference, 3 * reference + 3.75])
      expect(words).toContain(size.toFixed(3));
    expect(words).toContain(`⌀ ${(3 * reference + 3.75 + 10).toFixed(3)}`);
    expect(words).toContain('gap 0.25');
    // Normal gap over cos β_b, sin β_b = sin 30° cos 20° (ISO 21771).
    expect(words).toContain('(0.283 in this section)');
  });

  test('draws true tooth outlines to scale', () => {
    for (const [given, page, scale] of [
      [spec, svg, 1],
      [reducer(), halved, 0.5],
    ] as const) {
      const paths = pathsOf(page);
      const [sun] = outlinesOf(paths[0]);
      const ring = outlinesOf(paths[given.planets.count + 1]).flat();
      const middle = [0, 1].map((axis) => {
        const along = ring.map((point) => point[axis]);
        return (Math.min(...along) + Math.max(...along)) / 2;
      });
      const reference = (given.module * given.sun.teeth) / Math.cos((given.helix.angle * Math.PI) / 180) / 2;
      const radii = sun.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]));
      // Tip and root of rack B.
      expect(Math.abs(Math.max(...radii) - scale * (reference + given.module))).toBeLessThan(0.04);
      expect(Math.abs(Math.min(...radii) - scale * (reference - 1.25 * given.module))).toBeLessThan(0.04);
      // A circle amid the flanks cuts every tooth twice.
      const inside = radii.map((r) => r < scale * reference);
      expect(inside.filter((is, i) => is !== inside[(i + 1) % inside.length]).length).toBe(
        2 * given.sun.teeth,
      );
    }
  });

  test('keeps everything within the frame', () => {
    for (const page of [svg, halved, drawSet({ ...spec, module: 0.8, faceWidth: 60 })]) {
      const [head, window] = page.split('<clipPath');
      const kept = head + window.slice(window.indexOf('</g>\n</g>'));
      const points: Point[] = [
        ...[...kept.matchAll(/<text x="([^"]+)" y="([^"]+)"/g)].map(([, x, y]) => [+x, +y] as Point),
        ...pathsOf(head).flatMap(outlinesOf).flat(),
        ...[...head.matchAll(/x[12]="([^"]+)" y[12]="([^"]+)"/g)].map(([, x, y]) => [+x, +y] as Point),
      ];
      expect(points.length).toBeGreaterThan(500);
      for (const [x, y] of points) {
        expect(x).toBeGreaterThan(20);
        expect(x).toBeLessThan(200.001);
        expect(y).toBeGreaterThan(10);
        expect(y).toBeLessThan(287.001);
      }
    }
  });

  test('draws parts that it is handed, extra ones too, and what is asked where growth is compensated', () => {
    const parts = buildSet(spec);
    expect(drawSet(spec, parts)).toBe(svg);
    const more = drawSet(spec, [...parts, { name: 'clamp-ring', mesh: box([60, -5, 0], [80, 5, 8]) }]);
    expect(wordsOf(more)).toContain('clamp ring');
    expect(pathsOf(more).length).toBe(pathsOf(svg).length + 2);
    const grown = { ...spec, printer: { ...spec.printer, growth: 0.1 } };
    expect(drawSet(grown, buildSet(grown))).toBe(svg);
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

describe('hatching', () => {
  test.each([45, -45, 30])('covers a face with a hole, at %d°', (turn) => {
    const square = (half: number): Point[] => [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ];
    const d = hatching([square(20), square(7)], { turn, step: 0.25 });
    const lines = [...d.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)].map(([, ...ends]) => ends.map(Number));
    const length = lines.reduce((sum, [ax, ay, bx, by]) => sum + Math.hypot(bx - ax, by - ay), 0);
    // Lines a step apart: their length times the step is the area.
    expect(Math.abs(0.25 * length - (40 ** 2 - 14 ** 2))).toBeLessThan(6);
    for (const [ax, ay, bx, by] of lines) {
      const direction = (Math.atan2(ay - by, bx - ax) * 180) / Math.PI;
      if (Math.hypot(bx - ax, by - ay) > 1) expect(direction).toBeCloseTo(turn, 1);
      const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
      expect(Math.max(Math.abs(x), Math.abs(y))).toBeGreaterThan(6.99);
    }
  });
});

describe('a simplified outline', () => {
  test('keeps within the tolerance of a circle and its corners', () => {
    const circle = Array.from({ length: 2000 }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / 2000;
      return [10 * Math.cos(angle), 10 * Math.sin(angle)];
    });
    const short = simplified(circle, 0.01);
    // The sagitta of a chord over the angle a is r (1 − cos a/2): at least π/acos(1 − 0.01/10) chords are needed.
    const least = Math.PI / Math.acos(1 - 0.001);
    expect(short.length).toBeGreaterThanOrEqual(least);
    expect(short.length).toBeLessThan(2.1 * least);
    const square: Point[] = [0, 1, 2, 3].flatMap((side) =>
      Array.from({ length: 10 }, (_, i): Point => {
        const t = i / 10;
        return [
          [t, 0],
          [1, t],
          [1 - t, 1],
          [0, 1 - t],
        ][side] as Point;
      }),
    );
    expect(simplified(square, 1e-6)).toEqual([
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
  });
});

describe('layout', () => {
  // ISO 5455: enlargements 50, 20, 10, 5, 2 : 1, full size, reductions 1 : 2, 5, 10 and so on.
  test.each([
    [{ width: 90, depth: 90, height: 20 }, '1 : 1'],
    [{ width: 150, depth: 150, height: 20 }, '1 : 2'],
    [{ width: 300, depth: 40, height: 20 }, '1 : 5'],
    [{ width: 30, depth: 30, height: 5 }, '2 : 1'],
    [{ width: 1.5, depth: 1.5, height: 0.5 }, '50 : 1'],
    [{ width: 3000, depth: 3000, height: 200 }, '1 : 50'],
  ])('%o is drawn at %s', (extent, expected) => {
    const { scale, upper, lower } = layoutFor(extent, 100);
    expect(scaleText(scale)).toBe(expected);
    expect(upper[1] - (scale * extent.depth) / 2).toBeGreaterThan(10);
    expect(lower[1] + (scale * extent.height) / 2).toBeLessThan(297 - 10 - 100);
    expect(lower[1] - (scale * extent.height) / 2).toBeGreaterThan(upper[1] + (scale * extent.depth) / 2);
  });

  test('refuses what is no size', () => {
    expect(() => layoutFor({ width: Number.NaN, depth: 1, height: 1 }, 100)).toThrow(Refusal);
    expect(() => layoutFor({ width: 1e6, depth: 1, height: 1 }, 100)).toThrow(Refusal);
  });
});
