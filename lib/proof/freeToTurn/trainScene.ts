import type { FittedTrain, PlacedBar, PlacedGear } from '../../fit/trains/fitTrain.js';
import { trainInUse } from '../../solid/buildTrain.js';
import type { Mesh, Part } from '../../solid/mesh.js';
import type { BodyFindings } from '../bodies.js';
import { onItsSeat } from './onItsSeat.js';
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

const HANDLE = 'crank-handle';

/**
 * A pair, a rack and pinion or one gear in motion, axes held: the pinion turns, its mate turns or slides with it from one
 * end of its bar to the other, a handle turns with its gear.
 */
export function trainScene(built: BuiltTrain): Scene {
  const { train, parts, bodies, allowed } = built;
  const { spec, gears, bar } = train;
  const slab: [number, number] = [0, spec.faceWidth];
  const handle = trainInUse(train);
  const { gap } = spec.fit;
  return {
    bodies: [
      ...parts.filter(({ name }) => name !== HANDLE).map((part) => bodyOf(built, part, slab)),
      ...(handle
        ? [
            {
              name: HANDLE,
              tree: onItsSeat(bodies.trees.get(HANDLE)!, handle.inUse, HAIR),
              turning: turningOf(train, handle.gear),
              anyTurn: true,
            },
          ]
        : []),
    ],
    mates: matesOf(built),
    seated: handle ? [[HANDLE, handle.gear]] : [],
    loose: handle ? [{ name: HANDLE, tree: bodies.trees.get(HANDLE)! }] : [],
    printed: bodies.trees,
    slab,
    herringbone: spec.helix.form === 'herringbone',
    pitch: Math.max(...gears.map(pitchOf)),
    travel: bar?.teeth ?? 0,
    gap,
    allowed,
    least: () => gap,
  };
}

/** Circumferential pitch where it is widest, mm. */
function pitchOf({ gear, profile }: PlacedGear): number {
  return (2 * Math.PI * Math.max(profile.tipRadius, profile.rootRadius)) / gear.teeth;
}

function turningOf({ gears, bar }: FittedTrain, name: string): Turning {
  if (name === 'bar') return { slide: bar!.profile.transversePitch };
  const { gear, centre } = gears.find(({ part }) => part === name)!;
  return { axis: centre, teeth: name === 'wheel' && !gear.internal ? -gear.teeth : gear.teeth };
}

function bodyOf(
  { train, bodies, swept }: BuiltTrain,
  { name, mesh }: Part,
  slab: [number, number],
): MovingBody {
  const before = swept.get(name);
  const toothed = bodies.bodies.find((body) => body.name === name)?.deviation?.toothed;
  return {
    name,
    tree: bodies.trees.get(name)!,
    outside: outsideOf(mesh, slab, before && toothed && { swept: before, toothed }),
    turning: turningOf(train, name),
  };
}

function matesOf({ train, parts, swept }: BuiltTrain): Mates[] {
  const { mesh, gears, bar } = train;
  if (!mesh) return [];
  const body = (name: string) => swept.get(name) ?? parts.find((part) => part.name === name)!.mesh;
  const [pinion, wheel] = gears;
  return [
    {
      between: [...mesh.between],
      meshes: [body(mesh.between[0]), body(mesh.between[1])],
      zones: [gearZone(pinion), bar ? barZone(bar) : gearZone(wheel)],
      cycle: 'mesh',
    },
  ];
}

function gearZone({ gear, profile, centre }: PlacedGear): ToothZone {
  return { kind: gear.internal ? 'beyond' : 'within', centre, radius: profile.tipRadius };
}

function barZone({ datum, profile }: PlacedBar): ToothZone {
  return { kind: 'below', y: datum + profile.tip };
}
