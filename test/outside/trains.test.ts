import { beforeAll, describe, expect, it } from 'vitest';
import { fitTrain } from '../../lib/fit/train/fitTrain.js';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import { proveSet } from '../../lib/proof/proveSet.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import type { TrainSpec } from '../../lib/spec/types.js';
import { barProfile, halfThicknessAt } from '../../lib/tooth/bar.js';
import { gearSizes, radians } from '../../lib/tooth/gear.js';
import { transverseContactRatio } from '../../lib/train/contactRatio.js';
import { pairSizes } from '../../lib/train/pair.js';
import { rackMesh } from '../../lib/train/rackMesh.js';
import { gear } from '../tooth/gears.js';
import { gearOf, pairOf, rackOf, ringPairOf } from '../trains.js';
import { kernelBody, startKernel } from './kernel.js';

const spur = { helix: { form: 'spur' } };
/** So small a gap that handbook teeth, which have none, come out to the figures given. */
const noGap = { fit: { gap: 0.02 } };

describe('handbook pairs', () => {
  // Elements of Metric Gear Technology 4.1 and 4.6 (from memory, recomputed).
  it('m 3, 12/24 teeth stand 54 mm apart', () => {
    const [mesh] = trainNumbers(pairOf(12, 24, { module: 3, ...spur })).meshes;
    expect(mesh.centreDistance).toBeCloseTo(54, 9);
    expect(mesh.transverseContactRatio).toBeCloseTo(1.5111, 3);
  });

  it('x 0.6/0.36 stand 56.4999 mm apart, tips shortened to 44.840 and 79.400', () => {
    const shifted = { pinion: { teeth: 12, profileShift: 0.6 }, wheel: { teeth: 24, profileShift: 0.36 } };
    const { sheet } = proveSet(pairOf(12, 24, { module: 3, ...spur, ...noGap, ...shifted }));
    expect(sheet.meshes[0].centreDistance).toBeCloseTo(56.4999, 3);
    expect(sheet.meshes[0].workingPressureAngle).toBeCloseTo(26.0886, 3);
    expect(sheet.gears.map(({ tipDiameter }) => tipDiameter)).toEqual([
      expect.closeTo(44.84, 2),
      expect.closeTo(79.4, 2),
    ]);
    expect(sheet.meshes[0].transverseContactRatio).toBeCloseTo(1.2021, 3);
  });

  it('the centre distance 56.4999 asks for shifts that add up to 0.96', () => {
    const { gears } = trainNumbers(pairOf(12, 24, { module: 3, ...spur, centreDistance: 56.4999 }));
    expect(gears[0].gear.profileShift + gears[1].gear.profileShift).toBeCloseTo(0.96, 4);
  });
});

describe('handbook rack and pinion', () => {
  // Elements of Metric Gear Technology 4.7 (from memory, recomputed): mounting distance z m / 2 + x m + H = 51.800.
  it('m 3, 12 teeth, x 0.6 and a datum line at 32 mm stand 51.8 mm over the foot', () => {
    const pinion = { teeth: 12, profileShift: 0.6 };
    const backing = 32 - 1.25 * 3;
    const { sheet } = proveSet(
      rackOf(12, 20, { module: 3, faceWidth: 10, ...spur, pinion, bar: { teeth: 20, backing } }),
    );
    expect(sheet.meshes[0].centreDistance + sheet.bar!.datumHeight).toBeCloseTo(51.8, 9);
  });

  it('the bar moves π z m_t for one turn, and its base pitch is the pinion’s', () => {
    const spec = rackOf(18, 20, { helix: { form: 'helical', angle: 20 } });
    const { sheet } = proveSet(spec);
    const { transverseModule, transversePressureAngle, baseRadius } = gearSizes(
      trainNumbers(spec).gears[0].gear,
    );
    expect(sheet.train.ratios).toEqual({ travelPerTurn: expect.closeTo(Math.PI * 18 * transverseModule, 9) });
    const pitch = sheet.bar!.transversePitch;
    expect(pitch * Math.cos(transversePressureAngle)).toBeCloseTo((2 * Math.PI * baseRadius) / 18, 9);
  });

  // The rack is the limit of ever larger wheels, whose contact ratio the handbook pairs above bear out.
  it.each([
    [20, 0, 0],
    [12, 0.5, 0],
    [25, -0.2, 30],
  ])(
    '%d teeth, x %f at %d°: contact as with a wheel of ten million teeth',
    (teeth, profileShift, helixAngle) => {
      const pinion = gear(teeth, { profileShift, helixAngle });
      const wheel = gear(1e7, { helixAngle });
      const { tipRadius } = gearSizes(pinion);
      const { transverseContactRatio: ratio } = rackMesh(
        pinion,
        tipRadius,
        pinion.rack.addendum * pinion.module,
      );
      expect(ratio).toBeCloseTo(transverseContactRatio(pairSizes(pinion, wheel)), 4);
    },
  );
});

// ISO 53:1998 table 1 and table A.1: figures from memory.
describe('the teeth of a bar are the basic rack', () => {
  it.each([
    ['A', 0.25, 0.38],
    ['B', 0.25, 0.3],
    ['C', 0.25, 0.25],
    ['D', 0.4, 0.39],
  ])(
    'profile %s: clearance %f m, fillet %f m, half the pitch thick on the datum line',
    (rack, clearance, fillet) => {
      const { bar } = trainNumbers(rackOf(40, 5, { module: 2, rack, ...spur }));
      const profile = barProfile(bar!.bar);
      expect(profile.tip).toBeCloseTo(2, 12);
      expect(profile.root).toBeCloseTo(-2 * (1 + clearance), 12);
      expect(2 * profile.halfThickness).toBeCloseTo((Math.PI * 2) / 2, 12);
      // A fully round space is left a hair of a flat.
      expect(profile.round.radius).toBeCloseTo(2 * fillet, rack === 'D' ? 1 : 9);
      const drop = halfThicknessAt(profile, 0) - halfThicknessAt(profile, 1);
      expect(drop).toBeCloseTo(Math.tan(radians(20)), 12);
    },
  );

  it('touches flank and root with its rounding', () => {
    const profile = barProfile(trainNumbers(rackOf(40, 5, { module: 2, ...spur })).bar!.bar);
    const { u, v, radius } = profile.round;
    const alpha = radians(20);
    expect(v - radius).toBeCloseTo(profile.root, 12);
    const toFlank = (u - halfThicknessAt(profile, v)) * Math.cos(alpha);
    expect(toFlank).toBeCloseTo(radius, 12);
  });
});

describe('another kernel', () => {
  let kernel: Awaited<ReturnType<typeof startKernel>>;
  beforeAll(async () => {
    kernel = await startKernel();
  });

  const forms = ['spur', 'helical', 'herringbone'] as const;
  const trains: [string, (form: string) => TrainSpec][] = [
    ['a pair', (form) => pairOf(17, 30, { helix: { form } })],
    ['a wheel around a pinion', (form) => ringPairOf(15, 45, { helix: { form, hand: 'left' } })],
    ['a rack', (form) => rackOf(18, 8, { helix: { form } })],
    [
      'a rack of the other hand, shifted, over an odd bar',
      (form) => rackOf(17, 7, { helix: { form, hand: 'left' }, pinion: { teeth: 17, profileShift: 0.3 } }),
    ],
  ];

  it.each(trains.flatMap(([name, of]) => forms.map((form) => [form, name, of] as const)))(
    'measures the gap of %s teeth of %s, and takes both bodies',
    (form, _, of) => {
      const spec = of(form);
      const parts = buildSet(spec);
      const [one, two] = parts.map(({ mesh }) => kernelBody(kernel, mesh));
      for (const body of [one, two]) expect(body.status()).toBe('NoError');
      expect(Math.abs(one.minGap(two, 1) - spec.fit.gap)).toBeLessThanOrEqual(spec.tolerance);
      expect(one.intersect(two).volume()).toBe(0);
    },
  );

  it.each(forms)('finds the volume of a %s bar without bevels to be section times height', (form) => {
    const spec = rackOf(18, 6, { helix: { form }, bevel: { size: 0 }, tolerance: 0.0005 });
    const body = kernelBody(kernel, buildSet(spec)[1].mesh);
    const { bar } = fitTrain(trainNumbers(spec));
    const { profile, backing, length, teeth } = bar!;
    const { u, radius } = profile.round;
    const alpha = radians(20);
    // Half a tooth: the straight flank, the upright part beside the rounding, and what the rounding adds to it.
    const flank =
      ((halfThicknessAt(profile, profile.tip) + halfThicknessAt(profile, profile.form)) / 2) *
      (profile.tip - profile.form);
    const tangentU = u - radius * Math.cos(alpha);
    const height = profile.form - profile.root;
    const span = Math.PI / 2 - alpha;
    const rounding = ((u - tangentU) * height) / 2 - (radius * radius * (span - Math.sin(span))) / 2;
    const tooth = 2 * (flank + tangentU * height + rounding);
    const section = length * backing + (teeth * tooth) / Math.cos(profile.helixAngle);
    expect(body.volume() / (section * spec.faceWidth)).toBeCloseTo(1, 4);
  });
});

it('one gear with teeth inside, made for a pinion, is the wheel of their pair', () => {
  const wheel = trainNumbers(ringPairOf(15, 45)).gears[1];
  const single = trainNumbers(gearOf({ internal: true, teeth: 45, mateTeeth: 15 })).gears[0];
  expect(single.radii).toEqual(wheel.radii);
});
