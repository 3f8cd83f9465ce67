import { liftOf } from '../../fit/carrier/carrierSizes.js';
import type { FittedTrain, PlacedBar, PlacedGear } from '../../fit/train/fitTrain.js';
import type { Place } from '../../fit/train/place.js';
import { gearIn } from '../../fit/train/train.js';
import { looseParts } from '../../solid/buildTrain.js';
import type { InUse } from '../../solid/inUse.js';
import type { Mesh, Part } from '../../solid/mesh.js';
import { panelPiece } from '../../solid/panel.js';
import { kindOf } from '../../solid/partKinds.js';
import type { BodyFindings } from '../bodies.js';
import { type DistanceTree, triangleTree } from '../mesh/triangleTree.js';
import { movedTree } from '../motion/movedTree.js';
import { outsideOf } from './outsideOf.js';
import { HAIR, type Mates, type MovingBody, type Scene, type ToothZone } from './scene.js';
import type { Turning } from './turning.js';

/** A train as it was built and measured. */
export interface BuiltTrain {
  /** As drawn. */
  train: FittedTrain;
  parts: readonly Part[];
  bodies: BodyFindings;
  /** Parts that a script changed, as they were swept before, by name. */
  swept: ReadonlyMap<string, Mesh>;
  /** How far a measured gap may be off, mm. */
  allowed: number;
}

const PANEL = 'panel';
const CARRIER = 'carrier';

/**
 * A train in motion, seen by someone who rides on its axes: sun and ring turn against each other, planets about their own
 * axes, the carrier stands still; a bar slides from one of its ends to the other. What is put on a part (a handle, a clamp
 * ring and the panel under it) goes with that part.
 */
export function sceneOf(built: BuiltTrain): Scene {
  const { train, parts, bodies, allowed } = built;
  const { spec, gears, bar, carrier } = train;
  const lift = liftOf(carrier);
  const slab: [number, number] = [lift, lift + spec.faceWidth];
  const trees = bodies.trees;
  const loose = looseInUse(built);
  const isLoose = ({ name }: Part) => loose.some((one) => one.name === name);
  const { gap } = spec.fit;
  const carried = carrier ? Math.min(carrier.carrier.gap, carrier.axialGap) : gap;
  return {
    bodies: [
      ...parts.filter((part) => !isLoose(part)).map((part) => bodyOf(built, part, slab)),
      ...loose.map(({ seats: _, ...body }) => body),
    ],
    mates: matesOf(built),
    seated: loose.flatMap(({ name, seats }) => seats.map((seat): [string, string] => [name, seat])),
    loose: parts.filter(isLoose).map(({ name }) => ({ name, tree: trees.get(name)! })),
    printed: trees,
    slab,
    herringbone: spec.helix.form === 'herringbone',
    pitch: Math.max(...gears.map(pitchOf)),
    travel: bar?.teeth ?? 0,
    gap,
    allowed,
    least: (a, b) => (a === CARRIER || b === CARRIER ? carried : gap),
  };
}

/** Circumferential pitch where it is widest, mm. */
function pitchOf({ gear, profile }: PlacedGear): number {
  return (2 * Math.PI * Math.max(profile.tipRadius, profile.rootRadius)) / gear.teeth;
}

function turningOf({ gears, bar }: FittedTrain, name: string): Turning {
  if (name === CARRIER) return { axis: [0, 0], teeth: 0 };
  if (name === bar?.part) return { slide: bar.profile.transversePitch };
  const { gear, way, places } = gears.find((one) => one.places.some((place) => place.name === name))!;
  const { centre } = places.find((place) => place.name === name)!;
  return { axis: centre, teeth: way * gear.teeth };
}

function bodyOf({ train, bodies, swept }: BuiltTrain, part: Part, slab: [number, number]): MovingBody {
  const { name, mesh } = part;
  const turning = turningOf(train, name);
  const tree = bodies.trees.get(name)!;
  if (name === CARRIER) return { name, tree, turning };
  const before = swept.get(name);
  const toothed = bodies.bodies.find((body) => body.name === name)?.deviation?.toothed;
  const outside = outsideOf(mesh, slab, before && toothed && { swept: before, toothed });
  const orbits = train.gears.some((one) => one.orbits && one.part === kindOf(name));
  return { name, tree, turning, outside, ...(orbits && !before ? { copyOf: kindOf(name) } : {}) };
}

/** A body that lies on others where it is used. */
type Seated = MovingBody & { seats: string[] };

/** Handle, clamp ring and panel where they are used. */
function looseInUse({ train, bodies }: BuiltTrain): Seated[] {
  const loose = looseParts(train);
  const found: Seated[] = [];
  const handle = loose.find(({ name }) => name === 'crank-handle');
  if (handle)
    found.push({
      name: handle.name,
      tree: onItsSeat(bodies.trees.get(handle.name)!, handle.inUse, HAIR),
      turning: turningOf(train, handle.on),
      anyTurn: true,
      seats: [handle.on],
    });
  const clamp = loose.find(({ name }) => name === 'clamp-ring');
  const { mount, flange } = train.gears.find(({ part }) => part === clamp?.on)?.features ?? {};
  if (!clamp || !mount || !flange) return found;
  const turning = turningOf(train, clamp.on);
  const reach = 1.5 * Math.max(...[...bodies.trees.values(), ...found.map(({ tree }) => tree)].map(reachOf));
  const panel = panelPiece(mount.hole, Math.max(reach, mount.hole), flange.thickness + HAIR, mount.panel);
  const tree = onItsSeat(bodies.trees.get(clamp.name)!, clamp.inUse, 2 * HAIR);
  return [
    ...found,
    { name: PANEL, tree: triangleTree(panel), turning, seats: [clamp.on] },
    { name: clamp.name, tree, turning, seats: [clamp.on, PANEL] },
  ];
}

/** A part where it is used, lifted off its seat by a hair, mm. */
function onItsSeat(tree: DistanceTree, { motion, about }: InUse, hair: number): DistanceTree {
  const [x, y, z, ...turn] = motion;
  return movedTree(tree, [x, y, z + hair, ...turn], about);
}

/** How far a body reaches from the axis of the set, at most, mm. */
function reachOf({ boxes }: DistanceTree): number {
  return Math.hypot(
    Math.max(Math.abs(boxes[0]), Math.abs(boxes[3])),
    Math.max(Math.abs(boxes[1]), Math.abs(boxes[4])),
  );
}

/** One side of a mesh: a copy of a gear, or a bar. */
interface Side {
  name: string;
  zone: ToothZone;
  gear?: PlacedGear;
  place?: Place;
}

/** Every pair of copies in mesh, planet by planet. */
function matesOf({ train, parts, swept }: BuiltTrain): Mates[] {
  const mesh = (name: string) => swept.get(name) ?? parts.find((part) => part.name === name)!.mesh;
  return train.meshes
    .flatMap(({ between: [one, two] }) =>
      sidesOf(train, one).flatMap((a, i) => sidesOf(train, two).map((b, j) => ({ a, b, copy: i + j }))),
    )
    .sort((x, y) => x.copy - y.copy)
    .map(({ a, b }) => ({
      between: [a.name, b.name],
      meshes: [mesh(a.name), mesh(b.name)],
      zones: [a.zone, b.zone],
      cycle: `${a.gear?.part} ${b.gear?.part} ${cycleOf(a, b)}`,
    }));
}

function sidesOf(train: FittedTrain, part: string): Side[] {
  if (part === train.bar?.part) return [{ name: part, zone: barZone(train.bar) }];
  const gear = gearIn(train, part);
  return gear.places.map((place) => ({ name: place.name, zone: gearZone(gear, place), gear, place }));
}

/** Millionths of a pitch. */
const CYCLE = 1e6;

/** What stays the same of the phases of two mates while they turn, as a word; a bar has one mate alone. */
function cycleOf({ gear: one, place: a }: Side, { gear: two, place: b }: Side): string {
  if (!one || !two || !a || !b) return '';
  const { direction } = one.orbits ? a : b;
  const own = one.gear.teeth * (direction - a.rotation);
  const phase = two.gear.internal
    ? own - two.gear.teeth * (direction - b.rotation)
    : own + two.gear.teeth * (direction + Math.PI - b.rotation);
  const share = Math.round((CYCLE * phase) / (2 * Math.PI)) % CYCLE;
  return String((share + CYCLE) % CYCLE);
}

function gearZone({ gear, profile }: PlacedGear, { centre }: Place): ToothZone {
  return { kind: gear.internal ? 'beyond' : 'within', centre, radius: profile.tipRadius };
}

function barZone({ datum, profile }: PlacedBar): ToothZone {
  return { kind: 'below', y: datum + profile.tip };
}
