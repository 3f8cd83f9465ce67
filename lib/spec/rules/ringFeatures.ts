import { type Problem, problemOf } from '../../refusal.js';
import type { Mount, RingFeatures } from '../features/types.js';
import { ceilThousandth, floorThousandth, ROUNDING } from '../nearest.js';
import { featureRanges } from '../ranges.js';
import { atLeast, atMost, type Body, notWith } from './room.js';

/** What of a ring's features finds no room, mm. @param rim wall outside the root circle */
export function ringFeatureProblems(features: RingFeatures, rim: number, body: Body): Problem[] {
  const { grip, flange, bolts, mount } = features;
  const { part, root } = body;
  const path = (key: string) => `${part}.${key}`;
  const outer = root + rim;
  const found: Problem[] = [];
  if (grip) {
    found.push(...gripProblems(features, rim, body));
    const most = Math.floor((Math.PI * outer) / grip.depth);
    if (!found.length)
      found.push(
        ...countAtMost(path('grip.count'), grip.count, most, 'scallops at least twice as wide as deep'),
      );
  }
  if (found.length) return found;
  // One after the other: the screws of a mount size its flange, and bolts stand beside what is there.
  const waist = outer - (grip?.depth ?? 0);
  if (mount) found.push(...mountProblems(features, body, outer));
  if (found.length) return found;
  if (flange) found.push(...flangeProblems(features, body, outer, waist));
  if (bolts && mount) found.push(...notWith(path('bolts'), bolts, path('mount')));
  if (found.length) return found;
  return bolts ? boltProblems(features, body, outer, waist) : [];
}

/** Scallops leave a wall outside the root circle, wherever that is. */
export function gripProblems(
  { grip }: RingFeatures,
  rim: number,
  { part, wall }: Omit<Body, 'root'>,
): Problem[] {
  if (!grip) return [];
  const why = 'two lines of wall outside the root circle';
  return atMost(`${part}.grip.depth`, grip.depth, rim - wall, why, featureRanges.gripDepth[0]);
}

/** A flange is wider than the ring and the heads in it; it and the cone under an upper one leave some of the wall. */
function flangeProblems(
  { flange, mount }: RingFeatures,
  { part, wall, floor, faceWidth }: Body,
  outer: number,
  waist: number,
): Problem[] {
  const { diameter, thickness, at } = flange!;
  const path = (key: string) => `${part}.flange.${key}`;
  const least = mount ? mount.circle + widestOf(mount) + 2 * wall : 2 * (outer + wall);
  const narrow = atLeast(
    path('diameter'),
    diameter,
    least,
    mount ? 'two lines of wall around heads and nuts' : 'two lines wider than the ring',
  );
  if (narrow.length) return narrow;
  const left = faceWidth - wall - (at === 'top' ? diameter / 2 - waist : 0);
  if (left < LEAST_FLANGE) {
    const most = 2 * (waist + faceWidth - wall - LEAST_FLANGE);
    const wide = atMost(path('diameter'), diameter, most, 'the cone under it must fit the face width', least);
    if (wide.length) return wide;
  }
  const thick = atMost(
    path('thickness'),
    thickness,
    Math.max(left, LEAST_FLANGE),
    'the rest of the face width',
    LEAST_FLANGE,
  );
  if (thick.length || !mount) return thick;
  return atLeast(path('thickness'), thickness, headHeight(mount) + floor, 'the heads and four layers');
}

const LEAST_FLANGE = featureRanges.flangeThickness[0];

/** Height of a 90° head, mm. */
function headHeight({ headDiameter, diameter }: Mount): number {
  return (headDiameter - diameter) / 2;
}

/** What is widest about each screw: its head, or its nut across the corners, mm. */
function widestOf({ headDiameter, nutFlats }: Mount): number {
  return Math.max(headDiameter, (2 * nutFlats) / Math.sqrt(3));
}

/** Narrower spans are no room to offer a circle in, mm. */
const EASE = 0.01;

function boltProblems(
  { bolts, flange }: RingFeatures,
  { part, root, wall }: Body,
  outer: number,
  waist: number,
): Problem[] {
  const { circle, count, diameter } = bolts!;
  // Where the circle may be for holes of no width; a hole needs its own diameter more.
  const spans = [[2 * (root + wall), 2 * (waist - wall)]];
  if (flange?.at === 'bottom') spans.push([2 * (outer + wall), flange.diameter - 2 * wall]);
  const widest = Math.max(...spans.map(([from, to]) => Math.min(circle - from, to - circle)));
  if (widest >= diameter - ROUNDING) return spaced(`${part}.bolts.count`, count, circle, diameter + wall);
  const why = 'two lines of wall on both sides';
  const open = spans
    .map(([from, to]) => [from + diameter, to - diameter])
    .filter(([from, to]) => to - from > EASE);
  if (open.length === 0)
    return atMost(`${part}.bolts.diameter`, diameter, widest, why, featureRanges.screwHole[0]);
  const offers = open.map(([from, to]) => (circle < from ? ceilThousandth(from) : floorThousandth(to)));
  const nearest = offers.sort((a, b) => Math.abs(a - circle) - Math.abs(b - circle)).slice(0, 1);
  const where = open.map(([from, to]) => `${ceilThousandth(from)} to ${floorThousandth(to)}`).join(' or ');
  return [problemOf('no-room', `${part}.bolts.circle`, circle, `must be ${where} mm: ${why}`, nearest)];
}

function mountProblems(
  { mount, flange }: RingFeatures,
  { part, wall, floor, faceWidth }: Body,
  outer: number,
): Problem[] {
  const { hole, clearance, circle, diameter, headDiameter, screw, screws, clamp, nutDepth, nutFlats } =
    mount!;
  const path = (key: string) => `${part}.mount.${key}`;
  const own = [
    ...atLeast(path('headDiameter'), headDiameter, diameter + 0.1, 'a head is wider than its hole'),
    ...atLeast(path('nutFlats'), nutFlats, diameter + 0.1, 'a nut is wider than its hole'),
    ...atLeast(path('clamp'), clamp, nutDepth + floor, 'the nuts and four layers'),
    ...atLeast(path('hole'), hole, 2 * (outer + clearance), 'the ring and its clearance on both sides'),
  ];
  if (own.length) return own;
  if (headHeight(mount!) + floor > faceWidth - wall) {
    const rule = `finds no room: a flange for heads of ${screw} is thicker than the face width allows`;
    return [problemOf('no-room', `${part}.mount`, mount, rule, ['none'])];
  }
  const beside = 'a screw hole’s width of panel beside each hole';
  const near = atLeast(path('circle'), circle, hole + 3 * diameter, beside);
  if (near.length) return near;
  if (flange!.at === 'top') {
    const rule = 'must be bottom where a panel is to lie against it: its upper side is flat there';
    return [problemOf('excluded', `${part}.flange.at`, 'top', rule, ['bottom'])];
  }
  return spaced(path('screws'), screws, circle, widestOf(mount!) + wall);
}

/** Holes around a circle stand `apart` mm from middle to middle at least. */
function spaced(parameter: string, count: number, circle: number, apart: number): Problem[] {
  const most = Math.floor(Math.PI / Math.asin(Math.min(1, apart / circle)) + 1e-9);
  return countAtMost(parameter, count, most, 'walls between the holes');
}

function countAtMost(parameter: string, value: number, most: number, why: string): Problem[] {
  if (value <= most) return [];
  return [problemOf('no-room', parameter, value, `must be at most ${most}: ${why}`, [most])];
}
