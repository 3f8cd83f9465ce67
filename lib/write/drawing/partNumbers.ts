import type { PartOutline } from '../../solid/setOutlines.js';
import { balloon } from './dimension.js';
import { kindOf, type Placing, toPage } from './outlines.js';

/** Where the numbers of sun and planet should stand, as near as the planets allow, degrees: the upper left. */
const WANTED = { sun: 125, planet: 144 };
/** Where the ring's number stands: clear of the dimensions, degrees. */
const RING = 35;
/** How far a number is moved aside so that its line does not run along an axis, degrees. */
const ASIDE = 12;
/** Distance of a number's middle from the rim, mm. */
const OUT = 9;

/** A number and its line: where the number stands (degrees) and the dot on the part (mm). */
interface Mark {
  number: string;
  angle: number;
  dot: readonly [number, number];
}

/** Numbers in rings around the set: 1 sun, 2 planet, 3 ring, each with a line to its part. */
export function partNumbers(gears: readonly PartOutline[], outer: number, placing: Placing): string {
  const find = (kind: string): PartOutline[] => gears.filter((gear) => kindOf(gear) === kind);
  const planets = find('planet');
  const axes = planets.map(({ centre }) => degreesOf(Math.atan2(centre[1], centre[0])));
  // The line to the sun passes half-way between two planets.
  const between = axes.map((axis) => axis + 180 / axes.length);
  const sunAngle = nearest(between, WANTED.sun);
  const planetAngle = nearest(axes, WANTED.planet);
  const marks: Mark[] = [
    ...find('sun').map((sun) => {
      const angle = sunAngle === 180 ? sunAngle - ASIDE : sunAngle;
      return { number: '1', angle, dot: polar(insideSun(sun), angle) };
    }),
    ...planets
      .filter((_, i) => axes[i] === planetAngle)
      .map(({ centre, radii }) => {
        const side = planetAngle > sunAngle ? 1 : -1;
        const [x, y] = polar(radii.root / 2, planetAngle + side * 50);
        return {
          number: '2',
          angle: planetAngle + side * ASIDE,
          dot: [centre[0] + x, centre[1] + y] as const,
        };
      }),
    ...find('ring').map(({ radii, outer: rim }) => ({
      number: '3',
      angle: RING,
      dot: polar(((rim ?? radii.root) + radii.root) / 2, RING),
    })),
  ];
  return marks
    .map(({ number, angle, dot }) =>
      balloon(toPage(dot, placing), toPage(polar(outer + OUT, angle), placing), number),
    )
    .join('\n');
}

/** Half-way between bore and roots. */
function insideSun({ hole, radii }: PartOutline): number {
  let bore = 0;
  for (let i = 0; hole && i < hole.length; i += 2) bore = Math.max(bore, Math.hypot(hole[i], hole[i + 1]));
  return (bore + radii.root) / 2;
}

function polar(radius: number, degrees: number): [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Rounded so that equal directions compare equal, 0 … 360. */
const degreesOf = (radians: number): number => (Math.round((radians * 180e6) / Math.PI) / 1e6 + 360) % 360;

/** The angle nearest to a direction, degrees; that direction itself when there are none. */
function nearest(angles: readonly number[], wanted: number): number {
  const away = (angle: number): number => 1 - Math.cos(((angle - wanted) * Math.PI) / 180);
  return angles.reduce((best, angle) => (away(angle) < away(best) ? angle : best), angles[0] ?? wanted);
}
