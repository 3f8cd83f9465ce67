import type { PartOutline } from '../../solid/setOutlines.js';
import { inPlane, kindOf, type Placing, toPage } from './outlines.js';
import { CHAIN, EDGE, hatch, THIN } from './styles.js';
import { circle, group, line, num, type PagePoint, shape } from './svg.js';

/** How far axes run out beyond what they belong to, mm. */
const OVERRUN = 3;

/** The gears cut across: hatched bodies, reference, tip and root circles, axes. */
export function sectionView(gears: readonly PartOutline[], placing: Placing): string {
  return [
    group(EDGE, ...gears.map((gear) => body(gear, placing))),
    group(THIN, ...gears.flatMap((gear) => circles(gear, ['tip', 'root'], placing))),
    group(CHAIN, ...gears.flatMap((gear) => circles(gear, ['reference'], placing)), ...axes(gears, placing)),
  ].join('\n');
}

/** One hatched body with its bore, or for the ring its rim around the teeth. */
export function body(gear: PartOutline, placing: Placing): string {
  const outlines = [gear.outline, ...(gear.hole ? [gear.hole] : [])].map((points) =>
    inPlane(points, gear).map((point) => toPage(point, placing)),
  );
  const drawn = shape(outlines, hatch(kindOf(gear)));
  return gear.outer === undefined ? drawn : rimmed(outlines[0], gear, gear.outer, placing);
}

/** The rim is a true circle, so it is drawn as two arcs rather than as points. */
function rimmed(teeth: readonly PagePoint[], gear: PartOutline, outer: number, placing: Placing): string {
  const [x, y] = toPage(gear.centre, placing);
  const r = num(outer * (placing.scale ?? 1));
  const [left, right] = [`${num(x - Number(r))} ${num(y)}`, `${num(x + Number(r))} ${num(y)}`];
  const inner = `M${teeth.map(([px, py]) => `${num(px)} ${num(py)}`).join('L')}Z`;
  const rim = `M${right}A${r} ${r} 0 1 0 ${left}A${r} ${r} 0 1 0 ${right}Z`;
  return `<path fill-rule="evenodd"${hatch('ring')} d="${inner}${rim}"/>`;
}

type CircleName = keyof PartOutline['radii'];

function circles(gear: PartOutline, names: readonly CircleName[], placing: Placing): string[] {
  return names.map((name) => circle(toPage(gear.centre, placing), gear.radii[name]));
}

/** A cross at every planet, the circle their axes sit on, and the two axes of the set. */
function axes(gears: readonly PartOutline[], placing: Placing): string[] {
  const planets = gears.filter((gear) => kindOf(gear) === 'planet');
  const reach = OVERRUN + Math.max(...gears.map(({ outer, radii }) => outer ?? radii.tip));
  const origin = toPage([0, 0], placing);
  const orbit = planets.length > 0 ? [circle(origin, Math.hypot(...planets[0].centre))] : [];
  const crosses = planets.flatMap(({ centre, radii }) => {
    const distance = Math.hypot(...centre);
    const [ux, uy] = [centre[0] / distance, centre[1] / distance];
    const arm = radii.tip * 0.6;
    const along = (t: number): PagePoint => toPage([centre[0] + t * ux, centre[1] + t * uy], placing);
    return [line(along(-arm), along(arm))];
  });
  return [
    line([origin[0] - reach, origin[1]], [origin[0] + reach, origin[1]]),
    line([origin[0], origin[1] - reach], [origin[0], origin[1] + reach]),
    ...orbit,
    ...crosses,
  ];
}
