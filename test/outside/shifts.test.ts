import fc from 'fast-check';
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { proveSet } from '../../lib/proof/proveSet.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { standardRack } from '../../lib/tooth/racks.js';
import { distanceAt, distanceFor } from '../../lib/train/shifts/distance.js';
import { shiftFrame } from '../../lib/train/shifts/frame.js';
import { specShifts } from '../../lib/train/shifts/specShifts.js';
import { type Balance, type SolvedShifts, solveShifts } from '../../lib/train/solveShifts.js';
import { setOf } from '../sets.js';
import { kernelBody, startKernel } from './kernel.js';

/** Solved profile shifts against handbook examples, textbook formulas written out again here, and another kernel. */

const within = (value: number, printed: number, room: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(room);

const alpha = (20 * Math.PI) / 180;
const inv = (angle: number) => Math.tan(angle) - angle;
const form = { rack: standardRack('B', alpha), pressureAngle: 20, helixAngle: 0 };

describe('centre distance and shift sums', () => {
  // Elements of Metric Gear Technology 4.6: 12/24, module 3, shifts 0.6 and 0.36. From memory, recomputed.
  it('external pair 12/24', () => {
    const frame = shiftFrame({ sunTeeth: 12, planetTeeth: 24, ringTeeth: 60 }, form);
    within(3 * distanceFor(frame, 'inner', 0.96), 56.4999, 5e-5);
    const { inner } = distanceAt(frame, 56.4999 / 3);
    within(inner.shifts, 0.96, 5e-5);
    within((inner.workingAngle * 180) / Math.PI, 26.0886, 5e-5);
  });

  // Elements of Metric Gear Technology 5.1: 16/24, module 3, ring shifted by 0.5. From memory, recomputed.
  it('internal pair 16/24', () => {
    const frame = shiftFrame({ sunTeeth: 12, planetTeeth: 16, ringTeeth: 24 }, form);
    within(3 * distanceFor(frame, 'outer', 0.5), 13.1683, 5e-5);
    const { outer } = distanceAt(frame, 13.1683 / 3);
    within(outer.shifts, 0.5, 5e-5);
    within((outer.workingAngle * 180) / Math.PI, 31.0937, 2e-4);
  });

  // Elements of Metric Gear Technology 6.10, normal system: 12/60, module 3, helix 30°. From memory, recomputed.
  it('helical pair 12/60', () => {
    const frame = shiftFrame({ sunTeeth: 12, planetTeeth: 60, ringTeeth: 132 }, { ...form, helixAngle: 30 });
    within(distanceAt(frame, 125 / 3).inner.shifts, 0.09809, 5e-6);
  });

  // inv α_w = inv α + 2 tan α Σx / Σz at a common distance of 15 modules; worked out by hand, no page claimed.
  it('15/14/45 asks for 0.56 and −0.43 at 15 modules', () => {
    const frame = shiftFrame({ sunTeeth: 15, planetTeeth: 14, ringTeeth: 45 }, form);
    const { inner, outer } = distanceAt(frame, 15);
    within(inner.shifts, 0.56, 5e-3);
    within(outer.shifts, -0.43, 5e-3);
  });
});

const solved = (sun: number, planet: number, ring: number, balance: Balance, gap = 0) => {
  const counts = { sunTeeth: sun, planetTeeth: planet, ringTeeth: ring };
  const found = solveShifts(counts, { ...form, gap }, { balance });
  expect(found).not.toHaveProperty('refused');
  return found as SolvedShifts;
};

/** Sizes of a spur mesh of module 1 by the handbook: y, shortened tips, working angle. */
function handbook(z1: number, z2: number, x1: number, x2: number) {
  const target = inv(alpha) + (2 * Math.tan(alpha) * (x1 + x2)) / (z1 + z2);
  let [low, high] = [0.01, 1.2];
  for (let i = 0; i < 100; i++)
    if (inv((low + high) / 2) < target) low = (low + high) / 2;
    else high = (low + high) / 2;
  const working = low;
  const y = ((z1 + z2) / 2) * (Math.cos(alpha) / Math.cos(working) - 1);
  return {
    working,
    centre: (z1 + z2) / 2 + y,
    tip1: z1 / 2 + 1 + y - x2,
    tip2: z2 / 2 + 1 + y - x1,
  };
}

/**
 * Specific sliding of the driving gear where the mate's tip (radius `tip`, centre at `centre`) touches it, from the
 * velocities of the two touching points: (v1 − v2)/v1 along the flank.
 */
function slidingByVelocity(z1: number, z2: number, working: number, centre: number, tip: number) {
  // Gear 1 in the origin, its mate at (centre, 0); the line of action leaves gear 1's base circle at the working angle.
  const base1 = (z1 / 2) * Math.cos(alpha);
  const base2 = (z2 / 2) * Math.cos(alpha);
  const along = [Math.sin(working), Math.cos(working)];
  const foot = [base1 * Math.cos(working), -base1 * Math.sin(working)];
  const s = centre * Math.sin(working) - Math.sqrt(tip ** 2 - base2 ** 2);
  const point = [foot[0] + s * along[0], foot[1] + s * along[1]];
  // The flank is square to the line of action; ω1 = 1, ω2 = −z1/z2.
  const flank = [-along[1], along[0]];
  const speed = (omega: number, x: number, y: number) => omega * (-y * flank[0] + x * flank[1]);
  const own = speed(1, point[0], point[1]);
  const mate = speed(-z1 / z2, point[0] - centre, point[1]);
  return (own - mate) / own;
}

describe('balance', () => {
  // Specific sliding is defined by the speeds of the touching points along the flank (ISO 21771, from memory).
  it.each([
    [15, 14, 45],
    [12, 24, 60],
    [24, 15, 55],
    [18, 18, 54],
  ])('sliding: %d/%d/%d slide alike where each tip touches', (sun, planet, ring) => {
    const found = solved(sun, planet, ring, 'sliding');
    const { working, centre, tip1, tip2 } = handbook(sun, planet, found.sun, found.planet);
    within(centre, found.centreDistance, 1e-9);
    const ofSun = slidingByVelocity(sun, planet, working, centre, tip2);
    const ofPlanet = slidingByVelocity(planet, sun, working, centre, tip1);
    within(found.specificSliding.sun, ofSun, 1e-6);
    within(found.specificSliding.planet, ofPlanet, 1e-6);
    within(ofSun, ofPlanet, 1e-3 * Math.abs(ofSun));
    expect(ofSun).toBeLessThan(0);
  });

  // s = d (π/(2z) + 2 x tan α/z + inv α − inv α_y), where the rack's straight flank ends: ISO 53 profile B, h_fP 1.25, ρ_fP 0.3.
  it.each([
    [15, 14, 45],
    [12, 24, 60],
    [24, 15, 55],
  ])('root: %d/%d/%d are alike where the involutes begin', (sun, planet, ring) => {
    const found = solved(sun, planet, ring, 'root');
    const thickness = (z: number, x: number) => {
      const depth = 1.25 - 0.3 * (1 - Math.sin(alpha));
      const reach = (z / 2) * Math.sin(alpha) - (depth - x) / Math.sin(alpha);
      const radius = Math.hypot((z / 2) * Math.cos(alpha), reach);
      const angle = Math.atan(reach / ((z / 2) * Math.cos(alpha)));
      return 2 * radius * (Math.PI / 2 / z + (2 * x * Math.tan(alpha)) / z + inv(alpha) - inv(angle));
    };
    within(found.rootThickness.sun, thickness(sun, found.sun), 1e-3);
    within(thickness(sun, found.sun), thickness(planet, found.planet), 1e-3);
  });

  it('none: the sun takes all where the limits allow', () => {
    const { sun, planet, ring } = solved(24, 30, 85, 'none');
    within(planet, 0, 1e-5);
    expect(sun).not.toBe(0);
    // One centre distance: (z1 + z2)/cos α_w alike in both meshes (VDI 2157, from memory).
    const toRing = inv(alpha) + (2 * Math.tan(alpha) * (ring - planet)) / (85 - 30);
    const { working } = handbook(24, 30, sun, planet);
    const other = Math.acos(((85 - 30) * Math.cos(working)) / (24 + 30));
    within(inv(other), toRing, 1e-8);
  });
});

describe('15/14/45 with five planets', () => {
  let kernel: ManifoldToplevel;
  beforeAll(async () => {
    kernel = await startKernel();
  });

  it.each([
    ['spur', 0],
    ['herringbone', 30],
  ])('%s: another kernel measures the gap asked in every mesh', (shape, angle) => {
    const spec = setOf(15, 14, 45, 5, { profileShift: 'solve', helix: { form: shape, angle } });
    const bodies = buildSet(spec).map(({ mesh }) => kernelBody(kernel, mesh));
    const { gap } = spec.fit;
    const allowed = Math.max(0.03 * gap, spec.tolerance);
    const ring = bodies.length - 1;
    expect(ring).toBe(6);
    for (let i = 1; i < ring; i++) {
      for (const mate of [0, ring]) within(bodies[mate].minGap(bodies[i], 3 * gap), gap, allowed);
      expect(bodies[i].minGap(bodies[1 + (i % 5)], 3 * gap)).toBeGreaterThanOrEqual(gap);
    }
    for (const body of bodies) body.delete();
  });
});

it('random sets whose shifts are solved pass every must check', () => {
  const shape = fc.record({
    sun: fc.integer({ min: 10, max: 26 }),
    planet: fc.integer({ min: 10, max: 22 }),
    more: fc.integer({ min: -3, max: 3 }),
    helix: fc.constantFrom(
      { form: 'spur' },
      { form: 'helical', angle: 18 },
      { form: 'herringbone', angle: 28 },
    ),
    shiftBalance: fc.constantFrom('sliding', 'root', 'none'),
    gap: fc.constantFrom(0.15, 0.25, 0.35),
    gapShare: fc.constantFrom(0, 0.5, 1),
  });
  const solvable = shape
    .map(({ sun, planet, more, gap, gapShare, ...rest }) =>
      setOf(sun, planet, sun + 2 * planet + more, 3, {
        ...rest,
        profileShift: 'solve',
        faceWidth: 6,
        tolerance: 0.02,
        planets: { teeth: planet, count: 3, spacing: 'nearest' },
        fit: { gap, gapShare },
        printer: { bed: { width: 500, depth: 500 } },
      }),
    )
    .filter((spec) => 'sun' in (specShifts(spec).outcome ?? {}));
  fc.assert(
    fc.property(solvable, (spec) => {
      const { sheet, parts } = proveSet(spec);
      const failing = sheet.checks.filter(({ holds, level }) => !holds && level === 'must');
      expect(failing.map(({ id, says }) => `${id}: ${says}`)).toEqual([]);
      expect(parts.length).toBeGreaterThan(0);
      expect(sheet.checks.find(({ id }) => id === 'undercut')!.holds).toBe(true);
    }),
    { numRuns: 10, endOnFailure: true },
  );
}, 120_000);
