import { describe, expect, it } from 'vitest';
import { type CouponLayout, couponLayout, GAUGE } from '../../../lib/fit/coupon/layout.js';
import { keyHole } from '../../../lib/fit/coupon/pinion.js';
import { stationsLike } from '../../../lib/fit/coupon/stations.js';
import { resolveSpec } from '../../../lib/spec/resolveSpec.js';
import { gearSizes } from '../../../lib/tooth/gear.js';

const like = (more: object = {}) =>
  resolveSpec({
    ...{
      kind: 'planetary',
      module: 1.5,
      faceWidth: 20,
      sun: { teeth: 15 },
      planets: { teeth: 15, count: 5 },
    },
    ...more,
  });
const gaps = (count: number) => Array.from({ length: count }, (_, i) => Math.round(10 + 5 * i) / 100);
const layoutOf = (count: number, more: object = {}) => couponLayout(stationsLike(like(more), gaps(count)));

const extent = (places: readonly (readonly [number, number])[], axis: 0 | 1) => {
  const values = places.map((place) => place[axis]);
  return [Math.min(...values), Math.max(...values)];
};

/** Whether a place is within a closed outline. */
function within([x, y]: readonly [number, number], outline: CouponLayout['frame']): boolean {
  return outline.reduce((inside, [ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}

describe.each([2, 3, 4, 5, 6, 7, 9, 11, 12])('a coupon of %d gaps', (count) => {
  it('has every slot in the frame with its walls around it, and the gauge beside it', () => {
    const { frame, axes, slots, walls, gauge, labels } = layoutOf(count);
    const boxes = axes.map(([x, y], i) => {
      const [from, to] = slots[i].ends;
      return { from: x + from, to: x + to, top: y + slots[i].smooth };
    });
    boxes.forEach((box, i) => {
      for (const corner of [
        [box.from - 0.99 * walls.side, box.top + 0.99 * walls.side],
        [box.to + 0.99 * walls.side, box.top + 0.99 * walls.side],
      ] as const)
        expect(within(corner, frame), `slot ${i + 1}`).toBe(true);
      expect(within(labels[i], frame)).toBe(true);
      // From the upper left, as one reads.
      const next = boxes[i + 1];
      if (!next) return;
      if (Math.abs(next.top - box.top) < 3) expect(next.from - box.to).toBeGreaterThan(walls.side - 1e-6);
      else expect(next.top).toBeLessThan(box.top);
    });
    // Four millimetres from the frame, nowhere over it.
    const [x, y] = gauge.at;
    for (let i = 0; i <= 60; i++)
      for (let j = 0; j <= 32; j++) {
        const place = [x - 3.9 + (i / 60) * (gauge.length + 3.9), y + (j / 32) * gauge.width] as const;
        expect(within(place, frame)).toBe(false);
      }
    expect(y).toBeGreaterThan(-1e-9);
  });
});

it('comes out of a print that grows and shrinks as it was asked for', () => {
  const growth = 0.06;
  const teeth = { filament: { shrinkage: 0 } };
  const asked = layoutOf(7, teeth);
  const drawn = layoutOf(7, { printer: { growth }, filament: { shrinkage: 2 } });
  const standing = (size: number) => 0.98 * size + 2 * growth;
  const opening = (size: number) => 0.98 * size - 2 * growth;
  drawn.slots.forEach(({ ends, smooth }, i) => {
    const before = asked.slots[i];
    expect(opening(ends[1] - ends[0])).toBeCloseTo(before.ends[1] - before.ends[0], 9);
    expect(0.98 * smooth - growth).toBeCloseTo(before.smooth, 9);
    for (const axis of [0, 1] as const)
      expect(0.98 * drawn.axes[i][axis]).toBeCloseTo(asked.axes[i][axis], 9);
  });
  expect(standing(drawn.walls.side)).toBeCloseTo(asked.walls.side, 9);
  expect(standing(drawn.walls.backing)).toBeCloseTo(asked.walls.backing, 9);
  for (const axis of [0, 1] as const) {
    const [least, most] = extent(drawn.frame, axis);
    const before = extent(asked.frame, axis);
    expect(standing(most - least)).toBeCloseTo(before[1] - before[0], 9);
  }
  expect(standing(drawn.gauge.length)).toBeCloseTo(GAUGE.length, 9);
  expect(standing(drawn.gauge.width)).toBeCloseTo(GAUGE.width, 9);
  expect(opening(drawn.gauge.hole)).toBeCloseTo(GAUGE.hole, 9);
  expect(0.98 * drawn.height).toBeCloseTo(asked.height, 9);
});

describe('the teeth of a coupon', () => {
  it.each([
    [{ form: 'herringbone', angle: 15 }, 15],
    [{ form: 'herringbone', angle: 28 }, 28],
    [{ form: 'herringbone', angle: 14 }, 30],
    [{ form: 'helical', angle: 20 }, 30],
    [{ form: 'spur' }, 30],
  ])('like %o are herringbones at %d°', (helix, angle) => {
    const { stations, adjustments } = stationsLike(like({ helix }), [0.2, 0.3]);
    for (const { spec } of stations) expect(spec.helix).toMatchObject({ form: 'herringbone', angle });
    const kept = helix.form === 'herringbone' && 'angle' in helix && helix.angle === angle;
    expect(/herringbone teeth at/.test(adjustments.join())).toBe(!kept);
  });
});

// Keys as they are sold: quarter-inch bits 6.35, then ISO 2936 (from memory); 0.3 mm of play.
it('the hole for a key is the largest that leaves three lines of wall inside the roots', () => {
  const keys = [6.35, 5, 4, 3, 2.5, 2];
  for (const module of [0.5, 0.8, 1, 1.25, 1.5, 2]) {
    const spec = like({ module, fit: { gap: 0.1 } });
    for (const teeth of [9, 12, 20]) {
      const pinion = { teeth, profileShift: 0.2 };
      const { rootRadius } = gearSizes({
        ...{ teeth, module, pressureAngle: 20, helixAngle: 30, rack: spec.rack, internal: false },
        profileShift: 0.2,
      });
      const room = (key: number) => rootRadius - (key + 0.3) / Math.sqrt(3) - 3 * spec.printer.lineWidth;
      const largest = keys.find((key) => room(key) >= 0);
      const hole = keyHole(spec, pinion, 30);
      expect(hole).toEqual(
        largest === undefined
          ? { shape: 'none' }
          : { shape: 'hexagon', acrossFlats: expect.closeTo(largest + 0.3, 9) },
      );
    }
  }
});
