/**
 * The one mesh type: an indexed triangle mesh in mm.
 * `positions` holds x, y, z of vertex i at 3i; `triangles` holds three vertex indices at 3j,
 * counter-clockwise seen from outside. Closed and 2-manifold: every directed edge occurs once and so does
 * its reverse. No vertex occurs twice.
 */
export interface Mesh {
  positions: Float64Array;
  triangles: Uint32Array;
  /** The body that this mesh is a copy of, and where it was put: equal planets are written to a file once. */
  copyOf?: Copy;
}

/** A body turned about z and moved in the bed's plane. */
export interface Copy {
  body: Mesh;
  /** Radians, counter-clockwise, about the body's own z axis. */
  angle: number;
  /** x and y, mm. */
  offset: readonly [number, number];
}

/** One body of a set, in the place where it is printed. */
export interface Part {
  /** `sun`, `planet-1` …, `ring`. */
  name: string;
  mesh: Mesh;
  /** A script changed this planet alone, so that it stands for no other one. */
  unlike?: boolean;
  /** What a script joined to it or cut from it, in that order; absent on parts as they were swept. */
  added?: readonly AddedSolid[];
}

/** A solid that a script joined to a part or cut from it. */
export interface AddedSolid {
  operation: 'join' | 'cut';
  /** Where the script gave it: `join.ring[0]`. */
  parameter: string;
  /** Height of its lowest corner, mm. */
  lowest: number;
}
