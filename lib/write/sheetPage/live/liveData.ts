/** What the live view of a sheet is given: everything it shows, nothing it has to know of gears. mm; turns are whole turns. */
export interface LiveData {
  bodies: LiveBody[];
  /** Different meshes; equal bodies name the same one. */
  shapes: LiveShape[];
  modes: LiveMode[];
  mates: LiveMates[];
  /** Radius of a circle about the middle of the view that holds everything. */
  reach: number;
  middle: [number, number];
  /** Radius of a ball about the middle that holds everything. */
  ball: number;
  /** Least and greatest height of all bodies. */
  heights: [number, number];
  /** Height of the section. */
  level: number;
  /** Share of a pitch at which the section stands at rest in `LiveMates.curve`. */
  phaseAtRest: number;
}

/** One part. */
export interface LiveBody {
  name: string;
  /** sRGB, each 0 … 255. */
  colour: [number, number, number];
  /** Place of its axis at rest. */
  centre: [number, number];
  /** Outlines of its section, x and y in turn, from its axis. */
  loops: number[][];
  /** Index of its mesh, and how far that is turned about the axis at rest, radians. */
  shape: number;
  angle: number;
}

/** A mesh from its own axis, packed: see `packShape`. */
export interface LiveShape {
  /** Base64 of 16-bit coordinates and 32-bit vertex numbers, little endian. */
  positions: string;
  triangles: string;
  /** Least corner, and mm for one step of a coordinate. */
  origin: [number, number, number];
  step: [number, number, number];
}

/** One way to drive the set: what is held, what is turned, how everything moves for one turn of that. */
export interface LiveMode {
  /** What is held, in words. */
  label: string;
  /** Part that is turned by hand. */
  driver: string;
  /** By part; what is not named stays. */
  motions: Record<string, LiveMotion>;
  /** Pitches that pass for one turn of the driver. */
  pitches: number;
}

/** Motion of one part for one turn of the driver. */
export interface LiveMotion {
  /** Turns about its own axis, seen from the frame. */
  turns: number;
  /** Turns of its axis about the middle of the set. */
  orbit: number;
  /** Shift of its axis, mm. */
  shift: [number, number];
}

/** Two parts whose teeth mesh, and the gap between them while they roll. */
export interface LiveMates {
  between: [string, string];
  /** Where their pitch circles touch at rest; it goes round with the axis of `follows`. */
  at: [number, number];
  follows: string;
  /** Normal distance for one mm of distance in the plane of the section. */
  shortening: number;
  /** Gap as drawn. */
  gap: number;
  /** Least normal gap at equal steps through one pitch; empty where it was not simulated. */
  curve: number[];
}
