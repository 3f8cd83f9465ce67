import { type Problem, problemOf } from '../refusal.js';
import { whole } from '../spec/fields.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../spec/nearest.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { type Column, column, type Level } from '../stack/column.js';
import { type Point, placedPoints } from '../stack/contour.js';
import { polar } from '../tooth/polar.js';
import { clearanceHole, diameter, series, size } from './fasteners.js';
import { asked, type Feature, type Given, length } from './feature.js';
import type { Flange } from './flange.js';
import { type Frame, inFrame } from './frame.js';
import { type Grip, leftOf } from './grip.js';
import type { Mount } from './mount.js';
import { atMost, type Body, notWith, spaced } from './room.js';

const schema = asked(
  'Bolt holes through the rim, or through the flange where the circle is outside the rim',
  'ISO 273',
  {
    circle: length(5, 2000, 'Diameter of the bolt circle', 100),
    count: whole(2, 60, { description: 'How many holes', source: 'common practice', examples: [6] }),
    size,
    series,
    diameter,
  },
  { circle: 100, count: 6, size: 'M3' },
);

/** Holes on a circle about the axis of a ring. */
export interface BoltHoles extends Required<Given<typeof schema>> {}

/** Bolt holes, where there are no screws of a mount. */
export const bolts = {
  schema,
  complete: (file): BoltHoles => ({ ...file, diameter: clearanceHole(file) }),
  rules: { 3: beside, 4: room },
  drawn: { circle: 'length', diameter: 'opening', count: 'asked' },
  reads: { 'bolt hole': (own) => own.diameter },
  opens: (own) => own.diameter,
  drilled: ({ diameter, circle, count }) => ({ shape: { diameter }, circle, count }),
} satisfies Feature<Given<typeof schema>, BoltHoles>;

/** Narrower spans are no room to offer a circle in, mm. */
const EASE = 0.01;

function beside(own: BoltHoles, { mount }: { mount?: Mount }, { part }: Body): Problem[] {
  return mount ? notWith(`${part}.bolts`, own, `${part}.mount`) : [];
}

function room(own: BoltHoles, all: { grip?: Grip; flange?: Flange }, body: Body): Problem[] {
  const { circle, count, diameter } = own;
  const { part, root, rim, wall } = body;
  const outer = root + rim;
  // Where the circle may be for holes of no width; a hole needs its own diameter more.
  const spans = [[2 * (root + wall), 2 * (leftOf(outer, all) - wall)]];
  if (all.flange?.at === 'bottom') spans.push([2 * (outer + wall), all.flange.diameter - 2 * wall]);
  const widest = Math.max(...spans.map(([from, to]) => Math.min(circle - from, to - circle)));
  if (widest >= diameter - ROUNDING) return spaced(`${part}.bolts.count`, count, circle, diameter + wall);
  const why = 'two lines of wall on both sides';
  const open = spans
    .map(([from, to]) => [from + diameter, to - diameter])
    .filter(([from, to]) => to - from > EASE);
  if (open.length === 0) return atMost(`${part}.bolts.diameter`, diameter, widest, why, sizes.screwHole[0]);
  const offers = open.map(([from, to]) => (circle < from ? ceilThousandth(from) : floorThousandth(to)));
  const nearest = offers.sort((a, b) => Math.abs(a - circle) - Math.abs(b - circle)).slice(0, 1);
  const where = open.map(([from, to]) => `${ceilThousandth(from)} to ${floorThousandth(to)}`).join(' or ');
  return [problemOf('no-room', `${part}.bolts.circle`, circle, `must be ${where} mm: ${why}`, nearest)];
}

/** The bed's own frame. */
export const bedFrame: Frame = { rotation: 0, mirrored: false };

/** Places of holes on a circle about the axis, the first one on +x, each with its direction, radians. */
export function boltPlaces(circle: number, count: number): { angle: number; centre: Point }[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return { angle, centre: polar(circle / 2, angle) };
  });
}

/** The same hole at every place of a circle, turned outward. @param levels of the hole about its own axis */
export function boltColumns(levels: readonly Level[], circle: number, count: number, frame: Frame): Column[] {
  return boltPlaces(circle, count).map(({ angle, centre }) =>
    column(
      levels.map(({ z, outline }) => ({ z, outline: inFrame(placedPoints(outline, angle, centre), frame) })),
      'outside',
    ),
  );
}
