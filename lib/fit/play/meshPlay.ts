import type { Motion } from './contact.js';
import { type Furthest, furthest } from './furthest.js';
import { gearTurnedOn } from './looseSet.js';
import { type LooseMesh, meshContacts } from './meshContacts.js';

/**
 * How far the two of a mesh can move when shafts or guides hold them: mm, radians; Infinity where nothing holds.
 * `standing` as they stand, which their meshes can be asked to do; `worst` for whoever relies on it, over several phases.
 */
export interface MeshPlay {
  /** The first gear along its shaft, the mate held: as far as it goes. */
  up: Reach;
  down: Reach;
  /** The mate's turn, or way of a bar, to a stop, the first held: as far as it goes. */
  mate: Reach;
  /** How much nearer to its mate the first gear's axis may be before teeth bind. */
  nearer: Reach;
  /** How far that axis may lean before teeth bind: in the plane of both axes, and across it (ISO/TR 10064-3, from memory). */
  inPlane: Reach;
  outOfPlane: Reach;
}

/** One way to move. */
export interface Reach {
  /** Part that moves. */
  part: string;
  worst: number;
  standing: Furthest;
}

/** Shares of a pitch that are looked at, to both sides: a bar of one tooth goes no farther. */
const PHASES = [0, 0.25, -0.25, 0.5];

/** The numbers of a motion: shifts, then turns. */
const [X, Y, Z, ABOUT_X, ABOUT_Y, ABOUT_Z] = [0, 1, 2, 3, 4, 5];

/** @param mesh as it stands; its axes lie on x, or the bar under its pinion */
export function meshPlay(mesh: LooseMesh): MeshPlay {
  const first = mesh.first.name;
  const mate = mesh.bar ? mesh.bar.name : mesh.second.name;
  const phases = PHASES.map((share) => meshContacts(turnedOn(mesh, share)));
  const reach = (
    part: string,
    number: number,
    signs: readonly (1 | -1)[],
    free: readonly number[],
    pick: (a: Furthest, b: Furthest) => Furthest,
  ): Reach => {
    const fixed = [X, Y, Z, ABOUT_X, ABOUT_Y, ABOUT_Z].filter((k) => k !== number && !free.includes(k));
    const gauge = fixed.map((k) => [part, k] as const);
    const found = phases.map((contacts) =>
      signs.map((sign) => furthest({ [part]: along(number, sign) }, contacts, [part], gauge)).reduce(pick),
    );
    return { part, worst: found.reduce(pick).value, standing: found[0] };
  };
  const [across, way] = mesh.bar ? ([Y, -1] as const) : ([X, towards(mesh)] as const);
  const [inPlane, outOfPlane] = across === X ? [ABOUT_Y, ABOUT_X] : [ABOUT_X, ABOUT_Y];
  return {
    up: reach(first, Z, [1], [ABOUT_Z], farther),
    down: reach(first, Z, [-1], [ABOUT_Z], farther),
    mate: reach(mate, mesh.bar ? X : ABOUT_Z, [1, -1], [], farther),
    nearer: reach(first, across, [way], [ABOUT_Z], nearer),
    inPlane: reach(first, inPlane, [1, -1], [ABOUT_Z], nearer),
    outOfPlane: reach(first, outOfPlane, [1, -1], [ABOUT_Z], nearer),
  };
}

const farther = (a: Furthest, b: Furthest) => (b.value > a.value ? b : a);
const nearer = (a: Furthest, b: Furthest) => (b.value < a.value ? b : a);

/** Which way along x the first gear of a pair comes nearer to its mate's teeth: a ring's lie beyond it. */
function towards(mesh: LooseMesh): 1 | -1 {
  if (mesh.bar) return 1;
  const { first, second, pair } = mesh;
  const beside = second.centre[0] > first.centre[0];
  return beside !== pair.internal ? 1 : -1;
}

function along(number: number, sign: 1 | -1): Motion {
  const at = (k: number) => (k === number ? sign : 0);
  return [at(0), at(1), at(2), at(3), at(4), at(5)];
}

function turnedOn(mesh: LooseMesh, pitches: number): LooseMesh {
  const first = gearTurnedOn(mesh.first, pitches, 1);
  if (mesh.bar) {
    const { bar } = mesh;
    const firstTooth = bar.firstTooth + pitches * bar.profile.transversePitch;
    return { ...mesh, first, bar: { ...bar, firstTooth } };
  }
  return { ...mesh, first, second: gearTurnedOn(mesh.second, pitches, mesh.pair.internal ? 1 : -1) };
}
