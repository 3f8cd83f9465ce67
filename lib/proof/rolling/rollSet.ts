import type { FittedSet } from '../../fit/fitSet.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { nearnesses } from './nearnesses.js';
import { preparedOutline, strandsNear, type Zone } from './strandsNear.js';

/** Least gap of one kind of mesh while the set turns through a whole pitch, mm. */
export interface RollingGap {
  /** Over all planets and phases; 0 where teeth run into each other. */
  least: number;
  /** On each flank of the planet's teeth (clockwise, counter-clockwise side). */
  bySide: [number, number];
  /** Planet (1 first) and share of the pitch at which it is least. */
  planet: number;
  phase: number;
  /** Least over all planets at each phase, from 0 on in equal steps. */
  curve: number[];
}

/** Phases simulated through one pitch. */
const PHASES = 24;
/** Chords of the outlines stay this share of the gap from the curves. */
const CHORD_SHARE = 0.003;
/** Distances beyond this many gaps are not looked for. */
const REACH = 2;

/**
 * Turns sun, planets and ring together through one whole pitch with the carrier held, in the transverse plane on
 * the exact outlines, and measures the least normal distance of every mesh at every phase.
 */
export function rollSet(spec: PlanetarySpec, set: FittedSet): { inner: RollingGap; outer: RollingGap } {
  const { gap } = spec.fit;
  const sagitta = CHORD_SHARE * gap;
  const outlines = {
    sun: preparedOutline(set.profiles.sun, sagitta),
    planet: preparedOutline(set.profiles.planet, sagitta),
    ring: preparedOutline(set.profiles.ring, sagitta),
  };
  const margin = REACH * gap;
  const start = (): RollingGap => ({
    least: margin,
    bySide: [margin, margin],
    planet: 1,
    phase: 0,
    curve: Array(PHASES).fill(margin),
  });
  const inner = start();
  const outer = start();
  const { sunTeeth, planetTeeth, ringTeeth } = teethOf(spec);
  const tips = {
    sun: set.profiles.sun.tipRadius,
    planet: set.profiles.planet.tipRadius,
    ring: set.profiles.ring.tipRadius,
  };
  const aroundSun: Zone = { kind: 'within', x: 0, y: 0, radius: tips.sun + margin };
  const inRing: Zone = { kind: 'beyond', x: 0, y: 0, radius: tips.ring - margin };
  for (let step = 0; step < PHASES; step++) {
    const pitches = (2 * Math.PI * step) / PHASES;
    for (let i = 0; i < set.planets.length; i++) {
      const { angle, rotation } = set.planets[i];
      const x = set.centreDistance * Math.cos(angle);
      const y = set.centreDistance * Math.sin(angle);
      const turned = rotation - pitches / planetTeeth;
      const aroundPlanet: Zone = { kind: 'within', x, y, radius: tips.planet + margin };
      const bySun = strandsNear(outlines.planet, turned, x, y, aroundSun);
      const sun = strandsNear(outlines.sun, pitches / sunTeeth, 0, 0, aroundPlanet);
      record(inner, nearnesses(bySun, sun, margin), i + 1, step);
      const byRing = strandsNear(outlines.planet, turned, x, y, inRing);
      const ring = strandsNear(outlines.ring, set.ringRotation - pitches / ringTeeth, 0, 0, aroundPlanet);
      record(outer, nearnesses(byRing, ring, margin), i + 1, step);
    }
  }
  return { inner, outer };
}

function teethOf(spec: PlanetarySpec) {
  return { sunTeeth: spec.sun.teeth, planetTeeth: spec.planets.teeth, ringTeeth: spec.ring.teeth };
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
