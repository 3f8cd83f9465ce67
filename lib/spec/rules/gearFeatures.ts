import { type Problem, problemOf } from '../../refusal.js';
import { AXLE } from '../features/fasteners.js';
import type { GearFeatures, PlanetFeatures } from '../features/types.js';
import { featureRanges as sizes } from '../ranges.js';
import type { Bore } from '../types.js';
import { atLeast, atMost, type Body, notWith } from './room.js';

const corner = { hexagon: 2 / Math.sqrt(3), square: Math.SQRT2 };

/**
 * What of a gear's features finds no room: everything stands about the axis, inside the root circle, with two lines of
 * wall around and four layers of floor below. Lengths in mm.
 */
export function gearFeatureProblems(features: GearFeatures & { bore: Bore }, body: Body): Problem[] {
  const { bore, screw, nut, knob, crank } = features;
  const { part, root, wall, floor, faceWidth } = body;
  const path = (key: string) => `${part}.${key}`;
  const room = root - wall;
  const walled = 'two lines of wall inside the root circle';
  const bored = bore.shape !== 'none';
  const found: Problem[] = [];

  if (bored && screw) found.push(...notWith(path('screw'), screw, path('bore')));
  if (bored && nut) found.push(...notWith(path('nut'), nut, path('bore')));
  if (crank)
    for (const [key, other] of [
      ['bore', bored],
      ['screw', screw],
      ['nut', nut],
      ['knob', knob],
    ] as const)
      if (other) {
        found.push(...notWith(path('crank'), crank, path(key)));
        break;
      }
  if (nut && screw && nut.size !== screw.size) {
    const rule = `must be the size of ${path('screw')}, ${screw.size}`;
    found.push(problemOf('differs', path('nut.size'), nut.size, rule, [screw.size]));
  }
  if (nut && screw?.countersink === nut.at) {
    const rule = `must be the end face without the countersink of ${path('screw')}`;
    found.push(problemOf('excluded', path('nut.at'), nut.at, rule, [nut.at === 'top' ? 'bottom' : 'top']));
  }
  if (found.length) return found;

  if (screw) {
    const { diameter, countersink, headDiameter } = screw;
    found.push(...atMost(path('screw.diameter'), diameter, 2 * room, walled, sizes.screwHole[0]));
    if (countersink !== 'none' && !found.length) {
      const most = Math.min(2 * room, diameter + 2 * (faceWidth - floor));
      found.push(
        ...atMost(
          path('screw.headDiameter'),
          headDiameter,
          most,
          `${walled}, four layers of shaft`,
          Math.max(sizes.screwHead[0], diameter + 0.1),
        ),
        ...atLeast(path('screw.headDiameter'), headDiameter, diameter + 0.1, 'a head is wider than its hole'),
      );
    }
  }
  if (nut) {
    found.push(...atMost(path('nut.diameter'), nut.diameter, 2 * room, walled, sizes.screwHole[0]));
    found.push(
      ...atMost(
        path('nut.acrossFlats'),
        nut.acrossFlats,
        (2 * room) / corner.hexagon,
        walled,
        Math.max(sizes.nutFlats[0], nut.diameter + 0.1),
      ),
    );
    found.push(
      ...atLeast(
        path('nut.acrossFlats'),
        nut.acrossFlats,
        nut.diameter + 0.1,
        'a nut is wider than its hole',
      ),
    );
  }
  if (nut && !found.length) {
    const head = screw && screw.countersink !== 'none' ? (screw.headDiameter - screw.diameter) / 2 : 0;
    const cone = nut.at === 'bottom' ? (nut.acrossFlats * corner.hexagon - nut.diameter) / 2 : 0;
    const left = faceWidth - head - cone - floor;
    found.push(
      ...atMost(
        path('nut.depth'),
        nut.depth,
        left,
        'something must be left for the screw to hold',
        sizes.nutDepth[0],
      ),
    );
  }
  if (crank) {
    const most = (2 * room) / corner[crank.shape] - crank.clearance;
    found.push(...atMost(path('crank.acrossFlats'), crank.acrossFlats, most, walled, sizes.crankFlats[0]));
    found.push(
      ...atMost(
        path('crank.depth'),
        crank.depth,
        faceWidth - floor,
        'four layers of floor',
        sizes.crankDepth[0],
      ),
    );
    if (crank.handle !== undefined) {
      const least = (corner[crank.shape] * (crank.acrossFlats + crank.clearance)) / 2 + AXLE / 2 + wall;
      found.push(
        ...atLeast(path('crank.handle'), crank.handle, least, 'two lines of wall between socket and axle'),
      );
    }
  }
  if (knob && !found.length) {
    const reach = topReach(features);
    const least = reach > 0 ? (2 * (reach + wall)) / (1 - (knob.grips ? FLUTE_SHARE : 0)) : 0;
    if (least > 2 * room)
      return [
        problemOf(
          'no-room',
          path('knob'),
          knob,
          'finds no room: around the hole and two lines of wall it would reach over the teeth',
          ['none'],
        ),
      ];
    found.push(
      ...atMost(
        path('knob.diameter'),
        knob.diameter,
        2 * room,
        'it stands inside the root circle',
        sizes.knobDiameter[0],
      ),
      ...atLeast(path('knob.diameter'), knob.diameter, least, 'two lines of wall around the hole'),
    );
  }
  return found;
}

/** Hollows of a knob are this share of its radius deep. */
export const FLUTE_SHARE = 0.08;

/** Radius of what is open in the top face, mm. */
function topReach({ bore, screw, nut }: GearFeatures & { bore: Bore }): number {
  const boreReach =
    bore.shape === 'none'
      ? 0
      : bore.shape === 'hexagon' || bore.shape === 'square'
        ? (bore.acrossFlats / 2) * corner[bore.shape]
        : bore.diameter / 2;
  return Math.max(
    boreReach,
    screw ? (screw.countersink === 'top' ? screw.headDiameter : screw.diameter) / 2 : 0,
    nut ? (nut.at === 'top' ? nut.acrossFlats * corner.hexagon : nut.diameter) / 2 : 0,
  );
}

/** What of the planets' features finds no room. */
export function planetFeatureProblems({ hole, dimple, pocket }: PlanetFeatures, body: Body): Problem[] {
  const { part, root, wall, floor, faceWidth } = body;
  const path = (key: string) => `${part}.${key}`;
  const widest = 2 * (root - wall);
  const [least] = sizes.openingDiameter;
  const walled = 'two lines of wall inside the root circle';
  const found: Problem[] = [];
  if (dimple && hole) found.push(...notWith(path('dimple'), dimple, path('hole')));
  else if (dimple && pocket) found.push(...notWith(path('dimple'), dimple, path('pocket')));
  if (hole) {
    const [most, why] =
      pocket && pocket.diameter < widest
        ? [pocket.diameter - 2 * wall, 'two lines of shoulder under the pocket']
        : [widest - (pocket ? 2 * wall : 0), walled];
    found.push(...atMost(path('hole.diameter'), hole.diameter, most, why, least));
  }
  if (pocket) {
    found.push(...atMost(path('pocket.diameter'), pocket.diameter, widest, walled, least));
    found.push(
      ...atMost(
        path('pocket.depth'),
        pocket.depth,
        faceWidth - floor,
        'four layers of floor',
        sizes.pocketDepth[0],
      ),
    );
  }
  if (dimple) {
    found.push(...atMost(path('dimple.diameter'), dimple.diameter, widest, walled, least));
    const deepest = Math.min(Math.min(dimple.diameter, widest) / 2, faceWidth - floor);
    found.push(
      ...atMost(
        path('dimple.depth'),
        dimple.depth,
        deepest,
        'half the diameter, and four layers of floor',
        sizes.dimpleDepth[0],
      ),
    );
  }
  return found;
}
