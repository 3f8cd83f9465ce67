import { liftOf } from '../../fit/carrier/carrierSizes.js';
import type { FittedSet } from '../../fit/fitSet.js';
import { setInUse } from '../../solid/buildSet.js';
import type { Mesh, Part } from '../../solid/mesh.js';
import { panelPiece } from '../../solid/panel.js';
import { kindOf } from '../../solid/partKinds.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { polar } from '../../tooth/polar.js';
import type { ToothProfile } from '../../tooth/profile.js';
import type { BodyFindings } from '../bodies.js';
import { type DistanceTree, triangleTree } from '../mesh/triangleTree.js';
import { onItsSeat } from './onItsSeat.js';
import { outsideOf } from './outsideOf.js';
import { HAIR, type Mates, type MovingBody, type Scene, type ToothZone } from './scene.js';

/** A set as it was built and measured. */
export interface BuiltSet {
  /** As drawn. */
  spec: PlanetarySpec;
  set: FittedSet;
  parts: readonly Part[];
  bodies: BodyFindings;
  /** Parts that a script changed, as they were swept before, by name. */
  swept: ReadonlyMap<string, Mesh>;
  /** How far a measured gap may be off, mm. */
  allowed: number;
}

/** Parts of the kinds that lie beside a set until they are used. */
const LOOSE = ['crank-handle', 'clamp-ring'];
const PANEL = 'panel';
const ORIGIN = [0, 0] as const;

/**
 * A planetary set in motion, seen by someone who rides on the planets' axes: sun and ring turn against each other, planets
 * about their own axes, the carrier stands still. The handle turns with the sun, panel and clamp ring with the ring.
 */
export function planetaryScene(built: BuiltSet): Scene {
  const { spec, set, parts, bodies, allowed } = built;
  const lift = liftOf(set.carrier);
  const slab: [number, number] = [lift, lift + spec.faceWidth];
  const trees = bodies.trees;
  const isLoose = ({ name }: Part) => LOOSE.includes(name);
  const { gap } = spec.fit;
  const carried = set.carrier ? Math.min(set.carrier.carrier.gap, set.carrier.axialGap) : gap;
  return {
    bodies: [
      ...parts.filter((part) => !isLoose(part)).map((part) => bodyOf(built, part, slab)),
      ...looseInUse(built),
    ],
    mates: parts
      .filter(({ name }) => kindOf(name) === 'planet')
      .flatMap(({ name }, i) => matesOf(built, name, i)),
    seated: [
      ['crank-handle', 'sun'],
      ['clamp-ring', 'ring'],
      [PANEL, 'ring'],
      ['clamp-ring', PANEL],
    ],
    loose: parts.filter(isLoose).map(({ name }) => ({ name, tree: trees.get(name)! })),
    printed: trees,
    slab,
    herringbone: spec.helix.form === 'herringbone',
    pitch: Math.max(...Object.values(set.profiles).map(pitchOf)),
    travel: 0,
    gap,
    allowed,
    least: (a, b) => (a === 'carrier' || b === 'carrier' ? carried : gap),
  };
}

/** Circumferential pitch where it is widest, mm. */
function pitchOf({ gear, tipRadius, rootRadius }: ToothProfile): number {
  return (2 * Math.PI * Math.max(tipRadius, rootRadius)) / gear.teeth;
}

function bodyOf({ spec, set, bodies, swept }: BuiltSet, part: Part, slab: [number, number]): MovingBody {
  const { name, mesh } = part;
  const tree = bodies.trees.get(name)!;
  if (name === 'carrier') return { name, tree, turning: { axis: ORIGIN, teeth: 0 } };
  const before = swept.get(name);
  const toothed = bodies.bodies.find((body) => body.name === name)?.deviation?.toothed;
  const outside = outsideOf(mesh, slab, before && toothed && { swept: before, toothed });
  const common = { name, tree, outside };
  if (name === 'sun') return { ...common, turning: { axis: ORIGIN, teeth: spec.sun.teeth } };
  if (name === 'ring') return { ...common, turning: { axis: ORIGIN, teeth: -spec.ring.teeth } };
  const turning = { axis: axisOf(set, name), teeth: -spec.planets.teeth };
  return { ...common, turning, ...(before ? {} : { copyOf: 'planet' }) };
}

function axisOf({ planets, centreDistance }: FittedSet, name: string): [number, number] {
  return polar(centreDistance, planets[numberOf(name)].angle);
}

function numberOf(name: string): number {
  return Number(name.replace('planet-', '')) - 1;
}

/** Handle, clamp ring and panel where they are used. */
function looseInUse({ spec, set, bodies }: BuiltSet): MovingBody[] {
  const { mount, flange } = spec.ring;
  const inUse = setInUse(spec, set);
  const ring = { axis: ORIGIN, teeth: -spec.ring.teeth };
  const found: MovingBody[] = [];
  const handle = inUse.get('crank-handle');
  if (handle)
    found.push({
      name: 'crank-handle',
      tree: onItsSeat(bodies.trees.get('crank-handle')!, handle, HAIR),
      turning: { axis: ORIGIN, teeth: spec.sun.teeth },
      anyTurn: true,
    });
  const clamp = inUse.get('clamp-ring');
  if (!clamp || !mount || !flange) return found;
  const reach = 1.5 * Math.max(...[...bodies.trees.values(), ...found.map(({ tree }) => tree)].map(reachOf));
  const panel = panelPiece(mount.hole, Math.max(reach, mount.hole), flange.thickness + HAIR, mount.panel);
  return [
    ...found,
    { name: PANEL, tree: triangleTree(panel), turning: ring },
    {
      name: 'clamp-ring',
      tree: onItsSeat(bodies.trees.get('clamp-ring')!, clamp, 2 * HAIR),
      turning: ring,
    },
  ];
}

/** How far a body reaches from the axis of the set, at most, mm. */
function reachOf({ boxes }: DistanceTree): number {
  return Math.hypot(
    Math.max(Math.abs(boxes[0]), Math.abs(boxes[3])),
    Math.max(Math.abs(boxes[1]), Math.abs(boxes[4])),
  );
}

/** A planet with sun and ring. */
function matesOf({ spec, set, parts, swept }: BuiltSet, planet: string, i: number): Mates[] {
  const { profiles, planets, ringRotation } = set;
  const { angle, rotation } = planets[i];
  const mesh = (name: string) => swept.get(name) ?? parts.find((part) => part.name === name)!.mesh;
  const zone: ToothZone = { kind: 'within', centre: axisOf(set, planet), radius: profiles.planet.tipRadius };
  const inSun: ToothZone = { kind: 'within', centre: ORIGIN, radius: profiles.sun.tipRadius };
  const inRing: ToothZone = { kind: 'beyond', centre: ORIGIN, radius: profiles.ring.tipRadius };
  const own = spec.planets.teeth * (angle - rotation);
  return [
    {
      between: ['sun', planet],
      meshes: [mesh('sun'), mesh(planet)],
      zones: [inSun, zone],
      cycle: `sun ${cycleOf(spec.sun.teeth * angle + own + spec.planets.teeth * Math.PI)}`,
    },
    {
      between: [planet, 'ring'],
      meshes: [mesh(planet), mesh('ring')],
      zones: [zone, inRing],
      cycle: `ring ${cycleOf(own - spec.ring.teeth * (angle - ringRotation))}`,
    },
  ];
}

/** Millionths of a pitch. */
const CYCLE = 1e6;

/** What stays the same of the phases of two mates while they turn, as a word. */
function cycleOf(phase: number): string {
  const share = Math.round((CYCLE * phase) / (2 * Math.PI)) % CYCLE;
  return String((share + CYCLE) % CYCLE);
}
