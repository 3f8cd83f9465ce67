import { CARRIER } from './carrierContacts.js';
import type { Contact, Feature, Motion } from './contact.js';
import { workingDepth } from './formulas.js';
import { type Direction, type Furthest, furthest } from './furthest.js';
import { passesLips } from './lipContacts.js';
import { type LooseSet, turnedOn } from './looseSet.js';
import { setContacts } from './setContacts.js';

/** How far the parts of a set can move within its play. Lengths in mm, angles in radians; Infinity where nothing holds. */
export interface SetPlay {
  /** The first planet between held sun and held ring. */
  planet: { up: Furthest; down: Furthest; tilt: Tilt; radial: { toSun: Furthest; toRing: Furthest } };
  /** The sun between held planets. */
  sun: { up: Furthest; down: Furthest; tilt: Tilt };
  /** The same for the set as it stands: motions that its meshes can be asked to make. */
  standing: {
    planet: { up: Furthest; down: Furthest; tilt: Tilt };
    sun: { up: Furthest; down: Furthest; tilt: Tilt };
  };
  /** The carrier between held gears; null for none. */
  carrier: { up: Furthest; down: Furthest; tilt: Tilt } | null;
  /** Everything loose at once in a held ring. */
  together: {
    planet: { up: Furthest; down: Furthest };
    sun: { up: Furthest; down: Furthest };
    carrier: { up: Furthest; down: Furthest } | null;
    /** Depth to which teeth still overlap where they are farthest apart, at an end of the face. */
    engagementLeft: { sun: number; ring: number };
  };
}

/** The largest tilt about any horizontal axis. */
export interface Tilt {
  /** Angle between the part's axis and the set's, radians. */
  angle: number;
  motion: Motion;
  heldBy: Feature[];
}

/** Phases of the pitch that are looked at, and directions about which a part may lean. */
const PHASES = 2;
const LEANS = 8;
/** Transverse planes in half the face width, when everything is loose at once. */
const COARSE = 3;

const UP: Motion = [0, 0, 1, 0, 0, 0];
const DOWN: Motion = [0, 0, -1, 0, 0, 0];

const NOT_HELD: Furthest = { value: Number.POSITIVE_INFINITY, motions: {}, heldBy: [] };

/**
 * Plays of a set, the worst of several phases of the pitch for the part between held ones, and as the set stands for
 * everything loose at once, where the phases of the planets differ anyway or the next one is like it.
 * @param contacts what parts may touch, for a set with more than teeth ['setContacts']
 */
export function setPlay(
  set: LooseSet,
  contactsOf: (set: LooseSet, planes?: number) => Contact[] = setContacts,
): SetPlay {
  const planet = set.planets[0].name;
  const turns = Array.from({ length: PHASES }, (_, i) => turnedOn(set, i / PHASES));
  // Between held sun and ring alone: whether a planet then meets the one beside it is asked of the meshes.
  const phases = turns.map((turned) => contactsOf(turned).filter(({ feature }) => feature !== 'neighbours'));
  const worst = (direction: Motion, part: string, from = 0) =>
    phases
      .slice(from)
      .map((contacts) => furthest({ [part]: direction }, contacts, [part]))
      .reduce((a, b) => (b.value > a.value ? b : a));
  const further = (a: Furthest, b: Furthest) => (b.value > a.value ? b : a);
  const larger = (a: Tilt, b: Tilt) => (b.angle > a.angle ? b : a);
  const standing = {
    planet: standingPlay(phases[0], planet),
    sun: standingPlay(phases[0], set.sun.name),
  };
  const outward = towards(set);
  const inward = outward.map((number) => -number) as unknown as Motion;
  return {
    planet: {
      up: further(standing.planet.up, worst(UP, planet, 1)),
      down: further(standing.planet.down, worst(DOWN, planet, 1)),
      tilt: larger(standing.planet.tilt, largestTilt(phases.slice(1), planet)),
      radial: { toSun: worst(inward, planet), toRing: worst(outward, planet) },
    },
    sun: {
      up: further(standing.sun.up, worst(UP, set.sun.name, 1)),
      down: further(standing.sun.down, worst(DOWN, set.sun.name, 1)),
      tilt: standing.sun.tilt,
    },
    standing,
    carrier: set.carrier ? standingPlay(phases[0], CARRIER) : null,
    together: togetherPlay(
      set,
      contactsOf(set, COARSE),
      set.form !== 'helical' && contactsOf === setContacts && !set.carrier,
    ),
  };
}

function standingPlay(contacts: readonly Contact[], part: string): SetPlay['standing']['sun'] {
  return {
    up: furthest({ [part]: UP }, contacts, [part]),
    down: furthest({ [part]: DOWN }, contacts, [part]),
    tilt: largestTilt([contacts], part),
  };
}

/** The largest tilt found about evenly spread axes. */
function largestTilt(phases: readonly (readonly Contact[])[], part: string): Tilt {
  let most: Tilt = { angle: 0, motion: [0, 0, 0, 0, 0, 0], heldBy: [] };
  for (const contacts of phases)
    for (let i = 0; i < LEANS; i++) {
      const axis = (2 * Math.PI * i) / LEANS;
      const direction: Motion = [0, 0, 0, Math.cos(axis), Math.sin(axis), 0];
      const { value, motions, heldBy } = furthest({ [part]: direction }, contacts, [part]);
      if (value === Number.POSITIVE_INFINITY) return { angle: value, motion: most.motion, heldBy: [] };
      const motion = motions[part];
      const angle = Math.hypot(motion[3], motion[4]);
      if (angle > most.angle) most = { angle, motion, heldBy };
    }
  return most;
}

/** @param alike true when the set is its own mirror image in the plane at mid face, so that down is as far as up */
function togetherPlay(set: LooseSet, contacts: readonly Contact[], alike: boolean): SetPlay['together'] {
  const planet = set.planets[0].name;
  const sun = set.sun.name;
  const loose = [sun, ...set.planets.map(({ name }) => name), ...(set.carrier ? [CARRIER] : [])];
  const [x, y] = towards(set);
  // The train itself turns freely: it is kept from doing so by holding the first planet across its line of centres.
  const gauge = [[planet, Math.abs(x) > Math.abs(y) ? 1 : 0]] as const;
  const all = (direction: Direction) => {
    const found = furthest(direction, contacts, loose, gauge);
    const past = set.planets.some((one) =>
      [set.sun, set.ring].some((mate) => passesLips(set, one, mate, found.motions)),
    );
    // What has left the lips behind is held by the teeth at best, and only herringbone teeth hold.
    return past && set.form !== 'herringbone' ? NOT_HELD : found;
  };
  const half = set.faceWidth / 2;
  const apart = (height: number, sign: 1 | -1): Motion => [
    sign * x,
    sign * y,
    0,
    -sign * y * height,
    sign * x * height,
    0,
  ];
  const most = (direction: (height: number) => Direction) =>
    Math.max(all(direction(half)).value, set.form === 'helical' ? all(direction(-half)).value : 0);
  const axial = (part: string) => {
    const up = all({ [part]: UP });
    return { up, down: alike ? mirrored(up) : all({ [part]: DOWN }) };
  };
  return {
    planet: axial(planet),
    sun: axial(sun),
    carrier: set.carrier ? axial(CARRIER) : null,
    engagementLeft: {
      sun: workingDepth(set.inner) - most((z) => ({ [planet]: apart(z, 1), [sun]: apart(z, -1) })),
      ring: workingDepth(set.outer) - most((z) => ({ [planet]: apart(z, -1) })),
    },
  };
}

/** A motion seen in a mirror at mid face: shifts along the axis and turns about lines in the mirror change sign. */
function mirrored(found: Furthest): Furthest {
  const motions = Object.entries(found.motions).map(([name, [x, y, z, a, b, c]]): [string, Motion] => [
    name,
    [x, y, -z, -a, -b, c],
  ]);
  return { ...found, motions: Object.fromEntries(motions) };
}

/** The way from the sun to the first planet. */
function towards({ planets }: LooseSet): Motion {
  const [x, y] = planets[0].centre;
  const length = Math.hypot(x, y);
  return [x / length, y / length, 0, 0, 0, 0];
}
