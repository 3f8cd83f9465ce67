import { unproved } from '../../proof/motion/confirmed.js';
import type { Axial, PlayRecord, TiltRecord } from '../../proof/motion/playRecord.js';
import type { TrainPlay } from '../../proof/motion/trainPlay.js';
import { figure } from '../figure.js';
import { paragraph, section, table } from './html.js';

/** How far parts can move in the play that the gap leaves; nothing when they were not built. */
export function playSection(play: PlayRecord | TrainPlay | null): string {
  if (!play) return '';
  return 'mate' in play ? pairSection(play) : planetarySection(play);
}

/** Pinion and mate, on axes that the maker holds. */
function pairSection({ mate, axial, nearer, leaning: leans, heldBy, confirmed }: TrainPlay): string {
  const held = heldBy.length
    ? `Along the axis pinion and ${mate.part} are held to each other by ${heldBy.join(' and ')}.`
    : `Nothing holds pinion and ${mate.part} to each other along the axis.`;
  const way = mate.degrees === null ? mm(mate.mm) : `${figure(mate.degrees)}°`;
  const moves = mate.part === 'bar' ? 'Bar, pushed along' : 'Wheel, turned';
  const rows: [string, string][] = [
    [moves, `± ${way}`],
    ['Pinion, up and down', bothWays(axial)],
    [`Axis, nearer to the ${mate.part}`, mm(nearer)],
    ['Axis, leaning towards it', leaning(leans.inPlane)],
    ['Axis, leaning across that', leaning(leans.outOfPlane)],
  ];
  const doubted = unproved(confirmed);
  const own =
    'Axes and guides are held by the pins, shafts and guides that are put in. One part moves while the other is held; the pinion’s axis must stand truer than the last three figures, at which teeth bind.' +
    (doubted.length ? ` The meshes do not bear out: ${doubted.join(', ')}.` : '');
  return section(
    'Play',
    paragraph(`${held} ${own}`),
    table('How far parts can move', ['Motion', 'Found'], rows),
  );
}

function planetarySection(play: PlayRecord): string {
  const { planet, sun, together, ringRotation, heldBy } = play;
  const held = heldBy.length
    ? `Along the axis the parts are held by ${heldBy.join(' and ')}.`
    : 'Nothing holds the parts along the axis.';
  // A closed form, which both reaches and bounds.
  const turn = `± ${figure(ringRotation.byFormula)}°`;
  const rows: [string, string, string][] = [
    ['Ring, turned with the sun and the planets’ axes held', turn, turn],
    ['Planet, pushed towards the sun', mm(planet.radial.toSun), ''],
    ['Planet, pushed towards the ring', mm(planet.radial.toRing), ''],
    ['Planet, up and down', bothWays(planet.axial), bound(planet.axialBound)],
    ['Planet, leaning', leaning(planet.tilt), ''],
    ['Sun, up and down', bothWays(sun.axial), bound(sun.axialBound)],
    ['Sun, leaning', leaning(sun.tilt), ''],
    ['Planet, up and down, everything loose', bothWays(together.planetAxial), ''],
    ['Sun, up and down, everything loose', bothWays(together.sunAxial), ''],
    ['Teeth of sun and planets still overlap by', mm(planet.engagementLeft.sun), ''],
    ['Teeth of planets and ring still overlap by', mm(planet.engagementLeft.ring), ''],
  ];
  return section(
    'Play',
    paragraph(
      `${held} A motion that was found is reached; what no motion exceeds stands beside it where it is known.`,
    ),
    table('How far parts can move', ['Motion', 'Found', 'At most'], rows),
  );
}

function bound({ up, down }: Axial = { up: null, down: null }): string {
  return up === null || down === null ? '' : bothWays({ up, down });
}

function mm(length: number | null): string {
  return length === null ? 'not held' : `${figure(length)} mm`;
}

function bothWays({ up, down }: Axial): string {
  return up === null || down === null ? 'not held' : `${figure(up)} up, ${figure(down)} mm down`;
}

function leaning({ degrees, overFaceWidth }: TiltRecord): string {
  return degrees === null || overFaceWidth === null
    ? 'not held'
    : `${figure(degrees)}°, ${figure(overFaceWidth)} mm over the face width`;
}
