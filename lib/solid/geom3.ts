import type { geometries } from '@jscad/modeling';
import { refuse } from '../refusal.js';
import { healJunctions } from './geom3/heal.js';
import { type Flaws, findFlaws, type Loop, splitLoop } from './geom3/loops.js';
import { type Corners, readPolygons } from './geom3/polygons.js';
import { triangulate } from './geom3/triangulate.js';
import { weld } from './geom3/weld.js';
import type { Mesh, Part } from './mesh.js';
import { partColour } from './partColour.js';

/** A solid of @jscad/modeling, in mm. */
export type Geom3 = geometries.geom3.Geom3;

/** A solid as `toGeom3` gives it: what it is, and the colour in which modelling programs show it. */
export type NamedGeom3 = Geom3 & {
  name?: string;
  /** Red, green, blue and opacity, each 0 … 1: the property that @jscad/modeling's own `colorize` sets. */
  color?: [number, number, number, number];
};

/**
 * A part, or a bare mesh, as a solid of @jscad/modeling: one polygon a triangle, corners shared, no transform. Meant
 * for modelling scripts; large meshes go to disk through `encodeStl` and `encode3mf` instead.
 * A part keeps its name and takes the colour of its kind (`partColour`, which colour-blind people tell apart too).
 * @param what a part as `buildSet` makes it, or a mesh, mm
 * @param name kept on the solid as `name`, where scripts may look for it [the part's own]; a mesh without a name
 * gets no colour
 * @example const solids = buildSet(spec).map((part) => toGeom3(part));
 */
export function toGeom3(what: Part | Mesh, name = 'mesh' in what ? what.name : undefined): NamedGeom3 {
  const { positions, triangles } = 'mesh' in what ? what.mesh : what;
  const corners = Array.from({ length: positions.length / 3 }, (_, i): [number, number, number] => [
    positions[3 * i],
    positions[3 * i + 1],
    positions[3 * i + 2],
  ]);
  const polygons = Array.from({ length: triangles.length / 3 }, (_, i) => ({
    vertices: [corners[triangles[3 * i]], corners[triangles[3 * i + 1]], corners[triangles[3 * i + 2]]],
  }));
  return {
    polygons,
    transforms: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1],
    ...(name ? { name, color: [...partColour(name), 1] } : {}),
  };
}

/**
 * How far apart corners may be and still be one, mm: the least that closes the solid is used. 0 gives back
 * what `toGeom3` was given, to the last bit. Booleans of @jscad/modeling move corners by up to about 1e-5 of
 * the model's size, which the last one covers for a set that fits a printer.
 */
const TOLERANCES = [0, 1e-6, 1e-5, 1e-4, 1e-3];

/**
 * A solid of @jscad/modeling as a mesh: transforms applied, convex polygons cut into triangles, coinciding
 * corners made one, and the T-junctions that its booleans leave mended by putting the corner into the edge
 * it lies on.
 * @param geometry closed, outward, polygons convex; it is not changed
 * @returns a closed, 2-manifold mesh; triangles in the order of the polygons
 * @throws Refusal naming what is open, or shared by more than two faces, after mending; also for a solid that
 * is empty, inside out, or holds a coordinate that is not a finite number
 */
export function fromGeom3(geometry: Geom3): Mesh {
  const corners = readPolygons(geometry);
  let last: { flaws: Flaws; positions: Float64Array } | null = null;
  for (const tolerance of TOLERANCES) {
    const { positions, indexOf } = weld(corners.points, tolerance);
    const loops = healJunctions(loopsOf(corners, indexOf), positions, tolerance);
    const flaws = findFlaws(loops, positions.length / 3);
    if (flaws.open.length + flaws.crowded.length === 0) return meshOf(loops, positions);
    last = { flaws, positions };
  }
  return refuseFlaws(last!.flaws, last!.positions);
}

function loopsOf({ starts }: Corners, indexOf: Uint32Array): Loop[] {
  return Array.from({ length: starts.length - 1 }, (_, i) =>
    splitLoop([...indexOf.subarray(starts[i], starts[i + 1])]),
  ).flat();
}

/** Triangles of the loops, without the points that no loop uses any more. */
function meshOf(loops: readonly Loop[], welded: Float64Array): Mesh {
  const grown = Array.from(welded);
  const corners = triangulate(loops, grown);
  const placeOf = new Map<number, number>();
  const triangles = Uint32Array.from(corners, (vertex) => {
    const place = placeOf.get(vertex) ?? placeOf.size;
    placeOf.set(vertex, place);
    return place;
  });
  const positions = new Float64Array(3 * placeOf.size);
  for (const [vertex, place] of placeOf) positions.set(grown.slice(3 * vertex, 3 * vertex + 3), 3 * place);
  const volume = sixfoldVolume(positions, triangles) / 6;
  if (!(volume > 0))
    refuse('not-closed', 'geom3.polygons', volume, 'the solid is empty or inside out (volume in mm³)');
  return { positions, triangles };
}

/** Six times the volume by the divergence theorem. */
function sixfoldVolume(p: Float64Array, triangles: Uint32Array): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    sum += p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]);
    sum += p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]);
    sum += p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return sum;
}

function refuseFlaws({ open, crowded }: Flaws, positions: Float64Array): never {
  const at = (vertex: number): string =>
    `(${Array.from(positions.subarray(3 * vertex, 3 * vertex + 3), (v) => Number(v.toFixed(4))).join(', ')})`;
  const [edges, what] = open.length
    ? [open, 'edges have a face on one side only']
    : [crowded, 'edges are shared by more than two faces'];
  const [from, to] = edges[0];
  const rule = `the solid must be closed and 2-manifold, but ${edges.length} ${what}; one runs from ${at(from)} to ${at(to)} mm`;
  refuse('not-closed', 'geom3.polygons', edges.length, rule);
}
