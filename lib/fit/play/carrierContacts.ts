import type { CarrierSizes, Plate } from '../carrier/carrierSizes.js';
import type { Station } from '../carrier/pinShape.js';
import type { Contact, Feature } from './contact.js';
import { type LinearPlace, readLinear } from './linearContact.js';
import { faceRadiusOf, type LooseGear, type LooseSet } from './looseSet.js';
import { type Vector, writeSlopes } from './pointMotion.js';

/** Name of the part. */
export const CARRIER = 'carrier';
/** Directions about an axis in which round parts may touch: they are off by 2 % of a gap between two of them. */
const DIRECTIONS = 16;
/** Points along the side of a post. */
const ALONG_POST = 4;

/** Where a carrier would touch planets, sun and ring: pins in bores, plates at end faces and edges, posts beside tips. */
export function carrierContacts(set: LooseSet): Contact[] {
  const { carrier, planets, sun, ring } = set;
  if (!carrier) return [];
  return [
    ...planets.flatMap((planet) => pinContacts(set, carrier, planet)),
    ...carrier.plates.flatMap((plate) => [
      ...planets.flatMap((planet) =>
        facePoints(set, carrier, plate, planet, carrier.lobeRadius, planet.centre),
      ),
      ...(plate.inner < faceRadiusOf(sun)
        ? facePoints(set, carrier, plate, sun, faceRadiusOf(sun), [0, 0])
        : []),
      ...(plate.outer > carrier.ringFace
        ? facePoints(set, carrier, plate, ring, carrier.ringFace, [0, 0])
        : []),
      ...(plate.side === 'below' ? edgeContacts(set, carrier, plate) : []),
    ]),
    ...postContacts(set, carrier),
  ];
}

/** One point of the carrier's surface and the gear it faces; `normal` leads from the carrier to the gear. */
function facing(
  { faceWidth }: LooseSet,
  gear: LooseGear,
  feature: Feature,
  gap: number,
  [x, y, z]: Vector,
  normal: Vector,
): Contact {
  const height = z - faceWidth / 2;
  const [nx, ny, nz] = normal;
  const slopes = new Float64Array(12);
  writeSlopes(slopes, 0, nx, ny, nz, x - gear.centre[0], y - gear.centre[1], height);
  writeSlopes(slopes, 6, -nx, -ny, -nz, x, y, height);
  const place: LinearPlace = { gap, slopes };
  return { between: [gear.name, CARRIER], feature, z, smooth: true, place, read: readLinear };
}

function around<T>(make: (cos: number, sin: number) => T): T[] {
  return Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (2 * Math.PI * i) / DIRECTIONS;
    return make(Math.cos(angle), Math.sin(angle));
  });
}

/** Both ends of every cylinder and cone of a pin, as far as the planet reaches. */
function pinContacts(set: LooseSet, { carrier, pin }: CarrierSizes, planet: LooseGear): Contact[] {
  if (!pin) return [];
  const within = ([z, radius]: Station): Station => [Math.min(set.faceWidth, Math.max(0, z)), radius];
  const stations = pin.pin.map(within);
  const [cx, cy] = planet.centre;
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const radial = (to[0] - from[0]) / length;
    const axial = (from[1] - to[1]) / length;
    return [from, to].flatMap(([z, radius]) =>
      around((cos, sin) =>
        facing(
          set,
          planet,
          'pins',
          carrier.gap,
          [cx + radius * cos, cy + radius * sin, z],
          [radial * cos, radial * sin, axial],
        ),
      ),
    );
  });
}

/** A gear's end face over or under a plate, at its edge; a lobed plate reaches the ring beside the planets only. */
function facePoints(
  set: LooseSet,
  { axialGap }: CarrierSizes,
  plate: Plate,
  gear: LooseGear,
  radius: number,
  [cx, cy]: readonly [number, number],
): Contact[] {
  const [z, up] = plate.side === 'below' ? [0, 1] : [set.faceWidth, -1];
  const at = (cos: number, sin: number) =>
    facing(set, gear, 'plates', axialGap, [cx + radius * cos, cy + radius * sin, z], [0, 0, up]);
  if (gear !== set.ring || plate.floor >= plate.outer) return around(at);
  return set.planets.map(({ centre: [x, y] }) => at(x / Math.hypot(x, y), y / Math.hypot(x, y)));
}

/** The edges of a lower plate between the feet of sun and ring. */
function edgeContacts(set: LooseSet, { carrier, chamfer }: CarrierSizes, plate: Plate): Contact[] {
  return [plate.from + chamfer, plate.to].flatMap((z) =>
    around((cos, sin) => [
      facing(set, set.ring, 'plates', carrier.gap, [plate.outer * cos, plate.outer * sin, z], [cos, sin, 0]),
      facing(set, set.sun, 'plates', carrier.gap, [plate.inner * cos, plate.inner * sin, z], [-cos, -sin, 0]),
    ]).flat(),
  );
}

/** The sides of posts beside the tip circles of planets, sun and ring; a little early where no tip is near. */
function postContacts(set: LooseSet, { carrier, posts, openings }: CarrierSizes): Contact[] {
  const { planets, sun, ring, faceWidth } = set;
  const bevel = planets[0].bevelSize * Math.tan(set.bevelAngle);
  return posts.flatMap(({ body }, i) => {
    const half = body.length / 2;
    // From the inner edge out along one side, then back in along the other.
    const side = (start: number) =>
      Array.from(
        { length: ALONG_POST + 1 },
        (_, k) => body[start + Math.round((k * (half / 2)) / ALONG_POST)],
      );
    const next = planets[(i + 1) % planets.length];
    const { middle } = openings[i];
    const cos = Math.cos(middle);
    const sin = Math.sin(middle);
    const radii = body.map(([x, y]) => Math.hypot(x, y));
    const inner = Math.min(...radii);
    const outer = Math.max(...radii);
    return [bevel, faceWidth - bevel].flatMap((z) => [
      ...side(0).map((point) => beside(set, planets[i], carrier.gap, point, z)),
      ...side(half).map((point) => beside(set, next, carrier.gap, point, z)),
      facing(
        set,
        sun,
        'posts',
        inner - sun.profile.tipRadius,
        [inner * cos, inner * sin, z],
        [-cos, -sin, 0],
      ),
      facing(
        set,
        ring,
        'posts',
        ring.profile.tipRadius - outer,
        [outer * cos, outer * sin, z],
        [cos, sin, 0],
      ),
    ]);
  });
}

function beside(
  set: LooseSet,
  planet: LooseGear,
  gap: number,
  [x, y]: readonly [number, number],
  z: number,
): Contact {
  const dx = planet.centre[0] - x;
  const dy = planet.centre[1] - y;
  const distance = Math.hypot(dx, dy);
  const apart = Math.max(gap, distance - planet.profile.tipRadius);
  return facing(set, planet, 'posts', apart, [x, y, z], [dx / distance, dy / distance, 0]);
}
