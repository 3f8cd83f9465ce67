import type { Check } from '../check.js';
import { unproved } from '../motion/confirmed.js';
import { AXIAL, type TrainPlay } from '../motion/trainPlay.js';

/**
 * What holds the two parts to each other along the axis. Never more than a note: their axes and guides are held by
 * pins and shafts that the maker puts in.
 */
export function capturedPair({ axial, heldBy, confirmed, mate }: TrainPlay, limit: number): Check {
  const { up, down } = axial;
  const most = up === null || down === null ? null : Math.max(up, down);
  const doubted = unproved(confirmed.filter(({ motion }) => AXIAL.includes(motion)));
  const own =
    mate.part === 'bar'
      ? 'The pinion needs its own shaft, and the bar its own guide'
      : 'Pinion and wheel each need their own pin or shaft';
  return {
    id: 'captured',
    holds: most !== null && most <= limit && doubted.length === 0,
    level: 'note',
    value: most,
    limit,
    unit: 'mm',
    says:
      most === null
        ? `nothing holds pinion and ${mate.part} to each other along the axis; herringbone teeth would. ${own}`
        : `held to each other along the axis by ${heldBy.join(' and ')}: the pinion moves ${up!.toFixed(2)} mm up and ${down!.toFixed(2)} mm down against the ${mate.part}` +
          (doubted.length ? `; the meshes do not bear it out: ${doubted.join(', ')}` : '') +
          `. ${own}: nothing else keeps them at their distance`,
  };
}
