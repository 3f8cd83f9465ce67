import { beforeAll, describe, expect, it } from 'vitest';
import { wallClearance } from '../../lib/fit/coupon/stations.js';
import { proveCoupon } from '../../lib/proof/coupon/proveCoupon.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { encodeStl } from '../../lib/write/stl.js';
import { encode3mf } from '../../lib/write/threemf.js';
import { kernelBody, startKernel } from './kernel.js';
import { readThreemf } from './readThreemf.js';

const gaps = [0.1, 0.2, 0.35];
const set = {
  kind: 'planetary',
  module: 1.5,
  faceWidth: 20,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 5 },
};
let coupon: ReturnType<typeof proveCoupon>;

beforeAll(() => {
  coupon = proveCoupon(resolveSpec(set), gaps);
}, 30_000);

/** Reference library: manifold-3d, and lib3mf, the 3MF Consortium's reader. */
describe('a coupon, seen by others', () => {
  it('has closed parts that keep their gaps in another kernel, and the volumes of ours', async () => {
    const kernel = await startKernel();
    const bodies = coupon.parts.map(({ mesh }) => kernelBody(kernel, mesh));
    const [frame, ...rest] = bodies;
    bodies.forEach((body, i) => {
      expect(body.status()).toBe('NoError');
      expect(body.volume() / coupon.sheet.parts[i].volume).toBeCloseTo(1, 4);
    });
    expect(frame.genus()).toBe(gaps.length);
    gaps.forEach((gap, i) => {
      const { body } = coupon.sheet.stations[i].gap;
      const found = rest[i].minGap(frame, 1);
      expect(Math.abs(found - gap)).toBeLessThanOrEqual(Math.max(0.03 * gap, 0.004));
      expect(found).toBeCloseTo(body!, 3);
    });
  });

  it('holds each pinion along its axis, however far it is pushed off its teeth', async () => {
    const kernel = await startKernel();
    const frame = kernelBody(kernel, coupon.parts[0].mesh);
    gaps.forEach((gap, i) => {
      const pinion = kernelBody(kernel, coupon.parts[i + 1].mesh);
      const { pushedOff, centred } = coupon.sheet.stations[i].play!;
      const common = (y: number, z: number) => frame.intersect(pinion.translate([0, y, z])).volume();
      const off = 0.999 * wallClearance(gap);
      for (const sign of [1, -1]) {
        expect(common(0, sign * centred * 0.97)).toBe(0);
        expect(common(0, sign * centred * 1.1)).toBeGreaterThan(0);
        expect(common(off, sign * pushedOff * 0.97)).toBe(0);
        expect(common(off, sign * pushedOff * 1.1)).toBeGreaterThan(0);
      }
      // It has room to roll to both sides, by half a tooth at least: a pitch for a pitch.
      const pitch = (Math.PI * 1.5) / Math.cos(Math.PI / 6);
      const { bounds } = coupon.sheet.parts[i + 1];
      const [x, y] = [0, 1].map((axis) => (bounds.min[axis] + bounds.max[axis]) / 2);
      for (const way of [-0.5, 0.5]) {
        const rolled = pinion
          .translate([-x, -y, 0])
          .rotate([0, 0, (-way * 360) / coupon.sheet.gears[i].teeth])
          .translate([x + way * pitch, y, 0]);
        expect(frame.intersect(rolled).volume(), `${gap} ${way}`).toBe(0);
      }
    });
  });

  it('is read by lib3mf as named bodies, the same bytes each time', async () => {
    const bytes = encode3mf(coupon.parts, { title: 'coupon' });
    const { meshes, warnings } = await readThreemf(bytes);
    expect(warnings).toBe(0);
    expect(meshes.map(({ name }) => name)).toEqual(['frame', 'pinion-1', 'pinion-2', 'pinion-3', 'gauge']);
    for (const { manifoldAndOriented, valid } of meshes) expect(manifoldAndOriented && valid).toBe(true);
    const again = proveCoupon(resolveSpec(set), gaps).parts;
    expect(Buffer.from(encodeStl(again)).equals(Buffer.from(encodeStl(coupon.parts)))).toBe(true);
  }, 30_000);
});
