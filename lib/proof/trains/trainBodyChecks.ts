import type { Check } from '../check.js';
import { bed } from '../checks/bed.js';
import { bodyGapOf } from '../checks/bodyGap.js';
import { firstLayer } from '../checks/firstLayer.js';
import { freeToTurn } from '../checks/freeToTurn.js';
import { helixAccuracy } from '../checks/helixAccuracy.js';
import { overhang } from '../checks/overhang.js';
import { selfIntersection } from '../checks/selfIntersection.js';
import { smallParts } from '../checks/smallParts.js';
import { watertight } from '../checks/watertight.js';
import type { TrainBodies } from './trainFindings.js';
import type { TrainPlay } from './trainPlay.js';

/** Checks on the finished meshes of a train; one gear by itself has no gap to keep. */
export function trainBodyChecks(found: TrainBodies): Check[] {
  const { asked, parts, bodies, motion, play, adjustments } = found;
  const { spec, mesh } = asked;
  const measured = { spec, parts, bodies, adjustments, smallParts: found.smallParts };
  const name = mesh ? `between ${mesh.between.join(' and ')}` : '';
  return [
    ...(mesh ? [bodyGapOf(spec, bodies, [{ name, kinds: mesh.between }])] : []),
    watertight(measured),
    selfIntersection(measured),
    helixAccuracy(measured),
    ...(motion.pairs.length ? [freeToTurn(motion, bodies, found.rolling?.least ?? null)] : []),
    overhang(measured),
    ...(mesh ? [firstLayer(measured)] : []),
    bed(measured),
    smallParts(measured),
    ...(play ? [capturedPair(play, spec.limits.axialPlay)] : []),
  ];
}

/**
 * What holds the two parts to each other along the axis. Never more than a note: their axes and guides are held by
 * pins and shafts that the maker puts in.
 */
function capturedPair({ axial, heldBy, confirmed, mate }: TrainPlay, limit: number): Check {
  const { up, down } = axial;
  const most = up === null || down === null ? null : Math.max(up, down);
  const unproved = confirmed.filter(({ clear, meets }) => !(clear && meets)).map(({ motion }) => motion);
  const own =
    mate.part === 'bar'
      ? 'The pinion needs its own shaft, and the bar its own guide'
      : 'Pinion and wheel each need their own pin or shaft';
  return {
    id: 'captured',
    holds: most !== null && most <= limit && unproved.length === 0,
    level: 'note',
    value: most,
    limit,
    unit: 'mm',
    says:
      most === null
        ? `nothing holds pinion and ${mate.part} to each other along the axis; herringbone teeth would. ${own}`
        : `held to each other along the axis by ${heldBy.join(' and ')}: the pinion moves ${up!.toFixed(2)} mm up and ${down!.toFixed(2)} mm down against the ${mate.part}` +
          (unproved.length ? `; the meshes do not bear it out: ${unproved.join(', ')}` : '') +
          `. ${own}: nothing else keeps them at their distance`,
  };
}
