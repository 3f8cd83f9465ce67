import { type Gear, radians } from '../../lib/tooth/gear.js';

/** An external gear on the ISO 53 profile A rack at 20°, module 1, with what the test changes. */
export function gear(teeth: number, changes: Partial<Gear> = {}): Gear {
  return {
    teeth,
    module: 1,
    pressureAngle: 20,
    helixAngle: 0,
    rack: { addendum: 1, dedendum: 1.25, fillet: 0.38 },
    profileShift: 0,
    internal: false,
    ...changes,
  };
}

/** The ring of the same numbers. */
export function ring(teeth: number, changes: Partial<Gear> = {}): Gear {
  return gear(teeth, { internal: true, ...changes });
}

/** A gear given in the transverse plane (module, pressure angle, shift), as handbooks call the transverse system. */
export function transverseGear(
  teeth: number,
  given: { module: number; pressureAngle: number; helixAngle: number; profileShift: number },
): Gear {
  const cos = Math.cos(radians(given.helixAngle));
  const normalAngle = Math.atan(Math.tan(radians(given.pressureAngle)) * cos);
  return gear(teeth, {
    module: given.module * cos,
    pressureAngle: (normalAngle * 180) / Math.PI,
    helixAngle: given.helixAngle,
    // A shift in mm is the same length in both systems: x_n m_n = x_t m_t.
    profileShift: given.profileShift / cos,
  });
}
