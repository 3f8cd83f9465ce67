import type { LooseGear, LooseSet } from '../../fit/play/looseSet.js';
import { mayBeNearer, strandsApart } from '../rolling/outlineDistance.js';
import { type PreparedOutline, preparedOutline, strandsNear, type Zone } from '../rolling/strandsNear.js';

/** Chords of the outlines stay this share of the gap from the curves. */
const CHORD_SHARE = 0.003;
/** Only strands nearer than this may meet: rounding, mm. */
const TOUCH = 1e-9;
/** Turns are found to this share of what is looked through. */
const HALVINGS = 14;

/**
 * How far the ring turns before it is stopped, sun and planets' axes held, found by turning exact outlines of sun,
 * first planet and ring in the transverse plane until they meet: the planet turns up to the sun's flank, then the
 * ring up to the planet's.
 * @param furthest a turn beyond the stop, radians: where the search ends
 * @returns radians, both ≥ 0; the farthest looked at where nothing stops it
 */
export function simulatedRingTurn(
  set: LooseSet,
  furthest: number,
): { clockwise: number; counterClockwise: number } {
  const sagitta = CHORD_SHARE * set.gap;
  const [sun, planet, ring] = [set.sun, set.planets[0], set.ring].map((gear) => ({
    gear,
    outline: preparedOutline(gear.profile, sagitta),
  }));
  const planetMost = (furthest * ring.gear.profile.gear.teeth) / planet.gear.profile.gear.teeth;
  const turn = (way: 1 | -1) => {
    const ofPlanet = way * stop(planetMost, (angle) => meets(planet, way * angle, sun, 0));
    return stop(furthest, (angle) => meets(ring, way * angle, planet, ofPlanet));
  };
  return { clockwise: turn(-1), counterClockwise: turn(1) };
}

/** The largest turn up to which nothing meets; bodies that are clear stay clear until they first meet. */
function stop(furthest: number, met: (angle: number) => boolean): number {
  if (!met(furthest)) return furthest;
  let [low, high] = [0, furthest];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (met(middle)) high = middle;
    else low = middle;
  }
  return low;
}

interface Turnable {
  gear: LooseGear;
  outline: PreparedOutline;
}

function meets(a: Turnable, turnA: number, b: Turnable, turnB: number): boolean {
  const reach = Math.min(reachOf(a), reachOf(b));
  const small = reachOf(a) === reach ? a : b;
  const [cx, cy] = small.gear.centre;
  const zone: Zone = { kind: 'within', x: cx, y: cy, radius: reach };
  const placed = ({ gear, outline }: Turnable, turn: number) =>
    strandsNear(outline, gear.rotation + turn, gear.centre[0], gear.centre[1], zone);
  const [first, second] = [placed(a, turnA), placed(b, turnB)];
  return first.some((one) =>
    second.some((other) => mayBeNearer(one, other, TOUCH) && strandsApart(one, other, TOUCH) === 0),
  );
}

/** Radius around the axis within which another gear may touch this one; the ring's mates all lie within its root. */
function reachOf({ gear }: Turnable): number {
  const { profile } = gear;
  return 1.001 * (profile.gear.internal ? profile.rootRadius : profile.tipRadius);
}
