import type { Spec } from '../spec/types.js';
import type { Gear } from '../tooth/gear.js';

/** The three kinds of gear of a planetary set. */
export interface SetGears {
  sun: Gear;
  planet: Gear;
  ring: Gear;
}

/** The gears that a parameter file describes, before any relief. */
export function setGears(spec: Spec): SetGears {
  const { module, pressureAngle, rack } = spec;
  const common = { module, pressureAngle, helixAngle: spec.helix.angle, rack };
  return {
    sun: { ...common, teeth: spec.sun.teeth, profileShift: spec.sun.profileShift, internal: false },
    planet: {
      ...common,
      teeth: spec.planets.teeth,
      profileShift: spec.planets.profileShift,
      internal: false,
    },
    ring: { ...common, teeth: spec.ring.teeth, profileShift: spec.ring.profileShift, internal: true },
  };
}
