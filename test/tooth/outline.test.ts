import { describe, expect, it } from 'vitest';
import { gearOutline } from '../../lib/tooth/outline.js';
import { type ToothProfile, toothProfile } from '../../lib/tooth/profile.js';
import { sampleSegment } from '../../lib/tooth/sample.js';
import { mirrored, pointOn, type Segment } from '../../lib/tooth/segments.js';
import { gear, ring } from './gears.js';

const profiles: [string, ToothProfile][] = [
  ['a spur gear', toothProfile(gear(20, { module: 2 }))],
  ['an undercut gear', toothProfile(gear(9))],
  [
    'a shifted helical gear with relief',
    toothProfile(gear(15, { profileShift: 0.4, helixAngle: 30 }), { relief: 0.05 }),
  ],
  ['a ring', toothProfile(ring(45, { module: 1.5 }), { tipRadius: 33 })],
  ['a helical ring', toothProfile(ring(52, { helixAngle: 20 }), { relief: 0.05 })],
];

const between = (segment: Segment, share: number) => segment.from + share * (segment.to - segment.from);

/** How far a curve leaves the chord between two of its parameters, looked at in a hundred places. */
function sagittaOf(segment: Segment, from: number, to: number): number {
  const [ax, ay] = pointOn(segment, from);
  const [bx, by] = pointOn(segment, to);
  const length = Math.hypot(bx - ax, by - ay);
  let most = 0;
  for (let i = 1; i < 100; i++) {
    const [x, y] = pointOn(segment, from + ((to - from) * i) / 100);
    most = Math.max(most, Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length);
  }
  return most;
}

describe.each(profiles)('the tooth of %s', (_, profile) => {
  const { segments } = profile;

  it('runs on from segment to segment, and into the next tooth', () => {
    const pitch = (2 * Math.PI) / profile.gear.teeth;
    segments.forEach((segment, i) => {
      const [x, y] = pointOn(segment, segment.to);
      const next = segments[(i + 1) % segments.length];
      const [u, v] = pointOn(next, next.from);
      const turn = i === segments.length - 1 ? pitch : 0;
      expect(x).toBeCloseTo(u * Math.cos(turn) - v * Math.sin(turn), 9);
      expect(y).toBeCloseTo(u * Math.sin(turn) + v * Math.cos(turn), 9);
    });
  });

  it('is its own image in the mirror y → −y, each flank and root curve run the other way', () => {
    for (const segment of segments) {
      const image = mirrored(segment);
      for (const share of [0, 0.3, 1]) {
        const [x, y] = pointOn(segment, between(segment, share));
        const [u, v] = pointOn(image, between(image, 1 - share));
        expect([u, v]).toEqual([expect.closeTo(x, 12), expect.closeTo(-y, 12)]);
      }
    }
    for (const [one, other] of [
      [segments[2], segments[4]],
      [segments[1], segments[5]],
    ]) {
      const [x, y] = pointOn(one, between(one, 0.3));
      expect(pointOn(other, between(other, 0.7))).toEqual([expect.closeTo(x, 12), expect.closeTo(-y, 12)]);
    }
  });

  it.each([0.02, 0.001, 0.0002])('is divided within %f mm, with hardly a point too many', (sagitta) => {
    for (const segment of segments) {
      const at = sampleSegment(segment, sagitta);
      expect([at[0], at[at.length - 1]]).toEqual([segment.from, segment.to]);
      const chords = at.slice(1).map((to, i) => sagittaOf(segment, at[i], to));
      const steps = at.slice(1).map((to, i) => (to - at[i]) / (segment.to - segment.from));
      for (const step of steps) expect(step).toBeGreaterThan(0);
      // The rule counts on short chords, where a sagitta is curvature times length squared over 8.
      expect(Math.max(...chords)).toBeLessThan(1.1 * sagitta);
      // One chord fewer would leave the curve by more: sagittas go with the square of the number of chords.
      const { length: count } = chords;
      const mean = chords.reduce((sum, chord) => sum + Math.sqrt(chord), 0) / count;
      if (count > 8) expect(((count / (count - 1)) * mean) ** 2).toBeGreaterThan(0.9 * sagitta);
    }
  });

  it('makes an outline of equal teeth, counter-clockwise, that names the segment of every line', () => {
    const { teeth } = profile.gear;
    const { points, segments: kinds } = gearOutline(profile, 0.001);
    const each = kinds.length / teeth;
    expect(each).toBe(segments.reduce((sum, segment) => sum + sampleSegment(segment, 0.001).length - 1, 0));
    expect(points.length).toBe(2 * kinds.length);
    const at = (i: number) => [points[2 * (i % kinds.length)], points[2 * (i % kinds.length) + 1]];
    let twice = 0;
    for (let i = 0; i < kinds.length; i++) {
      const [x, y] = at(i);
      const [u, v] = at(i + 1);
      expect(Math.hypot(u - x, v - y)).toBeGreaterThan(0);
      twice += x * v - y * u;
      const pitch = (2 * Math.PI) / teeth;
      const [s, t] = at(i + each);
      expect(
        Math.hypot(
          s - (x * Math.cos(pitch) - y * Math.sin(pitch)),
          t - (x * Math.sin(pitch) + y * Math.cos(pitch)),
        ),
      ).toBeLessThan(1e-9);
      expect(kinds[(i + each) % kinds.length]).toBe(kinds[i]);
    }
    expect(twice).toBeGreaterThan(0);
    // Every line lies on the segment that it names: its ends and, within the tolerance, its middle.
    for (let i = 0; i < each; i++) {
      const segment = segments[kinds[i]];
      const parameters = sampleSegment(segment, 0.001);
      const first = Array.from(kinds).indexOf(kinds[i]);
      const [x, y] = pointOn(segment, parameters[i - first]);
      expect(at(i)).toEqual([expect.closeTo(x, 9), expect.closeTo(y, 9)]);
    }
    expect([...new Set(Array.from(kinds.subarray(0, each)))]).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

describe('a ring’s root rounding', () => {
  const fat = { addendum: 1, dedendum: 1.25, fillet: 0.5 };
  const cases: [string, ToothProfile][] = [
    ['as large as the rack’s', toothProfile(ring(60, { rack: { ...fat, fillet: 0.1 } }))],
    ['held off by the active flank', toothProfile(ring(45, { rack: fat }), { activeRadius: 23.6 })],
    [
      'held off by the root land',
      toothProfile(ring(30, { rack: { ...fat, dedendum: 1.6, fillet: 0.9 } }), {
        activeRadius: 10,
        tipRadius: 14.3,
      }),
    ],
    [
      'held off by its base circle',
      toothProfile(ring(12, { rack: { addendum: 0.3, dedendum: 0.35, fillet: 0.38 }, profileShift: -0.4 }), {
        tipRadius: 5.7,
        activeRadius: 5.6,
      }),
    ],
    [
      'held off in a helical ring',
      toothProfile(ring(40, { rack: fat, helixAngle: 25 }), { activeRadius: 23 }),
    ],
  ];
  it.each(cases)('%s touches flank and root circle, and stays beyond the active flank', (_, profile) => {
    const { segments, gear: made, rootRadius, activeRadius, formRadius } = profile;
    const [land, round, flank] = segments;
    if (round.kind !== 'round' || land.kind !== 'arc' || flank.kind !== 'involute')
      throw new Error('not a ring');
    const [cx, cy] = round.centre;
    expect(Math.hypot(cx, cy) + round.radius).toBeCloseTo(rootRadius, 9);
    // At right angles to the flank where it meets it: the flank's normal touches the base circle.
    const [x, y] = pointOn(round, round.to);
    expect(Math.abs(cx * y - cy * x) / round.radius).toBeCloseTo(profile.sizes.baseRadius, 6);
    expect(Math.hypot(x, y)).toBeCloseTo(formRadius, 9);
    expect(formRadius).toBeGreaterThanOrEqual(activeRadius - 1e-9);
    expect(((land.to - land.from) / 2) * rootRadius).toBeGreaterThanOrEqual(0.01 * made.module - 1e-9);
    expect(round.radius).toBeLessThanOrEqual(made.rack.fillet * made.module + 1e-12);
    // No larger one would do: it is the rack's, or something holds it off.
    const { radius } = round;
    const held =
      Math.abs(formRadius - activeRadius) < 1e-6 ||
      Math.abs(((land.to - land.from) / 2) * rootRadius - 0.01 * made.module) < 1e-6 ||
      Math.abs(Math.hypot(cx, cy) - profile.sizes.baseRadius) < 1e-6 ||
      Math.abs(radius - made.rack.fillet * made.module) < 1e-12;
    expect(held).toBe(true);
  });

  it('is refused where there is no room for any, as are pointed teeth and tips below the base circle', () => {
    expect(() => toothProfile(ring(45), { activeRadius: 23.75 })).toThrow(/no room for a root rounding/);
    expect(() => toothProfile(ring(45), { tipRadius: 21 })).toThrow(/below its base circle/);
    expect(() => toothProfile(ring(45), { relief: 0.8 })).toThrow(/come to a point/);
  });
});
