import { filamentProfiles } from '../spec/profiles/filaments.js';
import { planetPlay } from './planetPlay.js';
import { spreadRing } from './ring/equalLoads.js';
import { type RingSection, ringSection } from './ring/section.js';
import { squeezedRing } from './ring/twoLoads.js';
import type { SetNumbers } from './train/setOf.js';

/** What the ring is printed of. Moduli and stresses in MPa. */
export interface SkipMaterial {
  /**
   * Young's modulus along the layers [2000: the lowest published for PLA printed flat (data sheet, ISO 527) and
   * the usual one of PETG; solid PLA has about 3500].
   */
  modulus: number;
  /** Poisson's ratio [0.36: common practice, no source]. */
  poisson: number;
  /** Stress at which a printed wall breaks [40: common practice for PLA and PETG along the layers, no source]. */
  strength: number;
}

const { modulus, poisson, strength } = filamentProfiles.PLA;
export const usualMaterial: SkipMaterial = { modulus, poisson, strength };

/** What it takes to make a tooth skip. Lengths in mm, forces in N, torque in N m, stress in MPa. */
export interface Skip {
  /** How far the teeth of planets and ring overlap along the line of centres, as made. */
  workingDepth: number;
  /** How far a planet can move in toward the sun. */
  planetPlay: number;
  /** Working depth left when a planet has done so; zero or less when it skips by itself. */
  engagementLeft: number;
  /** Each of two opposite forces on the rim that make a tooth skip at a planet midway between them. */
  pinchForce: number;
  /** Largest stress in the rim under them. */
  pinchStress: number;
  /** Each of two opposite forces on the rim that take up all play of a planet under one of them. */
  bindingForce: number;
  /** Torque on the sun that makes a tooth skip. */
  sunTorque: number;
  /** Largest stress in the rim under it. */
  torqueStress: number;
}

/**
 * The pinch on the rim and the torque on the sun at which a tooth of the ring skips.
 *
 * The rim alone carries the load: a rectangle, face width by the wall from the root circle out. The teeth, which
 * stiffen it, are left out, and so are all planets that would hold the ring from inside: the forces are on the low
 * side as long as they hold; the strength of the teeth is not reckoned. A tooth skips where the ring has moved out by the engagement left; the rim is taken as elastic throughout.
 *
 * Pinch: the ring is squeezed on a diameter, the planet stands on the other one, which grows by twice what the
 * ring moves out there. Binding: half of what the squeezed diameter loses is the planet's play toward sun and ring.
 *
 * Torque: carrier (or whatever holds the planets) or ring held, no friction, equal shares. The transverse tooth
 * force T/(N r_b of the sun) is the same in both meshes of a planet, since both act on its base circle; its radial
 * part in the ring is that times sin α_wt. Tangential parts bend the ring antisymmetrically about each planet and
 * move it neither in nor out there.
 * @throws Refusal when the rim reaches the axis or a figure of the material is not positive
 * Source: Roark's rings (see `ring/`), ISO 21771 for the forces.
 */
export function skipOf(set: SetNumbers, material: Partial<SkipMaterial> = {}): Skip {
  const { inner, outer, radii, spec } = set;
  const play = planetPlay(set);
  const workingDepth = radii.planet.tip + outer.centreDistance - radii.ring.tip;
  const engagementLeft = workingDepth - Math.max(0, play.towardSun);
  const wanted = Math.max(0, engagementLeft);
  const section = rimSection(set, { ...usualMaterial, ...material });

  // Everything is linear in the force: one newton tells all.
  const unit = squeezedRing(section, 1);
  const pinchForce = (2 * wanted) / unit.otherDiameter;
  const count = spec.planets.count;
  const spread = spreadRing(section, count, 1);
  const radialForce = wanted / spread.outwardUnderLoad;
  const torquePerForce = (count * inner.baseRadius1) / Math.sin(outer.workingPressureAngle) / 1000;
  return {
    workingDepth,
    planetPlay: play.towardSun,
    engagementLeft,
    pinchForce,
    pinchStress: pinchForce * unit.stress,
    bindingForce: (2 * (play.towardSun + play.towardRing)) / unit.loadedDiameter,
    sunTorque: radialForce * torquePerForce,
    torqueStress: radialForce * spread.stress,
  };
}

/** The ring's wall outside its root circle. */
function rimSection({ spec, radii }: SetNumbers, { modulus, poisson }: SkipMaterial): RingSection {
  const depth = spec.ring.rim;
  return ringSection({
    meanRadius: radii.ring.root + depth / 2,
    depth,
    width: spec.faceWidth,
    modulus,
    poisson,
  });
}
