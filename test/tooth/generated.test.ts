import { describe, expect, it } from 'vitest';
import { type Gear, gearSizes, radians } from '../../lib/tooth/gear.js';
import { type ProfileCuts, type ToothProfile, toothProfile } from '../../lib/tooth/profile.js';
import { distanceFromTrochoid, pointOnTrochoid } from '../../lib/tooth/rackRoot.js';
import { pointOn } from '../../lib/tooth/segments.js';
import { nearestOnFlank } from './flanks.js';
import { gear, ring } from './gears.js';

/** How far a point (along and out from the pitch line, mm) lies inside the rack's tooth; negative outside. */
function depthInRack(given: Gear, relief: number, along: number, out: number): number {
  const { normalPressureAngle: alpha, helixAngle } = gearSizes(given);
  const { module, rack, profileShift } = given;
  const below = profileShift * module - out;
  const tip = rack.dedendum * module;
  const fillet = rack.fillet * module;
  const straight = (depth: number) =>
    (Math.PI * module) / 4 + relief / Math.cos(alpha) - depth * Math.tan(alpha);
  const fromTip = tip - below;
  let halfWidth = straight(below);
  if (fromTip < fillet * (1 - Math.sin(alpha))) {
    const centre = straight(tip - fillet) - fillet / Math.cos(alpha);
    halfWidth = centre + Math.sqrt(Math.max(0, fillet ** 2 - (fillet - fromTip) ** 2));
  }
  return Math.min(fromTip, halfWidth / Math.cos(helixAngle) - Math.abs(along));
}

/** The deepest that a point of the gear gets into the rack while the rack rolls past: what the rack cuts away. */
function cutDepth(given: Gear, relief: number, [x, y]: [number, number]): number {
  const { referenceRadius } = gearSizes(given);
  const radius = Math.hypot(x, y);
  // The tooth is symmetric: its half at −y stands beside the space in which the rack's tooth rolls.
  const angle = -Math.abs(Math.atan2(y, x)) + Math.PI / given.teeth;
  const at = (roll: number) =>
    depthInRack(
      given,
      relief,
      radius * Math.sin(angle + roll) - referenceRadius * roll,
      radius * Math.cos(angle + roll) - referenceRadius,
    );
  let best = 0;
  let step = 0.002;
  for (let roll = -1.2; roll <= 1.2; roll += step) if (at(roll) > at(best)) best = roll;
  for (; step > 1e-10; step *= 0.7)
    for (const roll of [best - step, best + step]) if (at(roll) > at(best)) best = roll;
  return at(best);
}

function points(profile: ToothProfile, count: number): [number, number][] {
  return profile.segments
    .filter(({ kind }) => kind === 'trochoid' || kind === 'involute')
    .flatMap((segment) =>
      Array.from({ length: count + 1 }, (_, i) =>
        pointOn(segment, segment.from + ((segment.to - segment.from) * i) / count),
      ),
    );
}

const rackB = { addendum: 1, dedendum: 1.25, fillet: 0.3 };
const externals: [string, Gear, ProfileCuts][] = [
  ['20 teeth', gear(20), {}],
  ['8 teeth, deeply undercut', gear(8, { rack: rackB }), {}],
  ['12 teeth, undercut', gear(12, { rack: rackB }), {}],
  ['15 teeth, helical, relieved', gear(15, { module: 1.5, helixAngle: 30, rack: rackB }), { relief: 0.125 }],
  ['10 teeth, helical, undercut', gear(10, { module: 2, helixAngle: 15, rack: rackB }), { relief: 0.1 }],
  ['17 teeth, shifted', gear(17, { profileShift: 0.4, rack: rackB }), { relief: 0.05 }],
  ['60 teeth, shifted inward', gear(60, { profileShift: -0.3 }), {}],
  ['14 teeth, sharp rack', gear(14, { rack: { addendum: 1, dedendum: 1.25, fillet: 0 } }), {}],
];

describe('external teeth are what a rolling rack leaves', () => {
  it.each(externals)('%s', (_, given, cuts) => {
    const profile = toothProfile(given, cuts);
    for (const point of points(profile, 12)) {
      // The rack's edge passes through every point of the outline, and never inside it.
      expect(Math.abs(cutDepth(given, profile.relief, point))).toBeLessThan(2e-6 * given.module);
    }
  });

  it.each(externals)('%s: points next to one of the root curve lie along its tangent', (_, given, cuts) => {
    const [, curve] = toothProfile(given, cuts).segments;
    if (curve.kind !== 'trochoid') throw new Error('an external root is generated');
    const { root, from, to } = curve;
    for (let i = 1; i < 12; i++) {
      const t = from + ((to - from) * i) / 12;
      const [x, y] = pointOnTrochoid(root, t);
      const [nextX, nextY] = pointOnTrochoid(root, t + (to - from) * 1e-4);
      const apart = Math.hypot(nextX - x, nextY - y);
      expect(distanceFromTrochoid(root, t, nextX, nextY, true)).toBeCloseTo(apart, 12);
      // A curve leaves its tangent by the square of the distance only.
      expect(distanceFromTrochoid(root, t, nextX, nextY, false)).toBeLessThan(2e-3 * apart);
    }
  });

  it('undercut starts the involute where the rack stops cutting it away', () => {
    const given = gear(10, { rack: rackB });
    const { formRadius } = toothProfile(given);
    expect(formRadius).toBeGreaterThan(gearSizes(given).baseRadius);
    const flank = (radius: number): [number, number] => {
      const { baseRadius, halfThicknessAngle, transversePressureAngle } = gearSizes(given);
      const inv = (angle: number) => Math.tan(angle) - angle;
      const half = halfThicknessAngle + inv(transversePressureAngle) - inv(Math.acos(baseRadius / radius));
      return [radius * Math.cos(-half), radius * Math.sin(-half)];
    };
    expect(cutDepth(given, 0, flank(formRadius - 0.01))).toBeGreaterThan(1e-4);
    expect(Math.abs(cutDepth(given, 0, flank(formRadius + 0.01)))).toBeLessThan(2e-6);
  });
});

const rings: [string, Gear, ProfileCuts][] = [
  ['45 teeth', ring(45, { rack: rackB }), { tipRadius: 21.82, activeRadius: 23.2 }],
  [
    '45 teeth, helical, relieved',
    ring(45, { module: 1.5, helixAngle: 30, rack: rackB }),
    { relief: 0.125, tipRadius: 37.7, activeRadius: 40.2 },
  ],
  ['60 teeth, shifted', ring(60, { profileShift: 0.3 }), { relief: 0.05, activeRadius: 31 }],
];

describe('ring teeth', () => {
  it.each(rings)(
    '%s: spaces are external teeth set back by the relief, rounding beyond the mate',
    (_, given, cuts) => {
      const profile = toothProfile(given, cuts);
      expect(profile.formRadius).toBeGreaterThanOrEqual(cuts.activeRadius! - 1e-9);
      const half = Math.PI / given.teeth;
      // The second flank of the tooth at +x bounds the space that follows it.
      const flank = profile.segments.filter(({ kind }) => kind === 'involute')[1];
      for (let i = 0; i <= 6; i++) {
        const [x, y] = pointOn(flank, flank.from + ((flank.to - flank.from) * i) / 6);
        const radius = Math.hypot(x, y);
        // Turned and mirrored so that the space is centred on +x and the flank lies at +y.
        const angle = half - Math.atan2(y, x);
        const point = [radius * Math.cos(angle), radius * Math.sin(angle), 0] as const;
        const { distance } = nearestOnFlank(given, point, given.helixAngle ? 1 : 0);
        expect(distance).toBeCloseTo(profile.relief, 6);
      }
    },
  );
});

describe('every outline', () => {
  it.each([...externals, ...rings])('%s: closes, runs one way, is its own mirror image', (_, given, cuts) => {
    const profile = toothProfile(given, cuts);
    const ends = profile.segments.map((segment) => [
      pointOn(segment, segment.from),
      pointOn(segment, segment.to),
    ]);
    for (let i = 1; i < ends.length; i++) {
      expect(ends[i][0][0]).toBeCloseTo(ends[i - 1][1][0], 8);
      expect(ends[i][0][1]).toBeCloseTo(ends[i - 1][1][1], 8);
    }
    // The next tooth's root land begins where this tooth ends.
    const pitch = radians(360 / given.teeth);
    const [x, y] = ends[0][0];
    const [lastX, lastY] = ends[ends.length - 1][1];
    expect(x * Math.cos(pitch) - y * Math.sin(pitch)).toBeCloseTo(lastX, 8);
    expect(x * Math.sin(pitch) + y * Math.cos(pitch)).toBeCloseTo(lastY, 8);
    const [rise, fall] = profile.segments.filter(({ kind }) => kind === 'involute');
    const [a, b] = [pointOn(rise, rise.to), pointOn(fall, fall.from)];
    expect(a[0]).toBeCloseTo(b[0], 10);
    expect(a[1]).toBeCloseTo(-b[1], 10);
  });
});
