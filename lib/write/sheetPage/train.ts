import type { PartRecord, SimpleTrainRecord, TrainRecord } from '../../proof/sheetTypes.js';
import { figure } from '../figure.js';
import { paragraph, section, table } from './html.js';

/** How the parts drive each other. */
export function trainSection(train: TrainRecord | SimpleTrainRecord): string {
  return 'opening' in train ? planetarySection(train) : simpleSection(train);
}

/** The ratio of a pair or the way of a bar; nothing for one gear. */
function simpleSection({ ratios }: SimpleTrainRecord): string {
  if ('travelPerTurn' in ratios)
    return section(
      'Train',
      paragraph(`One turn of the pinion moves the bar by ${figure(ratios.travelPerTurn)} mm.`),
    );
  if (!('pinionDriving' in ratios)) return '';
  const sense = ratios.pinionDriving < 0 ? 'against each other' : 'the same way';
  return section(
    'Train',
    table(
      'Ratios: turns of the driving part for one turn of the driven part',
      ['Driving', 'Driven', 'Ratio', 'Sense'],
      [
        ['pinion', 'wheel', Math.abs(ratios.pinionDriving), sense],
        ['wheel', 'pinion', Math.abs(ratios.wheelDriving), sense],
      ],
    ),
  );
}

/** Ratios, places and unbalance of the planets, and the widest opening between them. */
function planetarySection({ ratios, planets, unbalance, opening }: TrainRecord): string {
  const ways = [
    ['ring', 'sun', 'carrier', ratios.ringHeld],
    ['carrier', 'sun', 'ring', ratios.carrierHeld],
    ['sun', 'ring', 'carrier', ratios.sunHeld],
  ] as const;
  return section(
    'Train',
    table(
      'Ratios: turns of the driving part for one turn of the driven part',
      ['Held', 'Driving', 'Driven', 'Ratio', 'Sense'],
      ways.map(([held, driving, driven, ratio]) => [
        held,
        driving,
        driven,
        Math.abs(ratio),
        ratio < 0 ? 'against each other' : 'the same way',
      ]),
    ),
    table(
      'Planets: place of the axis, and turn of the body about it',
      ['Planet', 'Place', 'Turn'],
      planets.map(({ angle, rotation }, i) => [String(i + 1), `${figure(angle)}°`, `${figure(rotation)}°`]),
    ),
    paragraph(
      `The planets' common centre of mass lies ${figure(100 * unbalance, 2)} % of the centre distance off the axis.`,
    ),
    paragraph(
      `Widest opening between planets: ${figure(opening.arc)}° at the set's axis; a straight edge as long as that opening's chord drops ${figure(opening.drop)} mm inside the ring's tip circle.`,
    ),
  );
}

/** The bodies as made. */
export function partsSection(parts: readonly PartRecord[]): string {
  const size = ({ bounds: { min, max } }: PartRecord): string =>
    max.map((most, axis) => figure(most - min[axis], 2)).join(' × ');
  return section(
    'Parts',
    table(
      'Bodies as made; triangles and volume of one',
      ['Part', 'Number', 'Triangles', 'Volume', 'Watertight', 'Box around all of them, mm'],
      parts.map((part) => [
        part.name,
        part.count,
        part.triangles,
        `${figure(part.volume, 1)} mm³`,
        part.watertight ? 'yes' : 'no',
        size(part),
      ]),
    ),
  );
}
