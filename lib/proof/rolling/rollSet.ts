import type { FittedSet } from '../../fit/fitSet.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { nearnesses } from './nearnesses.js';
import { type RollingMesh, refinedMesh } from './refinedMesh.js';
import { CHORD_SHARE } from './rollingError.js';
import { type PreparedOutline, preparedOutline, strandsNear, type Zone } from './strandsNear.js';

/** Least gap of one kind of mesh while the set turns through a whole pitch, mm. */
export interface RollingGap {
  /** Over all planets and all phases, those between the ones of `curve` too; 0 where teeth run into each other. */
  least: number;
  /** On each flank of the planet's teeth (clockwise, counter-clockwise side). */
  bySide: [number, number];
  /** Planet (1 first) and share of the pitch at which it is least. */
  planet: number;
  phase: number;
  /** Least over all planets at each of the phases looked at first, from 0 on in equal steps. */
  curve: number[];
}

/** Phases simulated through one pitch before less is looked for between them. */
const PHASES = 24;
/** Distances beyond this many gaps are not looked for. */
const REACH = 2;

/**
 * Turns sun, planets and ring together through one whole pitch with the carrier held, in the transverse plane on
 * the exact outlines, and measures the least normal distance of every mesh. Every planet is looked at at phases evenly
 * spread; between them the first one (all others pass through the same phases, which the check `assembly` sees to), and
 * whichever comes nearest.
 */
export function rollSet(spec: PlanetarySpec, set: FittedSet): { inner: RollingGap; outer: RollingGap } {
  const { gap } = spec.fit;
  const sagitta = CHORD_SHARE * gap;
  const outlines = {
    sun: preparedOutline(set.profiles.sun, sagitta),
    planet: preparedOutline(set.profiles.planet, sagitta),
    ring: preparedOutline(set.profiles.ring, sagitta),
  };
  const meshes = set.planets.map((_, i) => ({
    inner: meshOf(set, outlines, i, 'sun'),
    outer: meshOf(set, outlines, i, 'ring'),
  }));
  return {
    inner: rolled(
      meshes.map(({ inner }) => inner),
      gap,
    ),
    outer: rolled(
      meshes.map(({ outer }) => outer),
      gap,
    ),
  };
}

/** The least gap of one kind of mesh, one for each planet. */
function rolled(meshes: readonly RollingMesh[], gap: number): RollingGap {
  const margin = REACH * gap;
  const found: RollingGap = {
    least: margin,
    bySide: [margin, margin],
    planet: 1,
    phase: 0,
    curve: Array(PHASES).fill(margin),
  };
  for (let step = 0; step < PHASES; step++)
    for (const [i, mesh] of meshes.entries()) {
      const [ones, others] = mesh.strands(step / PHASES, [margin, margin]);
      record(found, nearnesses(ones, others, margin), i + 1, step);
    }
  for (const planet of new Set([found.planet, 1])) {
    const refined = refinedMesh(meshes[planet - 1], PHASES, found, gap);
    if (refined.least < found.least) found.planet = planet;
    Object.assign(found, refined);
  }
  return found;
}

function meshOf(
  set: FittedSet,
  outlines: Record<'sun' | 'planet' | 'ring', PreparedOutline>,
  planet: number,
  part: 'sun' | 'ring',
): RollingMesh {
  const { angle, rotation } = set.planets[planet];
  const x = set.centreDistance * Math.cos(angle);
  const y = set.centreDistance * Math.sin(angle);
  const own = set.profiles.planet;
  const mate = set.profiles[part];
  const way = part === 'sun' ? 1 : -1;
  const turn = (2 * Math.PI) / own.gear.teeth;
  const mateTurn = (way * 2 * Math.PI) / mate.gear.teeth;
  const start = part === 'sun' ? 0 : set.ringRotation;
  return {
    first: { turn: -turn, x, y, slide: 0, reach: own.tipRadius },
    mate: { turn: mateTurn, x: 0, y: 0, slide: 0, reach: Math.max(mate.tipRadius, mate.rootRadius) },
    strands: (phase, [margin, mateMargin]) => {
      const aroundPlanet: Zone = { kind: 'within', x, y, radius: own.tipRadius + mateMargin };
      const inMate: Zone =
        part === 'sun'
          ? { kind: 'within', x: 0, y: 0, radius: mate.tipRadius + margin }
          : { kind: 'beyond', x: 0, y: 0, radius: mate.tipRadius - margin };
      return [
        strandsNear(outlines.planet, rotation - turn * phase, x, y, inMate),
        strandsNear(outlines[part], start + mateTurn * phase, 0, 0, aroundPlanet),
      ];
    },
  };
}

function record(
  into: RollingGap,
  [least, clockwise, counter]: [number, number, number],
  planet: number,
  step: number,
) {
  into.bySide = [Math.min(into.bySide[0], clockwise), Math.min(into.bySide[1], counter)];
  into.curve[step] = Math.min(into.curve[step], least);
  if (least < into.least) Object.assign(into, { least, planet, phase: step / PHASES });
}
