import { refuseAll } from '../refusal.js';
import { rootsProblems } from '../spec/rules/gears.js';
import type { PlanetarySpec } from '../spec/types.js';
import type { Gear } from '../tooth/gear.js';
import { specShifts } from './shifts/specShifts.js';

/** The three kinds of gear of a planetary set. */
export interface SetGears {
  sun: Gear;
  planet: Gear;
  ring: Gear;
}

/**
 * The gears that a parameter file describes, before any relief; shifts that it asks to be found are found here.
 * @throws Refusal when given shifts contradict each other, or a shift that was found leaves too little
 * body inside the teeth
 */
export function setGears(spec: PlanetarySpec): SetGears {
  const { module, pressureAngle, rack } = spec;
  const common = { module, pressureAngle, helixAngle: spec.helix.angle, rack };
  const shifts = specShifts(spec);
  if (shifts.outcome) {
    const sun = { ...spec.sun, profileShift: shifts.sun };
    const planets = { ...spec.planets, profileShift: shifts.planet };
    refuseAll(rootsProblems({ ...spec, sun, planets }));
  }
  return {
    sun: { ...common, teeth: spec.sun.teeth, profileShift: shifts.sun, internal: false },
    planet: { ...common, teeth: spec.planets.teeth, profileShift: shifts.planet, internal: false },
    ring: { ...common, teeth: spec.ring.teeth, profileShift: shifts.ring, internal: true },
  };
}
