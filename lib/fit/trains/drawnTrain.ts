import type { TrainSpec } from '../../spec/types.js';
import { radians } from '../../tooth/gear.js';
import { compensationOf, drawnBore, drawnCommon } from '../compensation.js';
import { drawnFeatures } from '../drawnFeatures.js';
import type { Train, TrainBar, TrainGear } from './train.js';

/**
 * A train's numbers as drawn, by the same rules as a planetary set's: walls set back by the growth, everything larger
 * by the shrinkage. The very same ones where nothing is compensated, or has been already.
 */
export function drawnTrain(asked: Train): Train {
  const { spec, mesh } = asked;
  const { growth, scale } = compensationOf(spec);
  if (growth === 0 && scale === 1) return asked;
  const common = drawnCommon(spec);
  return {
    ...asked,
    // What the file says of single parts is read from the parts below.
    spec: { ...spec, ...common } as TrainSpec,
    gears: asked.gears.map((gear) => drawnGear(asked.spec, gear)),
    bar: asked.bar && drawnBar(asked.spec, asked.bar),
    mesh: mesh && { ...mesh, centreDistance: mesh.centreDistance * scale, pair: null },
  };
}

function drawnGear(spec: TrainSpec, one: TrainGear): TrainGear {
  const { growth, scale } = compensationOf(spec);
  const { module, rack } = drawnCommon(spec);
  const { tip, root, active, straight } = one.radii;
  const inward = one.gear.internal ? growth : -growth;
  const features = drawnFeatures(growth, scale, spec);
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
    relief: (one.relief + growth) * scale,
    bore: drawnBore(spec, one.bore),
    rim: one.gear.internal ? (one.rim - 2 * growth) * scale : 0,
    features: one.gear.internal ? features.ring(one.features) : features.gear(one.features),
  };
}

function drawnBar(spec: TrainSpec, one: TrainBar): TrainBar {
  const { growth, scale } = compensationOf(spec);
  const { module, rack } = drawnCommon(spec);
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
