import { type LeastDistance, leastDistance } from '../mesh/leastDistance.js';
import type { DistanceTree } from '../mesh/triangleTree.js';
import { follow } from './follow.js';
import { farApart, profileDistance } from './profileDistance.js';
import { type ProfileTree, profileTree } from './profileTree.js';
import { HAIR, type Mates, type MovingBody, type Scene } from './scene.js';
import { toothPhases } from './toothPhases.js';
import { apartOf, turnTogether } from './turning.js';

/** How a pair of bodies was measured. */
export type Measured =
  /** As they lie on the bed. */
  | 'printed'
  /** They turn together: once. */
  | 'together'
  /** Over every turn of each about its own axis. */
  | 'every turn'
  /** Followed through the period of their motion. */
  | 'followed'
  /** Toothed sides, at steps through a pitch. */
  | 'phases';

/** The least distance of two bodies through the motion. Lengths in mm. */
export interface MotionGap {
  between: [string, string];
  how: Measured;
  /** Null where it is more than was looked for. */
  distance: number | null;
  /** What they keep, and the least that is accepted. */
  least: number;
  limit: number;
  /** Where it is found. */
  point: [number, number, number];
  /** How far the first body has turned then, degrees; pitches where its mate slides. */
  turned: number | null;
  /** False where the motion could not be followed to its end. */
  whole: boolean;
}

/** What was found while a train turned. */
export interface MotionFindings {
  pairs: MotionGap[];
}

/** Distances are looked for up to this many gaps. */
const REACH = 3;
/** And of bodies that turn against each other up to this many. */
const CLOSE = 1.2;

/** Measures every pair of bodies of a scene through the whole motion. */
export function freeToTurn(scene: Scene): MotionFindings {
  const known = new Set<string>();
  const images = imagesOf();
  const pairs: MotionGap[] = [];
  scene.bodies.forEach((a, i) => {
    for (const b of scene.bodies.slice(i + 1)) {
      const key = alike(a, b);
      if (key && known.has(key)) continue;
      if (key) known.add(key);
      pairs.push(...pairGaps(scene, a, b, images));
    }
  });
  return { pairs: [...pairs, ...toothGaps(scene), ...looseGaps(scene)] };
}

/** A word for what a pair is a copy of; none where it depends on how the bodies stand against each other. */
function alike(a: MovingBody, b: MovingBody): string | null {
  if ('slide' in a.turning || 'slide' in b.turning) return null;
  if (a.turning.teeth === 0 || b.turning.teeth === 0 || turnTogether(a.turning, b.turning)) return null;
  const apart = apartOf(a.turning.axis, b.turning.axis);
  return `${a.copyOf ?? a.name}|${b.copyOf ?? b.name}|${apart.toFixed(6)}`;
}

type Images = (tree: DistanceTree, about: ProfileTree['about']) => ProfileTree;

/** Images are made once for each body and axis. */
function imagesOf(): Images {
  const made = new Map<DistanceTree, Map<string, ProfileTree>>();
  return (tree, about) => {
    const own = made.get(tree) ?? new Map<string, ProfileTree>();
    made.set(tree, own);
    const image = own.get(String(about)) ?? profileTree(tree, about);
    own.set(String(about), image);
    return image;
  };
}

function pairGaps(scene: Scene, a: MovingBody, b: MovingBody, images: Images): MotionGap[] {
  if (turnTogether(a.turning, b.turning)) return [stillGap(scene, a, b)];
  const mates = scene.mates.some(({ between }) => between.includes(a.name) && between.includes(b.name));
  if (!mates) {
    const inside = leastDistance(a.tree, b.tree, 0);
    return inside ? [metGap(scene, a, b, inside)] : [turningGap(scene, a, b, images)];
  }
  const found: MotionGap[] = [];
  if (a.outside) found.push(turningGap(scene, { ...a, tree: a.outside }, b, images));
  if (b.outside) found.push(turningGap(scene, a, { ...b, tree: b.outside }, images));
  return found;
}

function base(scene: Scene, a: string, b: string) {
  const least = scene.least(a, b);
  return { between: [a, b] as [string, string], least, limit: least - scene.allowed, whole: true };
}

function metGap(scene: Scene, a: MovingBody, b: MovingBody, { distance, pointA }: LeastDistance): MotionGap {
  return { ...base(scene, a.name, b.name), how: 'every turn', distance, point: pointA, turned: 0 };
}

/** Bodies that turn together: those that lie against each other must not cross, others keep their gap. */
function stillGap(scene: Scene, a: MovingBody, b: MovingBody): MotionGap {
  const own = base(scene, a.name, b.name);
  const seated = scene.seated.some((pair) => pair.includes(a.name) && pair.includes(b.name));
  const near = leastDistance(a.tree, b.tree, seated ? HAIR : REACH * scene.gap);
  const kept = seated ? { least: 0, limit: 0 } : {};
  const distance = near?.distance ?? null;
  // Seats are lifted by a hair: anything but crossing is well.
  const crossing = seated && distance === 0;
  return {
    ...own,
    ...kept,
    ...(crossing ? { limit: HAIR } : {}),
    how: 'together',
    distance: seated && !crossing ? null : distance,
    point: near?.pointA ?? [0, 0, 0],
    turned: null,
  };
}

/** Bodies that turn against each other: over all turns, and where that is too near, followed. */
function turningGap(scene: Scene, a: MovingBody, b: MovingBody, images: Images): MotionGap {
  if ('slide' in a.turning) return turningGap(scene, b, a, images);
  const own = base(scene, a.name, b.name);
  const [aboutA, aboutB, exact] = axesOf(a, b);
  const apart = aboutB === 'slide' ? 0 : apartOf(aboutA, aboutB);
  // More than what is asked is not measured, only that it is more; a little, so that the sheet can say by how much.
  const within = Math.max(own.least, scene.gap) * CLOSE;
  const far = farApart(a.tree, aboutA, b.tree, aboutB, within);
  const near = far ? null : profileDistance(images(a.tree, aboutA), images(b.tree, aboutB), apart, within);
  if (!near || near.distance >= own.limit || exact || a.anyTurn || b.anyTurn)
    return {
      ...own,
      how: 'every turn',
      distance: near?.distance ?? null,
      point: near?.pointB ?? [0, 0, 0],
      turned: near && turnTo(near.pointA, near.pointB, aboutA, aboutB),
    };
  const fine = scene.allowed / 2;
  const [mover, other] = smallerFirst(a, b);
  const { distance, point, pitches, whole } = follow(mover, other, own.limit + fine, fine, scene.travel);
  const turned = 'slide' in b.turning ? pitches : (pitches * 360) / Math.abs(a.turning.teeth);
  return { ...own, how: 'followed', distance, point, turned, whole };
}

/** The axes that two bodies are turned about, and whether they go through every turn of one against the other. */
function axesOf(a: MovingBody, b: MovingBody): [readonly [number, number], ProfileTree['about'], boolean] {
  if ('slide' in a.turning) throw new Error('the first of two bodies turns');
  if ('slide' in b.turning) return [a.turning.axis, 'slide', false];
  if (a.turning.teeth === 0) return [b.turning.axis, b.turning.axis, true];
  if (b.turning.teeth === 0) return [a.turning.axis, a.turning.axis, true];
  return [a.turning.axis, b.turning.axis, apartOf(a.turning.axis, b.turning.axis) === 0];
}

/** By how much the first body turns until its nearest point faces the other's, degrees from 0 to 360. */
function turnTo(
  p: readonly number[],
  q: readonly number[],
  axis: readonly [number, number],
  other: ProfileTree['about'],
): number {
  const from = Math.atan2(p[1] - axis[1], p[0] - axis[0]);
  const to =
    other === 'slide'
      ? Math.atan2(q[1] - axis[1], 0)
      : apartOf(axis, other) === 0
        ? Math.atan2(q[1] - axis[1], q[0] - axis[0])
        : Math.atan2(other[1] - axis[1], other[0] - axis[0]);
  const degrees = ((to - from) * 180) / Math.PI;
  return ((degrees % 360) + 360) % 360;
}

function smallerFirst(a: MovingBody, b: MovingBody): [MovingBody, MovingBody] {
  return a.tree.facets.length <= b.tree.facets.length ? [a, b] : [b, a];
}

function toothGaps(scene: Scene): MotionGap[] {
  const known = new Set<string>();
  return scene.mates.flatMap((mates) => {
    if (known.has(mates.cycle)) return [];
    known.add(mates.cycle);
    return [toothGap(scene, mates)];
  });
}

function toothGap(scene: Scene, mates: Mates): MotionGap {
  const [a, b] = mates.between.map((name) => scene.bodies.find((body) => body.name === name)!.turning);
  const { distance, point, phase } = toothPhases(mates, [a, b], scene);
  const turned = 'slide' in a ? phase : (phase * 360) / Math.abs(a.teeth);
  return { ...base(scene, ...mates.between), how: 'phases', distance, point, turned };
}

/** What lies beside the set on the bed keeps its gap to everything there. */
function looseGaps(scene: Scene): MotionGap[] {
  return scene.loose.flatMap(({ name, tree }, i) =>
    [...scene.printed]
      .filter(([other]) => scene.loose.findIndex((one) => one.name === other) < i && other !== name)
      .map(([other, mate]): MotionGap => {
        const near = leastDistance(tree, mate, REACH * scene.gap);
        return {
          ...base(scene, name, other),
          how: 'printed',
          distance: near?.distance ?? null,
          point: near?.pointA ?? [0, 0, 0],
          turned: null,
        };
      }),
  );
}
