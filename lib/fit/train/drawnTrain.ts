import { drawnBore } from '../../features/bore.js';
import { textWords } from '../../features/text.js';
import { drawnFeatures } from '../../features/through.js';
import type { Spec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';
import { compensationOf, drawnCommon } from '../compensation.js';
import { barMesh, gearMesh } from './meshSizes.js';
import { isPlanetary } from './planetary.js';
import { gearIn, reliefOf, type Train, type TrainBar, type TrainGear } from './train.js';
import { arrangementOf } from './trainNumbers.js';

/**
 * A train's numbers as drawn, so that it comes out as asked. A file asks for the printed train; only what is drawn, and
 * what is measured on it, goes through here, once: the outlines, never the meshes.
 *
 * A print is the drawn train, smaller by the shrinkage, with every wall further out by the growth. So walls are set
 * back by the growth along their normal (flanks and root rounding too: the basic rack's flanks, tip and rounding
 * move by it, and the envelope of a moved rack is the moved envelope), then everything is drawn larger, along all
 * three axes alike. Axes keep their places but for the scale.
 * @returns the very same train where nothing is compensated, or has been already
 */
export function drawnTrain<S extends Spec>(asked: Train<S>): Train<S> {
  const { spec } = asked;
  const { growth, scale } = compensationOf(spec);
  if (growth === 0 && scale === 1) return asked;
  const own = arrangementOf(spec).drawn?.(spec, growth, scale);
  // What the file says of single parts is read from the parts below.
  const drawn = { ...spec, ...drawnCommon(spec), ...own };
  // One and the same but for rounding, to which what is drawn is kept: see `places` of each arrangement.
  const reliefIn = isPlanetary(asked)
    ? ({ share }: TrainGear) => reliefOf(drawn.fit, share)
    : ({ relief }: TrainGear) => (relief + growth) * scale;
  const gears = asked.gears.map((gear) => ({ ...drawnGear(spec, drawn, gear), relief: reliefIn(gear) }));
  const bar = asked.bar && drawnBar(spec, drawn, asked.bar);
  return {
    ...asked,
    spec: drawn,
    gears,
    bar,
    meshes: asked.meshes.map(({ between, centreDistance }) => {
      const [one, two] = between.map((part) => part !== 'bar' && meshed(gearIn({ gears }, part)));
      const mesh = one && two ? gearMesh(between, one, two) : barMesh(one as Meshed, bar!);
      return { ...mesh, centreDistance: centreDistance * scale };
    }),
  };
}

type Meshed = ReturnType<typeof meshed>;

function meshed({ gear, radii }: TrainGear) {
  return { gear, tip: radii.tip };
}

function drawnGear(spec: Spec, { module, rack }: Spec, one: TrainGear): TrainGear {
  const { growth, scale } = compensationOf(spec);
  const { tip, root, active, straight } = one.radii;
  const inward = one.gear.internal ? growth : -growth;
  return {
    ...one,
    gear: { ...one.gear, module, rack },
    // Mates' tips are set back about as far as their distance grows, so the active radius stays where it is.
    radii: {
      tip: (tip + inward) * scale,
      root: (root + inward) * scale,
      active: active * scale,
      ...(straight !== undefined && {
        // The bar's tips are set back too, and stand off by twice the growth more.
        straight: (straight + growth * (2 * Math.sin(radians(spec.pressureAngle)) - 1)) * scale,
      }),
    },
    bore: drawnBore(one.bore, { growth, scale }),
    rim: one.gear.internal ? (one.rim - 2 * growth) * scale : 0,
    features: drawnFeatures(one.features, { growth, scale }, textWords(spec)),
  };
}

function drawnBar(spec: Spec, { module, rack }: Spec, one: TrainBar): TrainBar {
  const { growth, scale } = compensationOf(spec);
  return {
    ...one,
    bar: { ...one.bar, module, rack },
    tip: (one.tip - growth) * scale,
    root: (one.root - growth) * scale,
    active: one.active * scale,
    relief: (one.relief + growth) * scale,
    length: (one.length - 2 * growth) * scale,
    backing: (one.backing - 2 * growth) * scale,
  };
}
