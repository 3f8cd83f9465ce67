import { refuse } from '../refusal.js';
import { closest } from '../spec/nearest.js';
import { filamentNames, filamentProfiles } from '../spec/profiles/filaments.js';

/** Something that goes wrong with a print, why it likely does, and which number to change. */
export interface Trouble {
  /** The word it goes by. */
  id: string;
  symptom: string;
  /** Likely causes, the likeliest first, each with what tells it and what to change. */
  causes: readonly { cause: string; change: string }[];
  caution?: string;
}

const glass = filamentNames
  .map((name) => {
    const { dryingTemperature, glassTransition } = filamentProfiles[name];
    return `${name} at ${dryingTemperature} °C (softens at ${glassTransition})`;
  })
  .join(', ');

/** Cautions for drying, kept below the glass transition of each filament. Common practice, no source. */
export const dryingCaution = `Dry filament below the temperature at which it softens, or the spool fuses: ${glass}; the maker's own figures go before these. Use a dryer made for it, never an oven that cooks food; spool and dryer are hot, vapours need fresh air, and nobody leaves it running unwatched.`;

const smallParts =
  'Broken-off tips and loose planets are small parts: keep them from children under 3 years, and wear eye protection when breaking parts free.';

/** Troubles as the trade knows them: common practice, no source. */
export const troubles: readonly Trouble[] = [
  {
    id: 'wont-turn',
    symptom: 'It will not turn at all: parts are fused',
    causes: [
      {
        cause: 'the gap is less than this printer and filament can keep open',
        change: 'fit.gap up by 0.05, or what trial advise says',
      },
      {
        cause: 'only the first layers are fused: they spread on the bed',
        change:
          'printer.firstLayerGrowth up by 0.1 (the check first-layer then says whether bevel.size suffices); slicer: first-layer compensation, nozzle 0.05 higher over the bed',
      },
      {
        cause: 'walls stand out all the way up: too much filament is extruded',
        change:
          'slicer: flow down by 2 to 5 %; or printer.growth to what calipers read (trial add --reading)',
      },
      {
        cause: 'seams stand in the tooth spaces',
        change: 'slicer: seam not at random places, and away from the flanks; fit.gap up by 0.05',
      },
    ],
    caution: smallParts,
  },
  {
    id: 'binds',
    symptom: 'It turns, then binds at the same place or after some turns',
    causes: [
      {
        cause: 'blobs or seams on a few flanks',
        change:
          'work it to and fro until they wear off; slicer: seam placement, retraction; fit.gap up by 0.03',
      },
      {
        cause: 'the bed is not square or belts are slack: parts come out oval',
        change: 'printer: square the frame and tighten belts; a bar read along x and y tells it',
      },
      {
        cause: 'growth is not compensated, so the teeth are thicker than the file asks',
        change: 'printer.growth to what calipers read on base tangent length or over pins',
      },
      {
        cause: 'planets tip and wedge',
        change: 'faceWidth up, or fit.gap down by 0.03; see planets-tip',
      },
    ],
  },
  {
    id: 'strings',
    symptom: 'Strings and hairs between the teeth',
    causes: [
      {
        cause: 'the filament is damp (it hisses and pops at the nozzle)',
        change: 'dry the filament, and log it: trial add --dryness 6',
      },
      { cause: 'the nozzle is too hot', change: 'slicer: temperature down by 5 to 10 °C' },
      {
        cause: 'too little retraction',
        change:
          'slicer: retraction up by 0.5 mm (0.1 with a direct drive), travel around and not across walls',
      },
    ],
    caution: dryingCaution,
  },
  {
    id: 'weak-layers',
    symptom: 'Layers come apart',
    causes: [
      {
        cause: 'too cold or too much cooling',
        change: 'slicer: temperature up by 5 to 10 °C, fan down (for ABS and ASA off)',
      },
      { cause: 'the filament is damp', change: 'dry the filament' },
      {
        cause: 'layers are too thick for the nozzle',
        change: 'printer.layer to at most half of printer.nozzle',
      },
      {
        cause: 'walls are too thin',
        change: 'slicer: at least 4 walls, so that teeth are solid; ring.rim up',
      },
    ],
    caution: dryingCaution,
  },
  {
    id: 'tips-break',
    symptom: 'Tooth tips break off or are missing',
    causes: [
      {
        cause: 'tips are thinner than a line',
        change: 'module up, or printer.nozzle down: the check tip-thickness says how much is missing',
      },
      {
        cause: 'too much profile shift points the teeth',
        change: 'profileShift of that gear down by 0.1, or other tooth counts (plan --nozzle)',
      },
      { cause: 'layers are weak', change: 'see weak-layers' },
    ],
    caution: smallParts,
  },
  {
    id: 'skips',
    symptom: 'Teeth skip when it is turned hard or pinched',
    causes: [
      {
        cause: 'the gap leaves too little depth of teeth in engagement',
        change: 'fit.gap down by 0.05, or what trial advise says; module up',
      },
      {
        cause: 'the rim gives way',
        change: 'ring.rim up by 1 to 2: the check skip says what pinch it stands',
      },
      { cause: 'few teeth share the load', change: 'planets.count up (plan lists what assembles)' },
    ],
  },
  {
    id: 'planets-tip',
    symptom: 'Planets tip or rattle',
    causes: [
      { cause: 'the gap is more than needed', change: 'fit.gap down by 0.05, or what trial advise says' },
      {
        cause: 'the gears are too low for their gap',
        change: 'faceWidth up: the check tilt says by how much planets tip',
      },
      { cause: 'spur teeth hold nothing upright', change: 'helix.form: herringbone' },
    ],
  },
  {
    id: 'falls-apart',
    symptom: 'Planets fall out',
    causes: [
      {
        cause: 'nothing holds them along the axis',
        change: 'helix.form: herringbone (the check captured says how far parts can move)',
      },
      {
        cause: 'the gap lets herringbone teeth pass over each other',
        change: 'fit.gap down by 0.05, helix.angle up to 30 or more, faceWidth up',
      },
      { cause: 'the ring is pressed open', change: 'ring.rim up by 1 to 2' },
    ],
    caution: smallParts,
  },
];

/**
 * The troubles that a symptom names: by their word, or by all the words of their symptom that are given.
 * @throws Refusal where there is none, with the nearest
 */
export function troublesFor(symptom: string): Trouble[] {
  const plain = (text: string) => text.toLowerCase().replace(/['’]/g, '');
  const words = plain(symptom)
    .split(/[^a-z]+/)
    .filter(Boolean);
  const found = troubles.filter((trouble) => {
    const text = plain(`${trouble.id} ${trouble.symptom}`);
    return words.length > 0 && words.every((word) => text.includes(word));
  });
  if (found.length) return found;
  const ids = troubles.map(({ id }) => id);
  refuse('not-one-of', 'symptom', symptom, `is none of ${ids.join(', ')}`, [closest(symptom, ids)]);
}
