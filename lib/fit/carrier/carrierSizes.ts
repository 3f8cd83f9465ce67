import type { Carrier, PlanetarySpec } from '../../spec/types.js';
import type { ToothProfile } from '../../tooth/profile.js';
import type { GearEnds } from '../gearEnds.js';
import { pinProblem, postProblem } from './carrierRoom.js';
import { pinShape, type Station } from './pinShape.js';
import { boltsOn, bossRoom } from './plateRoom.js';
import { type Opening, postOutline, shadow } from './postShape.js';

/** A plate of a carrier. Heights above the lower end face of the gears. Lengths in mm. */
export interface Plate {
  side: 'below' | 'above';
  from: number;
  to: number;
  /** Opening about the axis; 0 for none. */
  inner: number;
  outer: number;
  /**
   * Within this radius it is whole; beyond it only lobes over the planets reach out to `outer`, so that nothing spans
   * more than a bridge. `outer` where it is whole throughout.
   */
  floor: number;
}

/** A carrier in numbers. Heights above the lower end face of the gears. Lengths in mm, angles in radians. */
export interface CarrierSizes {
  carrier: Carrier;
  /** Distance between a plate and the end faces over or under it. */
  axialGap: number;
  /** How far the edges that stand on the bed are cut back, at 45°. */
  chamfer: number;
  plates: Plate[];
  /** Radius of the sun's foot, and inner radius of the ring's, where they reach down beside a lower plate. */
  hubRadius: number;
  skirtRadius: number;
  /** Radius of the planets' end faces, and the one from which on the ring's reach outward. */
  lobeRadius: number;
  ringFace: number;
  pin: { pin: Station[]; bore: Station[] } | null;
  /** Heights of the lower and the upper end of pins or posts. */
  pinEnds: [number, number];
  openings: Opening[];
  /** Outlines of the posts, and of their feet where they stand on the bed: narrower by the chamfer. */
  posts: { body: [number, number][]; foot: [number, number][] }[];
  /** Centres of the bolt holes. */
  bolts: [number, number][];
}

/** Feet of sun and ring keep this share of the module from the root circles. */
const EDGE = 0.02;
/** Plates span no more than this share of the longest bridge, since teeth beneath leave spaces. */
const BRIDGE_SHARE = 0.6;

/** What of a fitted set a carrier is sized by. */
export interface CarrierSet {
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>;
  ends: GearEnds;
  centreDistance: number;
  planets: readonly { angle: number }[];
}

/**
 * The carrier that a file asks for; null for none.
 * @throws Refusal where pins, posts, boss or bolts find no room
 */
export function carrierSizes(spec: PlanetarySpec, set: CarrierSet): CarrierSizes | null {
  const { carrier, faceWidth, module, printer } = spec;
  if (carrier === 'none') return null;
  const { sun, planet, ring } = set.profiles;
  const below = carrier.plates !== 'above';
  const above = carrier.plates !== 'below';
  const axialGap = carrier.axialGap * printer.layer;
  const { thickness, gap } = carrier;
  const hubRadius = sun.rootRadius - EDGE * module;
  const skirtRadius = ring.rootRadius + EDGE * module;
  const lobeRadius = planet.tipRadius - set.ends.planet.bevelSize;
  const ringFace = ring.tipRadius + set.ends.ring.bevelSize;
  const openings = openingsOf(set);
  const inner = hubRadius + gap;
  const outer = skirtRadius - gap;
  const plates: Plate[] = [];
  if (below)
    plates.push({ side: 'below', from: -axialGap - thickness, to: -axialGap, inner, outer, floor: outer });
  if (above)
    plates.push({
      side: 'above',
      from: faceWidth + axialGap,
      to: faceWidth + axialGap + thickness,
      inner: carrier.centre === 'closed' ? 0 : inner,
      outer,
      floor: floorOf(openings, lobeRadius, outer, BRIDGE_SHARE * spec.limits.bridge),
    });
  pinProblem(spec, carrier, planet.rootRadius);
  const pinEnds: [number, number] = [below ? -axialGap : 0, above ? faceWidth + axialGap : faceWidth];
  const pin = carrier.pin ? pinShape(carrier.pin, gap, faceWidth, ...pinEnds) : null;
  const wall = 2 * printer.lineWidth;
  const chamfer = Math.min(thickness / 2, printer.layer + 2 * printer.firstLayerGrowth);
  const posts = (carrier.form === 'cage' ? openings : []).map((opening) => {
    const body = postOutline(opening, gap, wall);
    const foot = postOutline(opening, gap + (below ? 0 : chamfer), wall - 2 * chamfer);
    return body && foot ? { body, foot } : null;
  });
  if (posts.includes(null)) postProblem(spec, carrier, openings);
  const last = plates[plates.length - 1];
  bossRoom(carrier, last, wall);
  return {
    carrier,
    axialGap,
    chamfer,
    plates,
    hubRadius,
    skirtRadius,
    lobeRadius,
    ringFace,
    pin,
    pinEnds,
    openings,
    posts: posts.filter((post) => post !== null),
    bolts: boltsOn(carrier, last, wall, set),
  };
}

/** How far the gears stand above the bed: as far as a plate and its gap need beneath them, mm. */
export function liftOf(sizes: CarrierSizes | null): number {
  const lowest = sizes?.plates[0];
  return lowest?.side === 'below' ? -lowest.from : 0;
}

function openingsOf({ planets, centreDistance, profiles }: CarrierSet): Opening[] {
  const { sun, planet, ring } = profiles;
  return planets.map(({ angle }, i) => {
    const next = planets[(i + 1) % planets.length].angle + (i === planets.length - 1 ? 2 * Math.PI : 0);
    return {
      middle: (angle + next) / 2,
      half: (next - angle) / 2,
      centreDistance,
      planetTip: planet.tipRadius,
      sunTip: sun.tipRadius,
      ringTip: ring.tipRadius,
    };
  });
}

/**
 * The radius out to which a plate over the gears is whole: outside the narrowest place between two planets it stops
 * where the way from planet to planet is longer than a bridge. Whole throughout where even that place is too wide:
 * then only another form of carrier helps.
 */
function floorOf(openings: readonly Opening[], lobeRadius: number, outer: number, bridge: number): number {
  return Math.min(
    ...openings.map(({ half, centreDistance }) => {
      const way = (radius: number) =>
        2 * radius * Math.sin(Math.max(0, half - shadow(radius, centreDistance, lobeRadius)));
      const neck = Math.sqrt(Math.max(0, centreDistance ** 2 - lobeRadius ** 2));
      if (way(neck) > bridge || way(outer) <= bridge) return outer;
      let [low, high] = [neck, outer];
      for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (way(middle) <= bridge) low = middle;
        else high = middle;
      }
      return low;
    }),
  );
}
