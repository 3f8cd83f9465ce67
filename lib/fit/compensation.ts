import { Refusal, refuse } from '../spec/refusal.js';
import { WALL_LINES } from '../spec/rules/room.js';
import type { Bore, CommonSpec, Lips, PlanetarySpec } from '../spec/types.js';
import { type SetGears, setGears } from '../train/setGears.js';
import { drawnCarrier } from './carrier/drawnCarrier.js';
import { drawnFeatures } from './drawnFeatures.js';
import { type FittedSet, fitSet } from './fitSet.js';
import type { SetRadii } from './setRadii.js';

/**
 * What a set is drawn otherwise for, so that it comes out as asked. A parameter file asks for the printed set; only
 * what is drawn, and what is measured on it, goes through here, once: the outlines, never the meshes.
 *
 * A print is the drawn set, smaller by the shrinkage, with every wall further out by the growth. So walls are set
 * back by the growth along their normal (flanks and root rounding too: the basic rack's flanks, tip and rounding
 * move by it, and the envelope of a moved rack is the moved envelope), then everything is drawn larger, along all
 * three axes alike. Axes keep their places but for the scale.
 */
export interface Compensation {
  /** How far printed walls stand out, mm. */
  growth: number;
  /** How far the first layer stands out beyond them, mm; nothing is drawn otherwise for it. */
  firstLayerGrowth: number;
  /** Percent by which a print is smaller than drawn. */
  shrinkage: number;
  /** Drawn lengths are this many times the printed ones: 1 / (1 − shrinkage / 100). */
  scale: number;
}

/** The compensation that a parameter file asks for. */
export function compensationOf({ printer, filament }: CommonSpec): Compensation {
  const { growth, firstLayerGrowth } = printer;
  const { shrinkage } = filament;
  return { growth, firstLayerGrowth, shrinkage, scale: 1 / (1 - shrinkage / 100) };
}

/** Normal distance between neighbouring flanks as drawn, mm. */
export function drawnGap(spec: CommonSpec): number {
  const { growth, scale } = compensationOf(spec);
  return (spec.fit.gap + 2 * growth) * scale;
}

/** A set in numbers, as asked or as drawn. */
export interface SizedSet {
  spec: PlanetarySpec;
  gears: SetGears;
  radii: SetRadii;
}

/** A set's numbers as drawn; the very same ones where nothing is compensated, or has been already. */
export function drawnNumbers<T extends SizedSet>(asked: T): SizedSet {
  const { growth, scale } = compensationOf(asked.spec);
  if (growth === 0 && scale === 1) return asked;
  const spec = drawnSpec(asked);
  const back = (part: 'sun' | 'planet' | 'ring') => {
    const { tip, root, active } = asked.radii[part];
    const inward = part === 'ring' ? growth : -growth;
    // Mates' tips are set back about as far as their distance grows, so the active radius stays where it is.
    return { tip: (tip + inward) * scale, root: (root + inward) * scale, active: active * scale };
  };
  const { adjustments } = asked.radii;
  const radii = { sun: back('sun'), planet: back('planet'), ring: back('ring'), adjustments };
  return { spec, gears: setGears(spec), radii };
}

/** A set as drawn: what bodies are made from. */
export interface DrawnSet {
  spec: PlanetarySpec;
  set: FittedSet;
}

/**
 * A fitted set as it is drawn; the very same one where nothing is compensated.
 * @throws Refusal where walls set back by the growth leave no teeth
 */
export function drawnSet(spec: PlanetarySpec, asked: FittedSet): DrawnSet {
  const drawn = drawnNumbers({ spec, gears: asked.gears, radii: asked.radii });
  if (drawn.spec === spec) return { spec, set: asked };
  try {
    return { spec: drawn.spec, set: fitSet(drawn.spec, drawn.radii, drawnWall(spec)) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    refuse('printer.growth', spec.printer.growth, `walls set back by it cannot be drawn: ${error.rule}`, [0]);
  }
}

/** Two lines of wall as they are drawn: both sides of them are set back. */
function drawnWall(spec: CommonSpec): number {
  const { growth, scale } = compensationOf(spec);
  return (WALL_LINES * spec.printer.lineWidth - 2 * growth) * scale;
}

/** The file that would ask for the drawn set, were nothing to be compensated. */
function drawnSpec({ spec, gears }: SizedSet): PlanetarySpec {
  const { growth, scale } = compensationOf(spec);
  const { sun, planets, ring } = spec;
  const drawn = drawnFeatures(growth, scale, spec);
  return {
    ...spec,
    ...drawnCommon(spec),
    // Shifts that were found for the set as asked stay its own.
    sun: {
      ...sun,
      profileShift: gears.sun.profileShift,
      bore: drawnBore(spec, sun.bore),
      ...drawn.gear(sun),
    },
    planets: { ...planets, profileShift: gears.planet.profileShift, ...drawn.planet(planets) },
    ring: {
      ...ring,
      profileShift: gears.ring.profileShift,
      rim: (ring.rim - 2 * growth) * scale,
      ...drawn.ring(ring),
    },
    ...(spec.lips && { lips: drawnLips(spec.lips, growth, scale) }),
    carrier: drawnCarrier(spec.carrier, growth, scale),
  };
}

/**
 * What a file of any kind would say of its teeth, faces and gap to ask for what is drawn, were nothing to be
 * compensated: everything larger by the shrinkage, rounding and gap set back by the growth.
 */
export function drawnCommon(spec: CommonSpec) {
  const { growth, scale } = compensationOf(spec);
  const { module, rack, faceWidth, bevel, fit, printer, filament } = spec;
  const gap = fit.gap + 2 * growth;
  return {
    module: module * scale,
    rack: { ...rack, fillet: Math.max(0, rack.fillet + growth / module) },
    faceWidth: faceWidth * scale,
    bevel: { ...bevel, size: bevel.size * scale },
    // Every flank is set back by the growth, whatever its share of the gap.
    fit: { gap: gap * scale, gapShare: (fit.gap * fit.gapShare + growth) / gap },
    printer: { ...printer, growth: 0 },
    filament: { ...filament, shrinkage: 0 },
  };
}

/** Lip and bevel are both set back; a root circle, and so the foot of a lip, goes back as far as the lip. */
function drawnLips({ on, gap, reach }: Lips, growth: number, scale: number): Lips {
  return { on, gap: (gap + 2 * growth) * scale, ...(reach !== undefined && { reach: reach * scale }) };
}

/** A bore as drawn: every size of it is a distance between two of its walls. */
export function drawnBore(spec: CommonSpec, bore: Bore): Bore {
  const { growth, scale } = compensationOf(spec);
  const drawn = (size: number) => (size + 2 * growth) * scale;
  switch (bore.shape) {
    case 'none':
      return bore;
    case 'round':
      return { ...bore, diameter: drawn(bore.diameter) };
    case 'hexagon':
    case 'square':
      return { ...bore, acrossFlats: drawn(bore.acrossFlats) };
    case 'D':
      return { ...bore, diameter: drawn(bore.diameter), acrossFlat: drawn(bore.acrossFlat) };
  }
}
