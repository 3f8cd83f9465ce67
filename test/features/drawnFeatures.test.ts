import { describe, expect, it } from 'vitest';
import { drawnBore } from '../../lib/features/bore.js';
import { textWords } from '../../lib/features/text.js';
import { drawnFeatures } from '../../lib/features/through.js';
import { drawnCarrier } from '../../lib/fit/carrier/drawnCarrier.js';
import { drawnTrain } from '../../lib/fit/train/drawnTrain.js';
import { setOf as numbersOf } from '../../lib/fit/train/setOf.js';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import type { Carrier } from '../../lib/spec/types.js';
import { setNumbers } from '../planetarySets.js';
import { referenceSet, setOf } from '../sets.js';

/**
 * A print undoes what was drawn: everything comes out smaller by the shrinkage, then each wall stands out by the growth. So a
 * distance across an opening loses the growth twice, one across what stands up gains it twice, and one between two
 * walls that look the same way, an axis, a height or a depth is shrunk alone.
 */
const GROWTH = 0.1;
const left = 0.98;
const scale = 1 / left;
const walls = { opening: -2, standing: 2, length: 0 };
const printed = (drawn: number, kind: keyof typeof walls) => drawn * left + walls[kind] * GROWTH;

/** Holds each size of a feature against the way in which the print takes it. */
function expectAsked<T extends object>(
  asked: T,
  drawn: object | undefined,
  kinds: Partial<Record<keyof T, keyof typeof walls>>,
) {
  for (const key of Object.keys(asked) as (keyof T)[]) {
    const is = (drawn as T)[key];
    const kind = kinds[key];
    if (kind === undefined) expect(is, String(key)).toEqual(asked[key]);
    else expect(printed(is as number, kind), String(key)).toBeCloseTo(asked[key] as number, 12);
  }
}

const spec = referenceSet({ printer: { growth: GROWTH }, filament: { shrinkage: 2 } });
const drawnOf = (asked: object) => drawnFeatures(asked, { growth: GROWTH, scale }, textWords(spec));
const pit = { diameter: 'opening', depth: 'length' } as const;
const letters = { content: 'go', size: 5, style: 'raised', height: 0.6 } as const;
const text = { size: 'length', height: 'length' } as const;

describe('features come out as asked', () => {
  it('on gears', () => {
    const asked = {
      screw: { size: 'M4', series: 'medium', diameter: 4.5, countersink: 'top', headDiameter: 9.4 },
      nut: {
        size: 'M4',
        series: 'medium',
        at: 'top',
        clearance: 0.2,
        acrossFlats: 7.2,
        depth: 3.4,
        diameter: 4.5,
      },
      knob: { diameter: 16, height: 9, grips: 6 },
      crank: { shape: 'square', acrossFlats: 8, clearance: 0.3, depth: 7, handle: 40 },
      text: letters,
    } as const;
    const drawn = drawnOf(asked);
    expectAsked(asked.screw, drawn.screw, { diameter: 'opening', headDiameter: 'opening' });
    // The clearance is in the width across flats already.
    expectAsked(asked.nut, drawn.nut, { acrossFlats: 'opening', diameter: 'opening', depth: 'length' });
    expectAsked(asked.knob, drawn.knob, { diameter: 'standing', height: 'length' });
    const { clearance, ...peg } = asked.crank;
    expectAsked(peg, drawn.crank, { acrossFlats: 'standing', depth: 'length', handle: 'length' });
    const pitWidth = drawn.crank!.acrossFlats + drawn.crank!.clearance;
    expect(printed(pitWidth, 'opening')).toBeCloseTo(8 + clearance, 12);
    expectAsked(letters, drawn.text, text);
    expect(drawnOf({ crank: { ...peg, clearance } }).crank).toHaveProperty('handle');
    const { handle: _, ...noHandle } = peg;
    expect(drawnOf({ crank: { ...noHandle, clearance } })).toEqual({
      crank: expect.not.objectContaining({ handle: expect.anything() }),
    });
  });

  it('on planets', () => {
    const asked = {
      hole: { diameter: 12 },
      dimple: { diameter: 10, depth: 2 },
      pocket: { diameter: 9, depth: 3 },
      text: letters,
    };
    const drawn = drawnOf(asked);
    expectAsked(asked.hole, drawn.hole, { diameter: 'opening' });
    expectAsked(asked.dimple, drawn.dimple, pit);
    expectAsked(asked.pocket, drawn.pocket, pit);
    expectAsked(letters, drawn.text, text);
  });

  it('on rings', () => {
    const asked = {
      grip: { count: 30, depth: 1.5 },
      flange: { diameter: 110, thickness: 3, at: 'top' },
      bolts: { circle: 83, count: 8, size: 'M3', series: 'medium', diameter: 3.4 },
      mount: {
        ...{ hole: 98, panel: 12, clearance: 0.5, screws: 6, circle: 104, diameter: 4.5 },
        ...{ screw: 'M4' as const, headDiameter: 9.4, nutFlats: 7.2, nutDepth: 3.4, clamp: 5 },
      },
      text: letters,
    } as const;
    const drawn = drawnOf(asked);
    expectAsked(asked.grip, drawn.grip, { depth: 'length' });
    expectAsked(asked.flange, drawn.flange, { diameter: 'standing', thickness: 'length' });
    expectAsked(asked.bolts, drawn.bolts, { circle: 'length', diameter: 'opening' });
    expectAsked(asked.mount, drawn.mount, {
      ...{ hole: 'length', panel: 'length', circle: 'length', nutDepth: 'length', clamp: 'length' },
      ...{ clearance: 'opening', diameter: 'opening', headDiameter: 'opening', nutFlats: 'opening' },
    });
    expectAsked(letters, drawn.text, text);
  });

  it('and nothing is added that was not asked for', () => {
    expect(drawnOf({})).toEqual({});
  });

  it('labels keep the gap that is asked, not the one that is drawn', () => {
    const { text: drawn } = drawnOf({ text: { ...letters, content: 'gap {gap} m{module}' } });
    expect(drawn!.content).toBe('gap 0.25 m1.5');
  });
});

describe('bores come out as asked', () => {
  it.each([
    [{ shape: 'round', diameter: 8 }, { diameter: 'opening' }],
    [{ shape: 'hexagon', acrossFlats: 6.6 }, { acrossFlats: 'opening' }],
    [{ shape: 'square', acrossFlats: 6 }, { acrossFlats: 'opening' }],
    // From the flat to the far side of the circle: two walls that face each other.
    [
      { shape: 'D', diameter: 5, acrossFlat: 4.5 },
      { diameter: 'opening', acrossFlat: 'opening' },
    ],
  ] as const)('%o', (bore, kinds) => {
    expectAsked<object>(bore, drawnBore(bore, { growth: GROWTH, scale }), kinds);
  });

  it('none stays none', () => {
    expect(drawnBore({ shape: 'none' }, { growth: GROWTH, scale })).toEqual({ shape: 'none' });
  });
});

describe('carriers come out as asked', () => {
  const carrierOf = (more: object) =>
    setOf(15, 15, 45, 3, { module: 2, carrier: { plates: 'both', ...more } }).carrier as Carrier;
  const drawn = (asked: Carrier) => drawnCarrier(asked, GROWTH, scale) as Carrier;

  it('pins and the gap around them', () => {
    const asked = carrierOf({ form: 'pins' });
    const is = drawn(asked);
    expectAsked(asked.pin!, is.pin, { diameter: 'standing', depth: 'length' });
    expect(printed(is.gap, 'opening')).toBeCloseTo(asked.gap, 12);
    // Whole layers stay whole layers.
    expect(is.axialGap).toBe(asked.axialGap);
    expect(is.thickness).toBe(asked.thickness);
  });

  it.each([
    [
      { shape: 'round', diameter: 12, height: 5 },
      { diameter: 'standing', height: 'length' },
    ],
    [
      { shape: 'hexagon', acrossFlats: 12, height: 5 },
      { acrossFlats: 'standing', height: 'length' },
    ],
    [
      { shape: 'square', acrossFlats: 12, height: 5 },
      { acrossFlats: 'standing', height: 'length' },
    ],
    [
      { shape: 'D', diameter: 12, acrossFlat: 10, height: 5 },
      { diameter: 'standing', acrossFlat: 'standing', height: 'length' },
    ],
  ] as const)('its boss %o', (boss, kinds) => {
    const asked = { ...carrierOf({ form: 'pins' }), boss };
    expectAsked<object>(boss, drawn(asked).boss, kinds);
  });

  it('its bolts', () => {
    const bolts = { size: 'M3', series: 'medium', count: 4, circle: 30, diameter: 3.4 } as const;
    const asked = { ...carrierOf({ form: 'pins' }), bolts } as Carrier;
    const is = drawn(asked).bolts as typeof bolts;
    expectAsked(bolts, is, { circle: 'length', diameter: 'opening' });
  });

  it('none stays none', () => {
    expect(drawnCarrier('none', GROWTH, scale)).toBe('none');
  });
});

it('lips come out as asked: the gap between lip and bevel is one between two walls that face each other', () => {
  const asked = setOf(15, 15, 45, 3, {
    ...{ module: 2, helix: { form: 'spur' }, retention: 'lips', lips: { on: 'ring', gap: 0.3, reach: 0.4 } },
    ...{ printer: { growth: GROWTH }, filament: { shrinkage: 2 }, fit: { gap: 0.3 } },
  });
  const back = drawnTrain(trainNumbers(asked));
  const drawn = back.spec;
  expect(printed(drawn.lips!.gap, 'opening')).toBeCloseTo(0.3, 12);
  expect(printed(drawn.lips!.reach!, 'length')).toBeCloseTo(0.4, 12);
  expect(drawn.lips!.on).toBe('ring');
  // Tips and roots of teeth, and where true flanks are needed to.
  const { radii } = setNumbers(asked);
  const made = numbersOf(back).radii;
  for (const [part, outward] of [
    ['sun', 1],
    ['planet', 1],
    ['ring', -1],
  ] as const) {
    expect(left * made[part].tip + outward * GROWTH).toBeCloseTo(radii[part].tip, 9);
    expect(left * made[part].root + outward * GROWTH).toBeCloseTo(radii[part].root, 9);
    expect(left * made[part].active).toBeCloseTo(radii[part].active, 9);
  }
});
