import { boreOutline } from '../../features/bore.js';
import { type CarrierSizes, chordDistance, type Plate } from '../../fit/carrier/carrierSizes.js';
import type { Opening } from '../../fit/carrier/postShape.js';
import type { Boss } from '../../spec/types.js';
import { type Contour, chordsOf, circlePoints, contourAt, type Point } from '../../stack/contour.js';
import type { Face, Stack, Wall } from '../../stack/stack.js';
import { polar } from '../../tooth/polar.js';

/** Points of a lobed edge, for every one that a circle as large would have. */
const FINER = 2;

/**
 * A plate with its opening, bolt holes and boss.
 * @param axes of the planets
 * @param columns outlines of the pins or posts where they join it
 */
export function plateStack(
  sizes: CarrierSizes,
  plate: Plate,
  axes: readonly Point[],
  columns: readonly Contour[],
  tolerance: number,
): Stack {
  const bolted = plate === sizes.plates[sizes.plates.length - 1];
  const holes = (bolted ? sizes.bolts : []).map((centre) =>
    prism(circlePoints(boltRadius(sizes), tolerance, centre), plate.from, plate.to),
  );
  return plate.side === 'below'
    ? lowerPlate(sizes, plate, columns, holes, tolerance)
    : upperPlate(sizes, plate, axes, columns, holes, tolerance);
}

function boltRadius({ carrier: { bolts } }: CarrierSizes): number {
  return bolts === 'none' ? 0 : bolts.diameter / 2;
}

/** An outline from one height to another. */
interface Prism {
  bottom: Contour;
  top: Contour;
}

function prism(points: readonly Point[], from: number, to: number): Prism {
  return { bottom: contourAt(points, from), top: contourAt(points, to) };
}

function through({ bottom, top }: Prism): Wall {
  return { from: bottom, to: top, solid: 'outside' };
}

/** Flat on the bed, its edges cut back there. */
function lowerPlate(
  { chamfer }: CarrierSizes,
  { from, to, inner, outer }: Plate,
  columns: readonly Contour[],
  holes: readonly Prism[],
  tolerance: number,
): Stack {
  const fine = tolerance / 4;
  const edge = (radius: number, back: number) => {
    const count = chordsOf(radius, fine);
    const at = (r: number, z: number) => contourAt(circlePoints(r, fine, [0, 0], count), z);
    return [at(radius + back, from), at(radius, from + chamfer), at(radius, to)];
  };
  const outside = edge(outer, -chamfer);
  const inside = edge(inner, chamfer);
  return {
    walls: [
      ...[0, 1].flatMap((i): Wall[] => [
        { from: outside[i], to: outside[i + 1], solid: 'inside' },
        { from: inside[i], to: inside[i + 1], solid: 'outside' },
      ]),
      ...holes.map(through),
    ],
    faces: [
      { looks: 'down', outer: outside[0], holes: [inside[0], ...holes.map(({ bottom }) => bottom)] },
      {
        looks: 'up',
        outer: outside[2],
        holes: [inside[2], ...holes.map(({ top }) => top), ...columns],
      },
    ],
  };
}

/** Over the gears, with its boss; an open middle goes through the boss too. */
function upperPlate(
  sizes: CarrierSizes,
  plate: Plate,
  axes: readonly Point[],
  columns: readonly Contour[],
  holes: readonly Prism[],
  tolerance: number,
): Stack {
  const { from, to, inner } = plate;
  const { boss } = sizes.carrier;
  const outline = prism(lobedOutline(sizes, plate, axes, tolerance), from, to);
  const bossed = boss.shape === 'none' ? null : bossStack(boss, to, tolerance);
  const middle = inner === 0 ? null : prism(circlePoints(inner, tolerance / 4), from, bossed?.height ?? to);
  const faces: Face[] = [
    {
      looks: 'down',
      outer: outline.bottom,
      holes: [...(middle ? [middle.bottom] : []), ...holes.map(({ bottom }) => bottom), ...columns],
    },
    {
      looks: 'up',
      outer: outline.top,
      holes: [
        ...(bossed ? [bossed.prism.bottom] : middle ? [middle.top] : []),
        ...holes.map(({ top }) => top),
      ],
    },
  ];
  if (bossed) faces.push({ looks: 'up', outer: bossed.prism.top, holes: middle ? [middle.top] : [] });
  return {
    walls: [
      { from: outline.bottom, to: outline.top, solid: 'inside' },
      ...(bossed ? [{ from: bossed.prism.bottom, to: bossed.prism.top, solid: 'inside' as const }] : []),
      ...(middle ? [through(middle)] : []),
      ...holes.map(through),
    ],
    faces,
  };
}

function bossStack(boss: Exclude<Boss, { shape: 'none' }>, from: number, tolerance: number) {
  const height = from + boss.height;
  return { height, prism: prism(boreOutline(boss, tolerance), from, height) };
}

/** From a planet to the ring it reaches over where they are no farther apart than this, mm. */
const TO_RING = 2.5;

/**
 * A circle, or what a whole middle and a lobe over every planet make together. Lobes go on over the ring where it is
 * near, so that the plate holds it too.
 */
function lobedOutline(
  { lobeRadius, ringFace, openings }: CarrierSizes,
  { outer, floor }: Plate,
  axes: readonly Point[],
  tolerance: number,
): Point[] {
  if (floor >= outer) return circlePoints(outer, tolerance / 4);
  const count = FINER * chordsOf(outer, tolerance / 4);
  const chords = openings.map((opening) => ({
    middle: opening.middle,
    distance: chordDistance(opening, floor, lobeRadius),
  }));
  // From lobe to lobe it runs straight, as a strand does that is laid there.
  const between = (angle: number) =>
    Math.max(
      ...chords
        .map(({ middle, distance }) => distance / Math.max(1e-9, Math.cos(angle - middle)))
        .filter((_, i) => nearOpening(angle, openings[i])),
    );
  const reach = (angle: number) => {
    const far = Math.max(
      ...axes.map(([x, y]) => farSide(angle - Math.atan2(y, x), Math.hypot(x, y), lobeRadius)),
    );
    return ringFace - far <= TO_RING ? outer : Math.max(Math.min(floor, between(angle)), far);
  };
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return polar(Math.min(outer, reach(angle)), angle);
  });
}

function nearOpening(angle: number, { middle, half }: Opening): boolean {
  return Math.cos(angle - middle) >= Math.cos(half) - 1e-9;
}

/** Where a ray at an angle to a circle's middle leaves the circle, mm from the origin; 0 where it misses. */
function farSide(angle: number, distance: number, radius: number): number {
  const off = distance * Math.sin(angle);
  if (Math.cos(angle) <= 0 || Math.abs(off) >= radius) return 0;
  return distance * Math.cos(angle) + Math.sqrt(radius ** 2 - off ** 2);
}
