import type { ManifoldToplevel } from 'manifold-3d';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { Part } from '../../lib/solid/mesh.js';
import { partColour } from '../../lib/solid/partColour.js';
import { type PictureOptions, renderPicture } from '../../lib/write/picture.js';
import { referenceSet } from '../sets.js';
import { rackOf } from '../trains.js';
import { box } from '../write/meshes.js';
import { kernelBody, startKernel } from './kernel.js';

/** Read back with pngjs; areas from the projections and slices of manifold-3d. */
function seen(parts: readonly Part[], options: PictureOptions) {
  const { width, height, data } = PNG.sync.read(Buffer.from(renderPicture(parts, options)));
  const pixels = Array.from({ length: width * height }, (_, i) => [...data.subarray(4 * i, 4 * i + 3)]);
  const count = (is: (rgb: number[]) => boolean) => pixels.filter(is).length;
  const columns = pixels.flatMap((rgb, i) => (isBed(rgb) ? [] : [i % width]));
  const across =
    columns.reduce((most, x) => Math.max(most, x), 0) - columns.reduce((a, x) => Math.min(a, x)) + 1;
  return { width, height, pixels, count, across };
}

/** The bed is white, or grey where it lies in shadow; no part that is drawn here is grey. */
const isBed = ([r, g, b]: number[]): boolean => r === g && g === b && r > 110;

let kernel: ManifoldToplevel;
let parts: Part[];
beforeAll(async () => {
  kernel = await startKernel();
  // The ring as one more planet, so that it is blue and not grey as shadows are.
  parts = buildSet(referenceSet({ tolerance: 0.05 })).map((part) =>
    part.name === 'ring' ? { ...part, name: 'planet-9' } : part,
  );
});

describe('a picture', () => {
  test('looks at the teeth of a bar, unless asked otherwise', () => {
    const rack = buildSet(rackOf(15, 4, { tolerance: 0.1 }));
    const small = { width: 160, height: 120 };
    expect(renderPicture(rack, small)).toEqual(renderPicture(rack, { ...small, azimuth: 65 }));
    expect(renderPicture(rack, small)).not.toEqual(renderPicture(rack, { ...small, azimuth: -65 }));
  });

  test('covers what the bodies cover seen from there', () => {
    const [azimuth, elevation] = [-65, 42];
    const { width, height, count, across } = seen(parts, { width: 640, height: 480, azimuth, elevation });
    expect([width, height]).toEqual([640, 480]);
    // Turned so that the eye looks straight down, and laid flat.
    const whole = kernel.Manifold.compose(parts.map(({ mesh }) => kernelBody(kernel, mesh)));
    const flat = whole
      .rotate([0, 0, -azimuth - 90])
      .rotate([elevation - 90, 0, 0])
      .project();
    const { min, max } = flat.bounds();
    const scale = across / (max[0] - min[0]);
    const covered = count((rgb) => !isBed(rgb)) / scale ** 2;
    expect(covered / flat.area()).toBeGreaterThan(0.99);
    expect(covered / flat.area()).toBeLessThan(1.015);
  });

  test('shows each kind in its colour, cut where a section is asked for', () => {
    const height = 7;
    const { count, across } = seen(parts, {
      width: 700,
      height: 700,
      azimuth: -90,
      elevation: 90,
      section: { normal: [0, 0, 1], offset: height },
    });
    const scale = scaleOf(parts, across);
    const area = (list: readonly Part[]) =>
      list.reduce((sum, { mesh }) => sum + kernelBody(kernel, mesh).slice(height).area(), 0);
    // Cut faces are evenly lit; the flanks that show below them are darker.
    const cutFaces = ({ name }: Part) => {
      const face = partColour(name).map((share) => Math.min(255, 255 * 1.05 * share));
      return count((rgb) => rgb.every((value, i) => Math.abs(value - face[i]) < 2)) / scale ** 2;
    };
    const orange = cutFaces(parts[0]);
    const blue = cutFaces(parts[1]);
    // Edges are drawn half a pixel wide on either side.
    expect(orange / area(parts.slice(0, 1))).toBeGreaterThan(0.9);
    expect(orange / area(parts.slice(0, 1))).toBeLessThan(1.02);
    expect(blue / area(parts.slice(1))).toBeGreaterThan(0.9);
    expect(blue / area(parts.slice(1))).toBeLessThan(1.02);
  });

  test('draws edges, so that a box in one colour still shows its three faces', () => {
    const { count } = seen([{ name: 'sun', mesh: box([0, 0, 0], [20, 20, 20]) }], {
      width: 100,
      height: 100,
    });
    // Nine edges to be seen, each some 40 pixels long.
    expect(count(([r, g, b]) => Math.max(r, g, b) < 150)).toBeGreaterThan(250);
  });

  test('is the same bytes again, and lifts kinds apart', () => {
    const size = { width: 120, height: 90 };
    const once = renderPicture(parts, size);
    expect(renderPicture(parts, size)).toEqual(once);
    const before = parts.map(({ mesh }) => mesh.positions.slice());
    const apart = seen(parts, { ...size, separated: true });
    expect(apart.count((rgb) => !isBed(rgb))).not.toBe(seen(parts, size).count((rgb) => !isBed(rgb)));
    expect(parts.map(({ mesh }) => mesh.positions)).toEqual(before);
  });

  test.each([
    ['width', { width: 5000 }, [4096]],
    ['height', { height: 0 }, [16]],
    ['elevation', { elevation: 0 }, [5]],
    ['azimuth', { azimuth: Number.NaN }, []],
  ])('refuses %s out of range', (parameter, options, nearest) => {
    expect(() => renderPicture(parts, options)).toThrow(expect.objectContaining({ parameter, nearest }));
  });

  test('refuses no part', () => {
    expect(() => renderPicture([])).toThrow(Refusal);
  });
});

/** Pixels for each mm where the ring's rim is the widest of all. */
function scaleOf(list: readonly Part[], across: number): number {
  const ring = list[list.length - 1].mesh.positions;
  let most = 0;
  for (let i = 0; i < ring.length; i += 3) most = Math.max(most, Math.hypot(ring[i], ring[i + 1]));
  return across / (2 * most);
}
