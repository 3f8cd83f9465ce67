import type { RingFeatures } from '../../spec/features/types.js';
import { type Blank, noFeature } from '../blank.js';
import { column, type Level } from '../stack/column.js';
import { type Contour, chordsOf, circlePoints, type Point } from '../stack/contour.js';
import { together } from '../stack/stack.js';
import { type HoleShape, holeLevels } from './axisHole.js';
import { boltColumns } from './bolts.js';
import type { FeatureContext } from './context.js';
import { lettering, type TextRoom } from './lettering.js';
import { wavyOutline } from './wavyOutline.js';

/**
 * A ring, its outer wall with scallops and flange, its bolt holes and text.
 * @param rimRadius outer radius of the ring, mm
 * @throws Refusal when text finds no room
 */
export function ringBlank(ring: RingFeatures, rimRadius: number, context: FeatureContext): Blank {
  const { flange, text } = ring;
  const { faceWidth, rootRadius, tolerance } = context;
  const outer = column(wallLevels(ring, rimRadius, faceWidth, tolerance), 'inside');
  const drilled = drilling(ring, rimRadius, context);
  const waist = rimRadius - (ring.grip?.depth ?? 0);
  const edge = flange?.at === 'top' ? flange.diameter / 2 : waist;
  const letters = text
    ? lettering(text, faceWidth, besideBolts(ring, { inner: rootRadius, outer: edge }), context)
    : noFeature;
  // The flat upper side of a flange below is the one shoulder of the outer wall.
  const faces = outer.faces.map((face) => ({ ...face, holes: [...face.holes, ...drilled.flange] }));
  const holes = { bottom: drilled.bottom, top: drilled.top };
  return {
    rim: { bottom: outer.first, top: outer.last },
    feature: together([
      { holes: {}, walls: outer.walls, faces },
      { holes, walls: drilled.walls, faces: drilled.faces },
      letters,
    ]),
  };
}

/** Where bolts come through the same face, the wider of the two bands beside them is left for text. */
function besideBolts({ bolts }: RingFeatures, { inner, outer }: TextRoom): TextRoom {
  if (!bolts || bolts.circle / 2 > outer) return { inner, outer };
  const within = { inner, outer: (bolts.circle - bolts.diameter) / 2 };
  const beyond = { inner: (bolts.circle + bolts.diameter) / 2, outer };
  return within.outer - within.inner > beyond.outer - beyond.inner ? within : beyond;
}

function wallLevels(
  { grip, flange }: RingFeatures,
  rimRadius: number,
  top: number,
  tolerance: number,
): Level[] {
  const rim: readonly Point[] = grip
    ? wavyOutline(rimRadius, grip.count, grip.depth, tolerance)
    : circlePoints(rimRadius, tolerance);
  if (!flange)
    return [
      { z: 0, outline: rim },
      { z: top, outline: rim },
    ];
  // Wall to wall with equally many points, so that the cone under a flange leans evenly.
  const count = Math.max(chordsOf(flange.diameter / 2, tolerance), rim.length);
  const edge = circlePoints(flange.diameter / 2, tolerance, [0, 0], grip ? rim.length : count);
  const body = grip ? rim : circlePoints(rimRadius, tolerance, [0, 0], count);
  if (flange.at === 'bottom')
    return [
      { z: 0, outline: edge },
      { z: flange.thickness, outline: edge },
      { z: flange.thickness, outline: body },
      { z: top, outline: body },
    ];
  const cone = flange.diameter / 2 - (rimRadius - (grip?.depth ?? 0));
  return [
    { z: 0, outline: body },
    { z: top - flange.thickness - cone, outline: body },
    { z: top - flange.thickness, outline: edge },
    { z: top, outline: edge },
  ];
}

/** Holes of bolts and of a mount's screws, and where they open. */
function drilling(
  { bolts, mount, flange }: RingFeatures,
  rimRadius: number,
  { faceWidth, tolerance, frame }: FeatureContext,
) {
  const opens = { bottom: [] as Contour[], top: [] as Contour[], flange: [] as Contour[] };
  const through = (shape: HoleShape, circle: number, count: number) => {
    const inFlange = circle / 2 > rimRadius;
    const levels = holeLevels(shape, 0, inFlange ? flange!.thickness : faceWidth, tolerance);
    const columns = boltColumns(levels, circle, count, frame);
    opens.bottom.push(...columns.map(({ first }) => first));
    opens[inFlange ? 'flange' : 'top'].push(...columns.map(({ last }) => last));
    return columns;
  };
  const columns = [
    ...(bolts ? through({ diameter: bolts.diameter }, bolts.circle, bolts.count) : []),
    ...(mount
      ? through(
          { diameter: mount.diameter, bottom: { headDiameter: mount.headDiameter } },
          mount.circle,
          mount.screws,
        )
      : []),
  ];
  return {
    ...opens,
    walls: columns.flatMap(({ walls }) => walls),
    faces: columns.flatMap(({ faces }) => faces),
  };
}
