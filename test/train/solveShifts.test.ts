import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generatedFormRadius } from '../../lib/tooth/externalProfile.js';
import { type Gear, gearSizes } from '../../lib/tooth/gear.js';
import { standardRack } from '../../lib/tooth/racks.js';
import { transverseThickness } from '../../lib/tooth/thickness.js';
import { leastProfileShift } from '../../lib/tooth/undercut.js';
import { leastClearance } from '../../lib/train/assembly.js';
import { centreDistance, pairSizes } from '../../lib/train/pair.js';
import { distanceAt } from '../../lib/train/shifts/distance.js';
import { shiftFrame } from '../../lib/train/shifts/frame.js';
import { tightest } from '../../lib/train/shifts/limits.js';
import { slidingOf, trialOf } from '../../lib/train/shifts/trial.js';
import { mayBeSolved, type SolvedShifts, solveShifts } from '../../lib/train/solveShifts.js';
import { specificSliding } from '../../lib/train/specificSliding.js';

const rack = standardRack('B', (20 * Math.PI) / 180);

const sets = fc.record({
  sunTeeth: fc.integer({ min: 6, max: 40 }),
  planetTeeth: fc.integer({ min: 6, max: 40 }),
  more: fc.integer({ min: -5, max: 5 }),
  helixAngle: fc.constantFrom(0, 15, 30),
  gap: fc.constantFrom(0, 0.1, 0.2, 0.3),
  gapShare: fc.constantFrom(0, 0.5, 1),
  balance: fc.constantFrom('sliding' as const, 'root' as const, 'none' as const),
});

function solve({ sunTeeth, planetTeeth, more, helixAngle, gap, gapShare, balance }: SetDrawn) {
  const counts = { sunTeeth, planetTeeth, ringTeeth: sunTeeth + 2 * planetTeeth + more };
  const form = { rack, pressureAngle: 20, helixAngle, gap, gapShare };
  const found = solveShifts(counts, form, { balance });
  const gearOf = (teeth: number, profileShift: number, internal = false): Gear => ({
    teeth,
    module: 1,
    pressureAngle: 20,
    helixAngle,
    rack,
    profileShift,
    internal,
  });
  const gears = (shifts: SolvedShifts) => ({
    sun: gearOf(sunTeeth, shifts.sun),
    planet: gearOf(planetTeeth, shifts.planet),
    ring: gearOf(counts.ringTeeth, shifts.ring, true),
  });
  return { counts, form, found, gears };
}

type SetDrawn = typeof sets extends fc.Arbitrary<infer T> ? T : never;

describe('solved shifts', () => {
  it('give both meshes one centre distance, without undercut, with tips left; or say which limit forbids them', () => {
    let solved = 0;
    fc.assert(
      fc.property(sets, (drawn) => {
        const { counts, form, found, gears } = solve(drawn);
        if ('refused' in found) {
          expect(found.refused).toMatch(/\w/);
          return;
        }
        solved++;
        const { sun, planet, ring } = gears(found);
        expect(centreDistance(sun, planet)).toBeCloseTo(found.centreDistance, 7);
        expect(centreDistance(planet, ring)).toBeCloseTo(found.centreDistance, 7);
        for (const gear of [sun, planet])
          expect(gear.profileShift).toBeGreaterThanOrEqual(leastProfileShift(gear));
        expect(mayBeSolved(counts, form)).toBe(true);
        const y = found.centreDistance - gearSizes(sun).referenceRadius - gearSizes(planet).referenceRadius;
        const shortened = Math.max(0, sun.profileShift + planet.profileShift - y);
        for (const [gear, share] of [
          [sun, form.gapShare],
          [planet, 1 - form.gapShare],
        ] as const) {
          const { tipRadius, helixAngle, referenceRadius } = gearSizes(gear);
          const tip = tipRadius - shortened;
          const normal = Math.cos(Math.atan((Math.tan(helixAngle) * tip) / referenceRadius));
          expect(transverseThickness(gear, tip, form.gap * share) * normal).toBeGreaterThan(0.2 - 1e-5);
        }
      }),
    );
    expect(solved).toBeGreaterThan(20);
  });

  it('say the sliding and the root thickness that the tooth and mesh formulas say', () => {
    fc.assert(
      fc.property(sets, (drawn) => {
        const { form, found, gears } = solve({ ...drawn, gap: 0 });
        if ('refused' in found) return;
        const { sun, planet } = gears(found);
        const y = found.centreDistance - gearSizes(sun).referenceRadius - gearSizes(planet).referenceRadius;
        const tipOf = (gear: Gear) =>
          gearSizes(gear).tipRadius - Math.max(0, sun.profileShift + planet.profileShift - y);
        const formOf = (gear: Gear) => generatedFormRadius(gear, form.gap, gearSizes(gear).rootRadius);
        const { first, second } = specificSliding(
          pairSizes(sun, planet, {
            tipRadius1: tipOf(sun),
            tipRadius2: tipOf(planet),
            formRadius1: formOf(sun),
            formRadius2: formOf(planet),
          }),
        );
        expect(found.specificSliding.sun / first).toBeCloseTo(1, 5);
        expect(found.specificSliding.planet / second).toBeCloseTo(1, 5);
        expect(found.rootThickness.sun).toBeCloseTo(transverseThickness(sun, formOf(sun)), 6);
        expect(found.rootThickness.planet).toBeCloseTo(transverseThickness(planet, formOf(planet)), 6);
      }),
    );
  });

  it('are zero where standard teeth do', () => {
    for (const balance of ['sliding', 'root', 'none'] as const)
      expect(
        solveShifts(
          { sunTeeth: 20, planetTeeth: 20, ringTeeth: 60 },
          { rack, pressureAngle: 20, helixAngle: 30 },
          { balance },
        ),
      ).toMatchObject({ sun: 0, planet: 0, ring: 0 });
  });

  it('keep what is given, and find the rest', () => {
    const counts = { sunTeeth: 15, planetTeeth: 14, ringTeeth: 45 };
    const form = { rack, pressureAngle: 20, helixAngle: 0 };
    const distances = ({ sun, planet, ring }: SolvedShifts) => {
      const gear = (teeth: number, profileShift: number, internal = false) =>
        ({ teeth, module: 1, pressureAngle: 20, helixAngle: 0, rack, profileShift, internal }) satisfies Gear;
      return [
        centreDistance(gear(15, sun), gear(14, planet)),
        centreDistance(gear(14, planet), gear(45, ring, true)),
      ];
    };
    for (const given of [
      { sun: 0.3 },
      { planet: 0.3 },
      { ring: -0.1 },
      { sun: 0.3, planet: 0.25 },
      { planet: 0.3, ring: -0.1 },
      { sun: 0.3, ring: -0.1 },
    ]) {
      const found = solveShifts(counts, form, { given });
      expect(found).toMatchObject(given);
      const [toSun, toRing] = distances(found as SolvedShifts);
      expect(toSun).toBeCloseTo(toRing, 7);
    }
  });

  it('refuse what given shifts make impossible', () => {
    const found = solveShifts(
      { sunTeeth: 15, planetTeeth: 14, ringTeeth: 45 },
      { rack, pressureAngle: 20, helixAngle: 0 },
      { given: { sun: 1.4, planet: 1.4 } },
    );
    expect(found).toHaveProperty('refused');
  });

  it('leave neighbouring planets their gap, where the angle between them is named', () => {
    const counts = { sunTeeth: 15, planetTeeth: 13, ringTeeth: 45 };
    const form = { rack, pressureAngle: 20, helixAngle: 0, gap: 0.1 };
    const clearance = (count: number) => {
      const found = solveShifts(counts, form, { neighbourAngle: 360 / count });
      if ('refused' in found) return found.limit;
      const y = found.centreDistance - (15 + 13) / 2;
      const tip = 13 / 2 + 1 + found.planet - (found.sun + found.planet - y);
      return leastClearance([0, 360 / count], found.centreDistance, tip);
    };
    expect(clearance(5)).toBeGreaterThanOrEqual(0.1);
    expect(clearance(9)).toBe('neighbours');
  });

  it('cost no more effort than any of thousands of choices tried one by one', () => {
    let [balanced, admissible] = [0, 0];
    fc.assert(
      fc.property(sets, (drawn) => {
        const { counts, form, found } = solve({ ...drawn, balance: 'sliding' });
        const frame = shiftFrame(counts, form);
        const wanted = { tipThickness: 0.2, toothThickness: 0, contactRatio: 1.2 };
        let least = Number.POSITIVE_INFINITY;
        let most = Number.NEGATIVE_INFINITY;
        const low = Math.max(frame.base.inner, frame.base.outer, frame.unshifted.inner - 3);
        for (let i = 1; i < 60; i++) {
          const at = distanceAt(frame, low + i * 0.1);
          let before = Number.NaN;
          for (let planet = -1; planet <= 1.5; planet += 0.025) {
            const trial = trialOf(frame, at, planet);
            const { sun, planet: mate } = slidingOf(frame, trial);
            const { room } = tightest(frame, trial, wanted, {});
            most = Math.max(most, room);
            // Where the sign changes balance lies between two tries, and the limits are kept there with room to spare.
            const crossed = (mate - sun) * before < 0;
            before = mate - sun;
            if (crossed && room > 0.03)
              least = Math.min(least, trial.sun ** 2 + trial.planet ** 2 + trial.ring ** 2);
          }
        }
        if (most > 0) expect(found).not.toHaveProperty('refused');
        if ('refused' in found) return;
        if (most > 0) admissible++;
        if (!Number.isFinite(least)) return;
        balanced++;
        expect(found.sun ** 2 + found.planet ** 2 + found.ring ** 2).toBeLessThan(
          least + 0.1 * Math.sqrt(least) + 1e-3,
        );
      }),
      { numRuns: 40 },
    );
    expect(balanced).toBeGreaterThan(5);
    expect(admissible).toBeGreaterThan(10);
  });

  it('are not looked for where counts or sizes are out of range', () => {
    const form = { rack, pressureAngle: 20, helixAngle: 0 };
    const counts = { sunTeeth: 15, planetTeeth: 14, ringTeeth: 45 };
    const wrong: [string, object, object][] = [
      ['sunTeeth', { sunTeeth: 14.5 }, {}],
      ['planetTeeth', { planetTeeth: Number.NaN }, {}],
      ['ringTeeth', { ringTeeth: 4000 }, {}],
      ['pressureAngle', {}, { pressureAngle: 40 }],
      ['helixAngle', {}, { helixAngle: -1 }],
      ['gap', {}, { gap: 0.9 }],
      ['gapShare', {}, { gapShare: 2 }],
      ['rack.dedendum', {}, { rack: { ...rack, dedendum: 9 } }],
    ];
    for (const [parameter, count, size] of wrong)
      expect(() => solveShifts({ ...counts, ...count }, { ...form, ...size }), parameter).toThrow(
        new RegExp(`^${parameter}: `),
      );
  });

  it('are the same every time', () => {
    const again = () =>
      solveShifts(
        { sunTeeth: 12, planetTeeth: 24, ringTeeth: 60 },
        { rack, pressureAngle: 20, helixAngle: 0, gap: 0.2 },
      );
    expect(again()).toEqual(again());
  });
});
