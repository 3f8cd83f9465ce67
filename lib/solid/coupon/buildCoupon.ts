import { boreOutline } from '../../features/bore.js';
import type { CouponLayout } from '../../fit/coupon/layout.js';
import { shown } from '../../fit/coupon/readGaps.js';
import { LABEL, type Station } from '../../fit/coupon/stations.js';
import { atHeight, contourAt } from '../../stack/contour.js';
import { together } from '../../stack/stack.js';
import { barSweep } from '../bar/barSweep.js';
import { sweepOf } from '../buildTrain.js';
import { gearBody } from '../gearBody.js';
import type { Part } from '../mesh.js';
import { placed } from '../place.js';
import { stackMesh } from '../stack/stackMesh.js';
import { gaugeBody } from './gaugeBody.js';
import { raisedLabel } from './label.js';
import { slotSurface, surfacesTogether } from './slot.js';

/** The parts of a coupon, and which triangles of the frame are the slots' walls. */
export interface CouponBodies {
  /** `frame`, `pinion-1` …, `gauge`, where they are printed. */
  parts: Part[];
  /** For each station the first triangle of its slot in the frame, and the one after its last. */
  slots: [from: number, to: number][];
}

/** The numbers stand so many layers over the frame. */
const LABEL_LAYERS = 3;

/** Every part of a coupon as a closed mesh, teeth exactly as sets have them. */
export function buildCoupon(stations: readonly Station[], layout: CouponLayout): CouponBodies {
  const { tolerance, printer } = stations[0].spec;
  const slots = stations.map(({ drawn: { spec, bar } }, i) =>
    slotSurface(bar!, barSweep(spec, bar!), layout.slots[i], layout.axes[i], tolerance),
  );
  const labels = stations.map(({ gap }, i) =>
    raisedLabel(
      { words: shown(gap), middle: layout.labels[i], size: LABEL.size, height: LABEL_LAYERS * printer.layer },
      layout.height,
      printer.lineWidth,
    ),
  );
  const raised = together(labels);
  const foot = contourAt(layout.frame, 0);
  const top = atHeight(foot, layout.height);
  const walls = surfacesTogether(slots);
  const openings = (z: number) => walls.ends.map(({ contour }) => contour).filter((one) => one.z === z);
  const frame = stackMesh(
    {
      walls: [{ from: foot, to: top, solid: 'inside' }, ...raised.walls],
      faces: [
        { looks: 'down', outer: foot, holes: openings(0) },
        { looks: 'up', outer: top, holes: [...openings(layout.height), ...(raised.holes.top ?? [])] },
        ...raised.faces,
      ],
    },
    walls,
  );
  let before = 0;
  const ranges = slots.map(({ triangles }): [number, number] => {
    const from = before;
    before += triangles.length / 3;
    return [from, before];
  });
  const pinions = stations.map(({ part, drawn }, i): Part => {
    const [gear] = drawn.gears;
    const wall = { bore: boreOutline(gear.bore, tolerance) };
    const body = gearBody(gear.profile, sweepOf(drawn, gear), wall, tolerance);
    return { name: part, mesh: placed(body, gear.places[0].rotation, layout.axes[i]), unlike: true };
  });
  return {
    parts: [
      { name: 'frame', mesh: frame },
      ...pinions,
      { name: 'gauge', mesh: gaugeBody(layout.gauge, tolerance) },
    ],
    slots: ranges,
  };
}
