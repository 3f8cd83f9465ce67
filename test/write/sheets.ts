import type { Sheet } from '../../lib/proof/sheetTypes.js';
import type { Spec } from '../../lib/spec/types.js';

/** The spinner of the table-top exhibit (invented), with every default written out. */
export function spinner(): Spec {
  return {
    name: 'table-spinner',
    kind: 'planetary',
    module: 1.5,
    pressureAngle: 20,
    rack: { addendum: 1, dedendum: 1.25, fillet: 0.38 },
    helix: { form: 'herringbone', angle: 30, hand: 'right' },
    faceWidth: 20,
    bevel: { angle: 45, size: 0.6 },
    sun: { teeth: 15, profileShift: 0, bore: { shape: 'round', diameter: 8 } },
    planets: { teeth: 15, count: 5, spacing: 'equal', profileShift: 0 },
    ring: { teeth: 45, profileShift: 0, rim: 5 },
    fit: { gap: 0.25, gapShare: 0.5 },
    printer: { nozzle: 0.4, layer: 0.2, lineWidth: 0.45 },
    carrier: 'none',
    retention: 'herringbone',
    tolerance: 0.01,
    limits: { contactRatio: 1.2, toothFeature: 0.45, wall: 0.9, rim: 2 },
  };
}

/** A sheet with figures made up to be told apart on a page: no two alike, none of them measured. */
export function inventedSheet(): Sheet {
  const gear = (part: 'sun' | 'planet' | 'ring', teeth: number, at: number): Sheet['gears'][number] => ({
    part,
    teeth,
    count: part === 'planet' ? 5 : 1,
    module: 1.5,
    profileShift: at / 1000,
    pitchDiameter: at + 0.011,
    baseDiameter: at + 0.012,
    tipDiameter: at + 0.013,
    rootDiameter: at + 0.014,
    helixAngle: 30,
    hand: part === 'sun' ? 'right' : 'left',
    baseTangentLength: { teethSpanned: 3, nominal: at + 0.015, withGap: at + 0.016, measurable: true },
    overPins: { pin: at + 0.017, nominal: at + 0.018, withGap: at + 0.019 },
  });
  return {
    name: 'table-spinner',
    resolved: spinner(),
    gears: [
      gear('sun', 15, 100),
      gear('planet', 16, 200),
      {
        ...gear('ring', 45, 300),
        baseTangentLength: { teethSpanned: null, nominal: null, withGap: null, measurable: false },
      },
    ],
    meshes: [
      {
        between: ['sun', 'planet'],
        centreDistance: 25.981,
        workingPressureAngle: 22.796,
        transverseContactRatio: 1.234,
        overlapRatio: 2.122,
        gap: { asked: 0.25, rollingLeast: 0.2499, bodies: 0.2512 },
        normalBacklash: 0.5,
        circumferentialBacklash: 0.5774,
      },
      {
        between: ['planet', 'ring'],
        centreDistance: 25.9812,
        workingPressureAngle: 22.797,
        transverseContactRatio: 1.345,
        overlapRatio: 2.123,
        gap: { asked: 0.25, rollingLeast: null, bodies: null },
        normalBacklash: 0.501,
        circumferentialBacklash: 0.5775,
      },
    ],
    train: {
      ratios: { ringHeld: 4, carrierHeld: -3, sunHeld: 1.3333 },
      planets: [0, 72, 144, 216, 288].map((angle) => ({ angle, rotation: angle / 7 })),
      opening: { arc: 17.25, drop: 0.625 },
    },
    checks: [
      {
        id: 'coaxial',
        holds: true,
        level: 'must',
        value: 0,
        limit: 0.001,
        unit: 'mm',
        says: 'Both meshes share one centre distance.',
      },
      {
        id: 'neighbours',
        holds: true,
        level: 'must',
        value: 1.559,
        limit: 0.25,
        unit: 'mm',
        says: 'Neighbouring planets clear each other.',
      },
      {
        id: 'contact-ratio',
        holds: false,
        level: 'should',
        value: 1.111,
        limit: 1.2,
        unit: '1',
        says: 'Less than asked for.',
      },
      {
        id: 'overhang',
        holds: true,
        level: 'should',
        value: 44.9,
        limit: 50,
        unit: 'deg',
        says: 'Prints without support.',
      },
      {
        id: 'watertight',
        holds: true,
        level: 'must',
        value: 0,
        limit: 0,
        unit: 'open edges',
        says: 'Every body is closed.',
      },
      {
        id: 'small-parts',
        holds: true,
        level: 'note',
        value: null,
        limit: null,
        unit: 'mm',
        says: 'Nothing measured.',
      },
    ],
    parts: [
      {
        name: 'sun',
        count: 1,
        triangles: 12_344,
        volume: 8765.43,
        watertight: true,
        bounds: { min: [-14.5, -14.25, 0], max: [14.5, 14.25, 20] },
      },
    ],
    cautions: ['Small gears can be swallowed: keep them from children under three.'],
    adjustments: ['Tips of the ring cut back by 0.36 mm.'],
    cogweave: '0.1.0',
  };
}
