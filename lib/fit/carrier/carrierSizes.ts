import { WALL_LINES } from '../../features/room.js';
import { FOOT_EDGE } from '../../spec/rules/feet.js';
import type { Carrier, PlanetarySpec } from '../../spec/types.js';
import type { ToothProfile } from '../../tooth/profile.js';
import type { GearEnd } from '../gearEnds.js';
import { pinProblem, postProblem } from './carrierRoom.js';
import { pinShape, type Station } from './pinShape.js';
import { boltsOn, bossRoom } from './plateRoom.js';
import { type Opening, type Post, postIn, shadow } from './postShape.js';

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
  /** Nothing of it is missing within this radius: between lobes its edge runs straight from `floor` to `floor`. */
  whole: number;
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
  posts: Post[];
  /** Centres of the bolt holes. */
  bolts: [number, number][];
}

/** Plates span no more than this share of the longest bridge, since teeth beneath leave spaces. */
const BRIDGE_SHARE = 0.6;

/** What of a fitted set a carrier is sized by. */
export interface CarrierSet {
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>;
  ends: Record<'planet' | 'ring', GearEnd>;
  centreDistance: number;
  planets: readonly { angle: number }[];
}

/**
 * The carrier that a file asks for; null for none.
 * @param wall least width of every wall of it, mm; walls that are drawn set back are thinner than printed ones
 * @throws Refusal where pins, posts, boss or bolts find no room
 */
export function carrierSizes(
  spec: PlanetarySpec,
  set: CarrierSet,
  wall = WALL_LINES * spec.printer.lineWidth,
): CarrierSizes | null {
  const { carrier, faceWidth, module, printer } = spec;
  if (carrier === 'none') return null;
  const { sun, planet, ring } = set.profiles;
  const below = carrier.plates !== 'above';
  const above = carrier.plates !== 'below';
  const axialGap = carrier.axialGap * printer.layer;
  const { thickness, gap } = carrier;
  const hubRadius = sun.rootRadius - FOOT_EDGE * module;
  const skirtRadius = ring.rootRadius + FOOT_EDGE * module;
  const lobeRadius = planet.tipRadius - set.ends.planet.bevelSize;
  const ringFace = ring.tipRadius + set.ends.ring.bevelSize;
  const openings = openingsOf(set);
  const inner = hubRadius + gap;
  const outer = skirtRadius - gap;
  const chamfer = Math.min(thickness / 2, printer.layer + 2 * printer.firstLayerGrowth);
  const pinEnds: [number, number] = [below ? -axialGap : 0, above ? faceWidth + axialGap : faceWidth];
  const cut = below ? 0 : Math.min(chamfer, (pinEnds[1] - pinEnds[0]) / 3);
  const posts = (carrier.form === 'cage' ? openings : []).map((opening) => postIn(opening, gap, wall, cut));
  if (!posts.every((post) => post !== null)) postProblem(carrier, openings, wall, cut);
  const plates: Plate[] = [];
  if (below)
    plates.push({
      side: 'below',
      from: -axialGap - thickness,
      to: -axialGap,
      inner,
      outer,
      floor: outer,
      whole: outer,
    });
  if (above)
    plates.push({
      side: 'above',
      from: faceWidth + axialGap,
      to: faceWidth + axialGap + thickness,
      inner: carrier.centre === 'closed' ? 0 : inner,
      outer,
      ...edgeOf({ openings, lobeRadius, outer }, posts, wall, BRIDGE_SHARE * spec.limits.bridge),
    });
  pinProblem(spec, carrier, planet.rootRadius, wall);
  const pin = carrier.pin ? pinShape(carrier.pin, gap, faceWidth, ...pinEnds) : null;
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
    posts,
    bolts: boltsOn(carrier, last, wall, set, posts),
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
 * Where a plate over the gears ends between its lobes. Posts join it within its edge, and carry it: it is whole
 * throughout where they reach as far as that edge.
 */
function edgeOf(
  { openings, lobeRadius, outer }: { openings: readonly Opening[]; lobeRadius: number; outer: number },
  posts: readonly Post[],
  wall: number,
  bridge: number,
): Pick<Plate, 'floor' | 'whole'> {
  const floor = floorOf(openings, lobeRadius, outer, bridge);
  const whole = Math.min(...openings.map((opening) => chordDistance(opening, floor, lobeRadius)));
  const reach = Math.max(0, ...posts.map(({ to }) => to + wall));
  return floor < outer && reach <= whole ? { floor, whole } : { floor: outer, whole: outer };
}

/** Distance from the axis of the straight edge between two lobes that begins and ends at a radius, mm. */
export function chordDistance({ half, centreDistance }: Opening, radius: number, lobeRadius: number): number {
  return radius * Math.cos(Math.max(0, half - shadow(radius, centreDistance, lobeRadius)));
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
