import type { CommonSpec } from '../../spec/types.js';
import { type Gear, gearSizes } from '../../tooth/gear.js';
import { rackMesh } from '../../train/rackMesh.js';
import type { Adjustment } from '../adjustment.js';
import type { MadeRadii } from '../madeRadii.js';

/** Radii of a pinion and heights of a bar that run together: roots deepened where the rack's clearance is less than the gap. */
export function besideBar(spec: CommonSpec, gear: Gear, name: 'pinion' | 'gear') {
  const { rack, module, fit } = spec;
  const sizes = gearSizes(gear);
  const deeper = Math.max(0, fit.gap - (rack.dedendum - rack.addendum) * module);
  const [tip, root] = [rack.addendum * module, -rack.dedendum * module - deeper];
  const { start, end } = rackMesh(gear, sizes.tipRadius, tip);
  // A tip that stands off its mate by the gap has its nearest point that much farther along the line of action.
  const off = fit.gap / Math.cos(sizes.baseHelixAngle);
  const sin = Math.sin(sizes.transversePressureAngle);
  const radii: MadeRadii = {
    tip: sizes.tipRadius,
    root: sizes.rootRadius - deeper,
    active: Math.hypot(sizes.baseRadius, Math.max(0, start - off)),
    // The bar's tips stand off the rack's flanks by the gap, along their normal, which leans towards the root.
    straight: tip - gear.profileShift * module + fit.gap * Math.sin(sizes.normalPressureAngle),
  };
  const active = gear.profileShift * module - (end + off - sizes.referenceRadius * sin) * sin;
  const adjustments: Adjustment[] =
    deeper > 0 ? [name, 'bar'].map((part) => ({ part, what: 'roots-deepened', by: deeper })) : [];
  return { radii, tip, root, active, adjustments };
}
