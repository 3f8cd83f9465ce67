import { boreWidth } from '../../features/bore.js';
import { featuresOf } from '../../features/through.js';
import { setOf } from '../../fit/train/setOf.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { degrees } from '../../tooth/gear.js';
import { planetPlaces } from '../../train/assembly.js';
import type { AllFindings, PlanFindings } from '../findings.js';

/** Nothing of a hand enters a narrower opening, mm. */
const LEAST = 1;

/** An opening of the set and the largest round rod along its axis that enters it. */
export interface FingerGap {
  /** Where, in plain words. */
  where: string;
  /** Diameter of that rod, mm. */
  diameter: number;
}

/**
 * Every opening that a rod held along the axis can enter, seen from above: the spaces between sun, two neighbouring
 * planets and ring, the throats between neighbouring planets, and the sun's bore. Tip circles stand for the teeth,
 * since turning brings a tip to every place. Equal openings are named once; those under 1 mm are left out. Holes that a
 * script made come last.
 */
export function fingerGaps({
  numbers,
  addedHoles = [],
}: Pick<PlanFindings<PlanetarySpec>, 'numbers'> & Pick<Partial<AllFindings>, 'addedHoles'>): FingerGap[] {
  const { spec, inner, radii } = setOf(numbers);
  const sizes = {
    centreDistance: inner.centreDistance,
    sunTip: radii.sun.tip,
    planetTip: radii.planet.tip,
    ringTip: radii.ring.tip,
  };
  const gaps: FingerGap[] = [];
  for (const angle of anglesBetween(planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count))) {
    const at = `planets ${Number(degrees(angle).toFixed(2))}° apart`;
    gaps.push({
      where: `between sun, ring and two ${at}`,
      diameter: 2 * spaceRadius(sizes, angle / 2),
    });
    const throat = 2 * (sizes.centreDistance * Math.sin(angle / 2) - sizes.planetTip);
    // Wider apart than across, planets leave no throat: the space itself is the opening.
    if (angle < Math.PI) gaps.push({ where: `between two ${at}`, diameter: throat });
  }
  const bore = boreWidth(spec.sun.bore);
  if (bore > 0) gaps.push({ where: "the sun's bore", diameter: bore });
  gaps.push(...openFeatures(spec), ...addedHoles);
  return gaps.filter(({ diameter }) => diameter >= LEAST);
}

/** Sizes of the space between the gears, mm. */
export interface SpaceSizes {
  centreDistance: number;
  sunTip: number;
  planetTip: number;
  ringTip: number;
}

/**
 * Radius of the largest circle between the tip circles of sun, ring and two planets, mm; negative when there is no
 * room. Its centre lies midway between the planets, since both planets come nearer to any place beside.
 * There the room grows outward from the sun and shrinks toward the ring, and the largest circle touches two of the
 * three kinds of gear: sun and ring, sun and planets, or planets and ring.
 * @param half half the angle between the planets, radians, 0 … π
 * Source: plain geometry of circles.
 */
export function spaceRadius(
  { centreDistance: a, sunTip, planetTip, ringTip }: SpaceSizes,
  half: number,
): number {
  const along = a * Math.cos(half);
  const room = (x: number) =>
    Math.min(x - sunTip, ringTip - x, Math.sqrt(a * a + x * x - 2 * x * along) - planetTip);
  const inward = sunTip - planetTip;
  const outward = ringTip + planetTip;
  return Math.max(
    ...[
      (sunTip + ringTip) / 2,
      (a * a - inward * inward) / (2 * (along - inward)),
      (outward * outward - a * a) / (2 * (outward - along)),
    ]
      .filter((x) => x >= sunTip && x <= ringTip)
      .map(room),
  );
}

/** The different angles between neighbouring planets, radians, smallest first. */
function anglesBetween(places: readonly number[]): number[] {
  const angles = places.map((place, i) => (places[i + 1] ?? places[0] + 360) - place);
  const seen = new Map(angles.map((angle) => [angle.toFixed(6), (angle * Math.PI) / 180]));
  return [...seen.values()].sort((a, b) => a - b);
}

/** Holes and pits of features that a fingertip may enter; those that screws fill are left out. */
function openFeatures({ sun, planets }: PlanetarySpec): FingerGap[] {
  const openIn = (whose: string, part: object): FingerGap[] =>
    featuresOf(part).flatMap(({ kind: { entered }, own }) =>
      entered ? [{ where: `${whose} ${entered.words}`, diameter: entered.width(own) }] : [],
    );
  return [...openIn("the sun's", sun), ...openIn("the planets'", planets)];
}
