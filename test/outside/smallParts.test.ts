import { describe, expect, it } from 'vitest';
import { fitsSmallPartsCylinder } from '../../lib/proof/safety/smallParts.js';
import { smallPartsCylinder } from '../../lib/proof/safety/smallPartsCylinder.js';

/** A round body about z, corners at each height on circles of each diameter. */
function turnedBody(rings: [diameter: number, height: number][], corners = 120): Float64Array {
  const points: number[] = [];
  for (const [diameter, z] of rings)
    for (let i = 0; i < corners; i++) {
      const angle = (2 * Math.PI * i) / corners;
      points.push((diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle), z);
    }
  return Float64Array.from(points);
}

const rod = (diameter: number, length: number) =>
  turnedBody([
    [diameter, 0],
    [diameter, length],
  ]);

function ball(diameter: number): Float64Array {
  const rings = Array.from({ length: 40 }, (_, i): [number, number] => {
    const angle = (Math.PI * (i + 0.5)) / 40;
    return [diameter * Math.sin(angle), (diameter / 2) * Math.cos(angle)];
  });
  return turnedBody(rings, 80);
}

function cube(side: number): Float64Array {
  return Float64Array.from(
    Array.from({ length: 8 }, (_, i) => [(i & 1) * side, ((i >> 1) & 1) * side, (i >> 2) * side]).flat(),
  );
}

/** The inside of the cylinder as 16 CFR 1501.4, figure 1 draws it in inches, times `scale`. */
function plug(scale: number): Float64Array {
  const points: number[] = [];
  for (let i = 0; i < 120; i++) {
    const angle = (2 * Math.PI * i) / 120;
    const [x, y] = [0.625 * Math.cos(angle), 0.625 * Math.sin(angle)];
    const depth = 1 + ((x + 0.625) / 1.25) * (2.25 - 1);
    for (const z of [0, -depth]) points.push(25.4 * scale * x, 25.4 * scale * y, 25.4 * scale * z);
  }
  return Float64Array.from(points);
}

/** The same body in an odd place and turn, so that nothing lies along an axis. */
function askew(points: Float64Array): Float64Array {
  const moved = new Float64Array(points.length);
  const [a, b, c] = [0.7, 2.1, 4.4];
  for (let i = 0; i < points.length; i += 3) {
    let [x, y, z] = points.subarray(i, i + 3);
    [x, y] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
    [y, z] = [y * Math.cos(b) - z * Math.sin(b), y * Math.sin(b) + z * Math.cos(b)];
    [x, y] = [x * Math.cos(c) - y * Math.sin(c), x * Math.sin(c) + y * Math.cos(c)];
    moved.set([x + 13, y - 40, z + 7], i);
  }
  return moved;
}

it('the cylinder is that of 16 CFR 1501.4 (text read, 1.00 in from memory) and, to 0.06 mm, of SOR/2011-17 (read)', () => {
  const { radius, depthOnAxis } = smallPartsCylinder;
  expect(2 * radius).toBeCloseTo(31.75, 12);
  // The floor falls by 45°, so the depth changes by the radius from the axis to either side.
  expect(depthOnAxis - radius).toBeCloseTo(25.4, 12);
  expect(depthOnAxis + radius).toBeCloseTo(57.15, 12);
  expect(Math.abs(2 * radius - 31.7)).toBeLessThan(0.06);
  expect(Math.abs(depthOnAxis + radius - 57.1)).toBeLessThan(0.06);
});

describe('bodies whose answer is known without computing', () => {
  const bodies: [string, Float64Array, boolean][] = [
    ['a ball of 31 mm', ball(31), true],
    ['a ball of 32 mm', ball(32), false],
    ['a coin of 31.6 mm', rod(31.6, 2), true],
    ['a coin of 31.9 mm, which is wider than the cylinder whichever way it is held', rod(31.9, 2), false],
    ['a cube of 22.3 mm, its face across the cylinder', cube(22.3), true],
    ['a cube of 22.6 mm, whose least shadow is a square with a diagonal of 31.96 mm', cube(22.6), false],
    ['a plug of 31.6 × 25.2 mm, which the shallow side lets in upright', rod(31.6, 25.2), true],
    ['a plug of 31.6 × 26 mm', rod(31.6, 26), false],
    ['the inside itself, a thousandth smaller, which goes in one way only', plug(0.999), true],
    ['the inside itself, three thousandths larger', plug(1.003), false],
    // The longest line runs from the rim above the shallow side to the deepest point: √(31.75² + 57.15²) = 65.38.
    ['a needle of 65.2 mm', rod(0.01, 65.2), true],
    ['a needle of 65.6 mm', rod(0.01, 65.6), false],
    // In the plane of symmetry a strip of 6 mm leaning by 28.4° goes in up to 55.7 mm; a rod no longer than that.
    ['a rod of 6 × 55 mm', rod(6, 55), true],
    ['a rod of 6 × 56.2 mm', rod(6, 56.2), false],
    ['a rod of 6 × 70 mm', rod(6, 70), false],
    ['a plate of 200 mm', rod(200, 10), false],
  ];
  it.each(bodies)('%s', (_, body, fits) => {
    expect(fitsSmallPartsCylinder(body).fits).toBe(fits);
    expect(fitsSmallPartsCylinder(askew(body)).fits).toBe(fits);
  });

  it('a ball has the margin of its radius', () => {
    expect(fitsSmallPartsCylinder(ball(31)).margin).toBeCloseTo(15.875 - 15.5, 2);
    expect(fitsSmallPartsCylinder(ball(32)).margin).toBeCloseTo(15.875 - 16, 2);
  });

  it('says how a plug is held: along its axis, either end out', () => {
    const { orientation } = fitsSmallPartsCylinder(rod(31.6, 25.2));
    expect(Math.abs(orientation!.axis[2])).toBeGreaterThan(0.999);
    const held = fitsSmallPartsCylinder(plug(0.999)).orientation!;
    expect(held.axis[2]).toBeGreaterThan(0.9999);
    expect(held.deepSide[0]).toBeGreaterThan(0.999);
  });
});
