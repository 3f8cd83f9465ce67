import { axialBounds } from '../../fit/play/axialBounds.js';
import type { Feature } from '../../fit/play/contact.js';
import { backlash, ringTurn } from '../../fit/play/formulas.js';
import { type SetPlay, setPlay } from '../../fit/play/setPlay.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { degrees } from '../../tooth/gear.js';
import type { PairSizes } from '../../train/pair.js';
import { type Confirmed, confirmed } from './confirmed.js';
import { distanceAfter, type MovingSet } from './movingSet.js';
import { simulatedRingTurn } from './ringTurn.js';
import { type WayOut, wayOut } from './wayOut.js';

/**
 * How far parts can move: the sheet's key `play`. Lengths in mm, angles in degrees; null where nothing holds. Figures are
 * those of motions that were found, so that parts move as far at least; what they cannot exceed is said where it is a bound.
 */
export interface PlayRecord {
  meshes: {
    between: ['sun', 'planet'] | ['planet', 'ring'];
    normalBacklash: number;
    circumferentialBacklash: number;
  }[];
  /** Turn of the ring from the middle to either stop, sun and planets' axes held. */
  ringRotation: { byFormula: number; bySimulation: { clockwise: number; counterClockwise: number } };
  /** A planet between held sun and held ring, the worst of several phases. */
  planet: {
    /** Push towards the sun and towards the ring. */
    radial: { toSun: number | null; toRing: number | null };
    axial: Axial;
    /** What `axial` cannot exceed, where lips hold; null where that could not be shown. */
    axialBound?: Axial;
    tilt: TiltRecord;
    /** Depth to which teeth overlap at the worst place, everything loose. */
    engagementLeft: { sun: number; ring: number };
    /** Tilted as far as sun and ring let it, it still clears the planets beside it, by the meshes. */
    clearsWhenTilted: boolean;
  };
  /** The sun between held planets. */
  sun: { axial: Axial; axialBound?: Axial; tilt: TiltRecord };
  /** The carrier between held gears, where there is one. */
  carrier?: { axial: Axial; tilt: TiltRecord };
  /** Summed over the train: everything loose at once in a held ring. */
  together: { planetAxial: Axial; sunAxial: Axial; carrierAxial?: Axial };
  /** What keeps parts from leaving along the axis; empty when nothing does. */
  heldBy: string[];
  /** The furthest motions made on the finished meshes. */
  confirmed: Confirmed[];
  /** Levels on the way out that the meshes cannot pass. */
  wayOut: WayOut[];
}

/** mm. */
export interface Axial {
  up: number | null;
  down: number | null;
}

/** `overFaceWidth`: how far one end of the axis moves against the other, mm. */
export interface TiltRecord {
  degrees: number | null;
  overFaceWidth: number | null;
}

/**
 * Measures how far the parts of a set can move, by linear programs over all contacts, by formula, and on the meshes.
 * @param moving the finished meshes
 */
export function playRecord(spec: PlanetarySpec, moving: MovingSet): PlayRecord {
  const { set } = moving;
  const play = setPlay(set);
  const { planet, sun, together } = play;
  const byFormula = ringTurn(set);
  const simulated = simulatedRingTurn(set, 2 * byFormula);
  const checks = confirmed(spec, moving, play);
  const bounds = axialBounds(set);
  const mesh = (between: PlayRecord['meshes'][number]['between'], pair: PairSizes) => {
    const { normal, circumferential } = backlash(pair, set.gap, set.sun.profile.sizes.baseHelixAngle);
    return { between, normalBacklash: normal, circumferentialBacklash: circumferential };
  };
  return {
    meshes: [mesh(['sun', 'planet'], set.inner), mesh(['planet', 'ring'], set.outer)],
    ringRotation: {
      byFormula: degrees(byFormula),
      bySimulation: {
        clockwise: degrees(simulated.clockwise),
        counterClockwise: degrees(simulated.counterClockwise),
      },
    },
    planet: {
      radial: { toSun: finite(planet.radial.toSun.value), toRing: finite(planet.radial.toRing.value) },
      axial: axial(planet),
      ...(bounds && { axialBound: finiteBoth(bounds.planet) }),
      tilt: tiltRecord(planet.tilt.angle, set.faceWidth),
      engagementLeft: together.engagementLeft,
      clearsWhenTilted: clearsNeighbours(moving, play),
    },
    sun: {
      axial: axial(sun),
      ...(bounds && { axialBound: finiteBoth(bounds.sun) }),
      tilt: tiltRecord(sun.tilt.angle, set.faceWidth),
    },
    ...(play.carrier && {
      carrier: { axial: axial(play.carrier), tilt: tiltRecord(play.carrier.tilt.angle, set.faceWidth) },
    }),
    together: {
      planetAxial: axial(together.planet),
      sunAxial: axial(together.sun),
      ...(together.carrier && { carrierAxial: axial(together.carrier) }),
    },
    heldBy: heldBy(spec, play),
    confirmed: checks,
    wayOut: isHeld(play) ? wayOut(moving, play) : [],
  };
}

function clearsNeighbours(moving: MovingSet, { planet }: SetPlay): boolean {
  const { planets, gap } = moving.set;
  const names = new Set(planets.map(({ name }) => name));
  const beside = (first: string, second: string) => names.has(first) && names.has(second);
  return distanceAfter(moving, { [planets[0].name]: planet.tilt.motion }, 1, gap, beside) > 0;
}

/** True when no planet, sun or carrier can leave along the axis, whatever else moves. */
function isHeld({ together }: SetPlay): boolean {
  return axialOf(together).every(({ value }) => Number.isFinite(value));
}

function axialOf({ planet, sun, carrier }: SetPlay['together']) {
  return [planet, sun, ...(carrier ? [carrier] : [])].flatMap(({ up, down }) => [up, down]);
}

/** The words for what holds; teeth hold along the axis only where two mirrored helices meet. */
function heldBy(spec: PlanetarySpec, play: SetPlay): string[] {
  if (!isHeld(play)) return [];
  const words: Record<Feature, string> = {
    flanks: `${spec.helix.form} teeth`,
    tips: `${spec.helix.form} teeth`,
    neighbours: 'neighbouring planets',
    lips: 'lips',
    pins: 'pins',
    plates: 'plates',
    posts: 'posts',
  };
  const features = axialOf(play.together).flatMap((one) => one.heldBy);
  return [...new Set(features.filter((one) => one !== 'neighbours').map((one) => words[one]))];
}

function finiteBoth({ up, down }: { up: number; down: number }): Axial {
  return { up: finite(up), down: finite(down) };
}

function axial({ up, down }: { up: { value: number }; down: { value: number } }): Axial {
  return { up: finite(up.value), down: finite(down.value) };
}

/** @param angle radians */
export function tiltRecord(angle: number, faceWidth: number): TiltRecord {
  const held = Number.isFinite(angle);
  return {
    degrees: held ? degrees(angle) : null,
    overFaceWidth: held ? faceWidth * Math.sin(angle) : null,
  };
}

/** Null for what nothing holds. */
export function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
