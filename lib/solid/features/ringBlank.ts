import { holeLevels } from '../../features/axisHole.js';
import { boltColumns } from '../../features/bolts.js';
import type { Drilled, FeatureContext } from '../../features/feature.js';
import { outerLevels } from '../../features/flange.js';
import { leftOf } from '../../features/grip.js';
import type { RingFeatures } from '../../features/index.js';
import { lettering, type TextRoom } from '../../features/letters/lettering.js';
import { drilledIn } from '../../features/through.js';
import { column } from '../../stack/column.js';
import type { Contour } from '../../stack/contour.js';
import { together } from '../../stack/stack.js';
import { type Blank, noFeature } from '../blank.js';

/**
 * A ring, its outer wall with scallops and flange, its bolt holes and text.
 * @param rimRadius outer radius of the ring, mm
 * @throws Refusal when text finds no room
 */
export function ringBlank(ring: RingFeatures, rimRadius: number, context: FeatureContext): Blank {
  const { flange, text } = ring;
  const { faceWidth, rootRadius, tolerance } = context;
  const outer = column(outerLevels(ring, rimRadius, faceWidth, tolerance), 'inside');
  const circles = drilledIn(ring);
  const drilled = drilling(circles, ring, rimRadius, context);
  const edge = flange?.at === 'top' ? flange.diameter / 2 : leftOf(rimRadius, ring);
  const letters = text
    ? lettering(text, faceWidth, besideBolts(circles, { inner: rootRadius, outer: edge }), context)
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
function besideBolts(drilled: readonly Drilled[], { inner, outer }: TextRoom): TextRoom {
  const bolts = drilled.find(({ circle }) => circle / 2 <= outer);
  if (!bolts) return { inner, outer };
  const { diameter = 0 } = bolts.shape;
  const within = { inner, outer: (bolts.circle - diameter) / 2 };
  const beyond = { inner: (bolts.circle + diameter) / 2, outer };
  return within.outer - within.inner > beyond.outer - beyond.inner ? within : beyond;
}

/** Holes on circles, and where they open. */
function drilling(
  drilled: readonly Drilled[],
  { flange }: RingFeatures,
  rimRadius: number,
  { faceWidth, tolerance, frame }: FeatureContext,
) {
  const opens = { bottom: [] as Contour[], top: [] as Contour[], flange: [] as Contour[] };
  const columns = drilled.flatMap(({ shape, circle, count }) => {
    const inFlange = circle / 2 > rimRadius;
    const levels = holeLevels(shape, inFlange ? flange!.thickness : faceWidth, tolerance);
    const holes = boltColumns(levels, circle, count, frame);
    opens.bottom.push(...holes.map(({ first }) => first));
    opens[inFlange ? 'flange' : 'top'].push(...holes.map(({ last }) => last));
    return holes;
  });
  return {
    ...opens,
    walls: columns.flatMap(({ walls }) => walls),
    faces: columns.flatMap(({ faces }) => faces),
  };
}
