import type { GearFeatures, PlanetFeatures, RingFeatures } from './features/types.js';
import type { FilamentName } from './profiles/filaments.js';
import type { PrinterName } from './profiles/printers.js';

/**
 * The parameter file with every default filled in. Lengths in mm, angles in degrees.
 * `resolveSpec` makes one; every later stage only reads it. What is asked for follows from `kind`.
 */
export type Spec = PlanetarySpec | PairSpec | RackSpec | GearSpec;

/** What is made. */
export type Kind = Spec['kind'];

/** The parameter file of one kind. */
export type SpecOf<K extends Kind> = Extract<Spec, { kind: K }>;

/** What the files of all kinds have in common. */
export interface CommonSpec {
  /** Base name of the files written. */
  name: string;
  kind: 'planetary' | 'pair' | 'rack' | 'gear';
  /** Normal module m_n, mm. */
  module: number;
  /** Normal pressure angle, degrees. */
  pressureAngle: number;
  rack: Rack;
  helix: Helix;
  /** Axial length of the teeth of every gear, mm. */
  faceWidth: number;
  bevel: Bevel;
  fit: Fit;
  printer: Printer;
  filament: Filament;
  /** Largest distance of the mesh from the exact surface, mm. */
  tolerance: number;
  limits: CommonLimits;
}

/** Sun, planets and ring. */
export interface PlanetarySpec extends CommonSpec {
  kind: 'planetary';
  /** `solve`: shifts that a gear does not give below are found (`setGears`); with `none` every gear has one. */
  profileShift: 'none' | 'solve';
  /** How sun and planets share the shift that is found. */
  shiftBalance: 'sliding' | 'root' | 'none';
  sun: { teeth: number; profileShift?: number; bore: Bore } & GearFeatures;
  planets: {
    teeth: number;
    count: number;
    spacing: 'equal' | 'nearest';
    profileShift?: number;
  } & PlanetFeatures;
  /** `rim` is the wall outside the root circle, mm. */
  ring: { teeth: number; profileShift?: number; rim: number } & RingFeatures;
  /** What the file asks of the widest opening between planets. */
  opening?: OpeningAsked;
  carrier: 'none' | Carrier;
  /** What of the gears holds the parts together along the axis. */
  retention: 'none' | 'herringbone' | 'lips' | 'both';
  /** Only where `retention` is lips or both. */
  lips?: Lips;
  limits: Limits;
}

/** A gear with teeth outside; a shift that is missing is to be found. */
export interface ExternalGear extends GearFeatures {
  teeth: number;
  profileShift?: number;
  bore: Bore;
}

/** A gear with teeth inside; `rim` is the wall outside the root circle, mm. */
export interface InternalGear extends RingFeatures {
  teeth: number;
  profileShift?: number;
  rim: number;
}

/** Two gears on parallel axes, the wheel either beside the pinion or around it. */
export interface PairSpec extends CommonSpec {
  kind: 'pair';
  /** `solve`: shifts that a gear does not give are found (`pairGears`). */
  profileShift: 'none' | 'solve';
  /** How pinion and wheel share the shift that is found. */
  shiftBalance: 'sliding' | 'none';
  /** Distance of the axes, mm; where it is missing, the one that the shifts give. */
  centreDistance?: number;
  pinion: ExternalGear;
  wheel: ({ internal: false } & ExternalGear) | ({ internal: true } & InternalGear);
}

/** A gear and a toothed bar. */
export interface RackSpec extends CommonSpec {
  kind: 'rack';
  pinion: ExternalGear;
  /** `length` from end to end and `backing` behind the roots, mm. */
  bar: { teeth: number; length: number; backing: number };
}

/** One gear by itself. */
export interface GearSpec extends CommonSpec {
  kind: 'gear';
  gear:
    | ({ internal: false } & ExternalGear)
    /** `mateTeeth`: of the smallest gear that it is to run with. */
    | ({ internal: true; mateTeeth: number } & InternalGear);
}

/** The kinds of file that are no planetary set. */
export type TrainSpec = PairSpec | RackSpec | GearSpec;

/** Basic rack in units of the normal module (ISO 53: h_aP*, h_fP*, ρ_fP*). */
export interface Rack {
  addendum: number;
  dedendum: number;
  fillet: number;
}

export interface Helix {
  form: 'spur' | 'helical' | 'herringbone';
  /** Helix angle at the reference cylinder, degrees; 0 for spur. */
  angle: number;
  /** Hand of the sun (of its lower half when herringbone); planets and ring have the other one. */
  hand: 'right' | 'left';
}

/** Conical cut of the tooth tips at both end faces. */
export interface Bevel {
  /** Angle between the cone's generator and the end face, degrees. */
  angle: number;
  /** How far the tip is cut back radially at the end face, mm; 0 for none. */
  size: number;
}

export type Bore =
  | { shape: 'none' }
  | { shape: 'round'; diameter: number }
  | { shape: 'hexagon'; acrossFlats: number }
  | { shape: 'square'; acrossFlats: number }
  /** `acrossFlat`: from the flat to the far side of the circle, mm. */
  | { shape: 'D'; diameter: number; acrossFlat: number };

export interface Fit {
  /** Normal distance between neighbouring flanks with every part centred, mm. */
  gap: number;
  /** Share of the gap taken from sun and ring (1 = all of it); the rest is taken from the planets. */
  gapShare: number;
}

export interface Printer {
  /** Nozzle diameter, mm. */
  nozzle: number;
  /** Layer height, mm. */
  layer: number;
  /** Width of one extruded line, mm. */
  lineWidth: number;
  /** Shipped profile that filled what the file did not give. */
  profile: PrinterName;
  /** Room for a print along x, y and z, mm. */
  bed: { width: number; depth: number; height: number };
  /** How far every printed wall stands out beyond the drawn one, mm; may be negative. */
  growth: number;
  /** How far the first layer stands out beyond the walls above it, mm. */
  firstLayerGrowth: number;
}

/** What it is printed of. Moduli and stresses in MPa, along the layers; temperatures in °C. */
export interface Filament {
  material: FilamentName;
  /** How much smaller a print is than drawn, percent. */
  shrinkage: number;
  modulus: number;
  strength: number;
  poisson: number;
  glassTransition: number;
  dryingTemperature: number;
}

/** A loose part that carries the planets. */
export interface Carrier {
  form: 'pins' | 'cage';
  plates: 'above' | 'below' | 'both';
  /** Of each plate, mm, a whole number of layers. */
  thickness: number;
  /** Radial distance to planets, sun and ring, along the normal, mm. */
  gap: number;
  /** Distance between a plate and the gears under or over it, in layers. */
  axialGap: number;
  /** Whether the upper plate is open over the sun. */
  centre: 'open' | 'closed';
  /** None in a cage. */
  pin?: Pin;
  boss: Boss;
  bolts: 'none' | Bolts;
}

export interface Pin {
  /** Largest diameter, mm. */
  diameter: number;
  form: 'straight' | 'waisted' | 'barrelled';
  /** How much less the radius is where it is thinnest, mm; 0 for a straight pin. */
  depth: number;
}

/** What stands on the upper plate. Heights above the plate, mm. */
export type Boss =
  | { shape: 'none' }
  | { shape: 'round'; diameter: number; height: number }
  | { shape: 'hexagon' | 'square'; acrossFlats: number; height: number }
  | { shape: 'D'; diameter: number; acrossFlat: number; height: number };

/** Holes through the outermost plate, evenly spaced. */
export interface Bolts {
  diameter: number;
  count: number;
  /** Diameter of the circle that they stand on, mm; midway on the plate where it is missing. */
  circle?: number;
}

/** Cones that close the ends of the tooth spaces. */
export interface Lips {
  on: 'ring' | 'sun' | 'both';
  /** Distance to the planets' bevels along the normal, mm. */
  gap: number;
  /** Largest height over the root circle, mm; what is missing is as far as the gap allows. */
  reach?: number;
}

/** Limit on the widest opening between planets, mm; what is missing is not asked. */
export interface OpeningAsked {
  /** Largest way that a straight edge may drop in, inside the ring's tip circle. */
  max?: number;
  /** Length of that edge. */
  edge?: number;
}

/** Limits of the checks on every kind of file; each one is explained in the schema. */
export interface CommonLimits {
  /** Least total contact ratio below which a `should` fails. */
  contactRatio: number;
  /** Least tip thickness and root space, mm. */
  toothFeature: number;
  /** Least tooth thickness and wall, mm. */
  wall: number;
  /** Least ring rim, mm. */
  rim: number;
  /** Largest way along the axis that a part may move, mm. */
  axialPlay: number;
  /** Steepest overhang, degrees from the vertical. */
  overhangAngle: number;
  /** Largest area that may overhang by more, mm². */
  overhangArea: number;
  /** Longest span without support beneath it, mm. */
  bridge: number;
  /** Largest height of a free wall in units of its thickness. */
  thinness: number;
}

/** Limits of the checks on planetary sets. */
export interface Limits extends CommonLimits {
  /** Least pinch on the rim at which a tooth may skip, N. */
  pinchForce: number;
  /** Least torque on the sun at which a tooth may skip, N m. */
  sunTorque: number;
  /** Largest angle by which a planet may tip over, degrees. */
  tilt: number;
}
