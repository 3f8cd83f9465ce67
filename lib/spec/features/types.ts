import type { ScrewSize } from './fasteners.js';

/** What can be added to gears by name, defaults filled in. Lengths in mm, sizes as they are to be on the print. */

/** A clearance hole through the axis. */
export interface ScrewHole {
  size: ScrewSize;
  series: 'fine' | 'medium' | 'coarse';
  diameter: number;
  /** End face with a 90° countersink, and the head's diameter there. */
  countersink: 'none' | 'bottom' | 'top';
  headDiameter: number;
}

/** A hexagonal pocket in an end face, with a clearance hole from there to the other one. */
export interface NutPocket {
  size: ScrewSize;
  series: 'fine' | 'medium' | 'coarse';
  at: 'bottom' | 'top';
  /** Added to the nut's width across flats and to its height. */
  clearance: number;
  /** Of the pocket. */
  acrossFlats: number;
  depth: number;
  /** Of the hole through the rest. */
  diameter: number;
}

/** A knob to turn a gear by, on its top face. */
export interface Knob {
  diameter: number;
  height: number;
  /** Hollows around it; 0 for a round knob. */
  grips: number;
}

/** A pit in the top face that a crank handle's peg goes into. */
export interface CrankSocket {
  shape: 'square' | 'hexagon';
  /** Of the peg. */
  acrossFlats: number;
  /** Between opposite flats of peg and pit. */
  clearance: number;
  depth: number;
  /** Length of a handle printed beside the set, from axis to axis; none where left out. */
  handle?: number;
}

/** Letters on a top face. */
export interface Text {
  /** `{name}`, `{module}`, `{gap}` and `{teeth}` stand for the set's own. */
  content: string;
  /** Height of capital letters. */
  size: number;
  style: 'raised' | 'sunk';
  /** How far they stand out or are sunk. */
  height: number;
}

/** Features of a gear with outside teeth. */
export interface GearFeatures {
  screw?: ScrewHole;
  nut?: NutPocket;
  knob?: Knob;
  crank?: CrankSocket;
  text?: Text;
}

/** Features of each planet. */
export interface PlanetFeatures {
  /** Through the planet. */
  hole?: { diameter: number };
  /** A round hollow in the top face. */
  dimple?: { diameter: number; depth: number };
  /** A flat-bottomed pit in the top face. */
  pocket?: { diameter: number; depth: number };
  text?: Text;
}

/** Features of a ring. */
export interface RingFeatures {
  grip?: { count: number; depth: number };
  flange?: Flange;
  bolts?: BoltHoles;
  mount?: Mount;
  text?: Text;
}

export interface Flange {
  diameter: number;
  thickness: number;
  at: 'bottom' | 'top';
}

export interface BoltHoles {
  /** Diameter of the circle that the holes stand on. */
  circle: number;
  count: number;
  size: ScrewSize;
  series: 'fine' | 'medium' | 'coarse';
  diameter: number;
}

/** How a ring is held in a hole of a panel: flange on one side, a clamp ring on the other, screws through all. */
export interface Mount {
  /** Diameter of the hole in the panel. */
  hole: number;
  /** Thickness of the panel. */
  panel: number;
  /** Least distance from the ring's body to the wall of the hole, and to the clamp ring. */
  clearance: number;
  screw: ScrewSize;
  /** How many screws. */
  screws: number;
  /** Diameter of the circle that the screws stand on. */
  circle: number;
  /** Of each screw's hole. */
  diameter: number;
  /** Of the countersinks in the flange. */
  headDiameter: number;
  /** Pockets for the nuts in the clamp ring: width across flats, and depth. */
  nutFlats: number;
  nutDepth: number;
  /** Thickness of the clamp ring. */
  clamp: number;
}
