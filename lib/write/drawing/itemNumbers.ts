import { firstOfEachKind, kindOf } from '../../solid/partKinds.js';
import { boxOf } from './closest.js';
import type { CutPart } from './cutParts.js';
import { balloon } from './dimension.js';
import { type Placing, toPage } from './placing.js';
import type { Loop, PlanePoint } from './section.js';
import { squareFrom } from './simplified.js';
import type { PagePoint } from './svg.js';

/** Least distance of two numbers, and of numbers from the trace of a section, mm. */
const APART = 9;
/** How many places each way are tried for the dot on a part. */
const TRIES = 24;

/**
 * A number in a ring for every kind of part, in a column left of the view, each with a line to a dot on its part.
 * @param names of all parts, in the order in which kinds are numbered from 1
 * @param column page x of the middle of the rings
 * @param taken page y that stays free
 */
export function itemNumbers(
  names: readonly string[],
  cut: readonly CutPart[],
  placing: Placing,
  column: number,
  taken: number,
): string {
  const numbers = firstOfEachKind(names.map((name) => ({ name }))).map(({ part }) => kindOf(part.name));
  const dots = numbers.flatMap((kind, i) => {
    const faces = cut.filter(({ name }) => kindOf(name) === kind).map(({ loops }) => loops);
    if (!faces.length) return [];
    const dot = placeOn(
      faces.reduce((best, next) => (score(middleOf(next)) > score(middleOf(best)) ? next : best)),
    );
    return dot ? [{ number: String(i + 1), dot: toPage(dot, placing) }] : [];
  });
  const sorted = dots.toSorted((a, b) => a.dot[1] - b.dot[1]);
  let free = Number.NEGATIVE_INFINITY;
  return sorted
    .map(({ number, dot }) => {
      let y = Math.max(free, dot[1] - 4);
      if (Math.abs(y - taken) < APART) y = y < taken && free < taken - APART ? taken - APART : taken + APART;
      free = y + APART;
      return balloon(dot, [column, y] as PagePoint, number);
    })
    .join('\n');
}

function middleOf(loops: readonly Loop[]): PlanePoint {
  const [left, low, right, high] = boxOf(loops);
  return [(left + right) / 2, (low + high) / 2];
}

/** Upper left is best. */
function score(place: PlanePoint | null): number {
  return place ? place[1] - 0.8 * place[0] : Number.NEGATIVE_INFINITY;
}

/** A place on a cut face well away from its edges, of those the most to the upper left; null for no face. */
function placeOn(loops: readonly Loop[]): PlanePoint | null {
  const [left, low, right, high] = boxOf(loops);
  const sides = sidesOf(loops);
  const clear = new Float64Array((TRIES - 1) ** 2);
  const place = (i: number): PlanePoint => [
    left + ((1 + Math.floor(i / (TRIES - 1))) / TRIES) * (right - left),
    low + ((1 + (i % (TRIES - 1))) / TRIES) * (high - low),
  ];
  let most = 0;
  for (let i = 0; i < clear.length; i++) {
    const [x, y] = place(i);
    clear[i] = isInside(x, y, sides) ? distanceToSides(x, y, sides) : -1;
    most = Math.max(most, clear[i]);
  }
  let best: PlanePoint | null = null;
  for (let i = 0; i < clear.length; i++)
    if (clear[i] > 0.6 * most && score(place(i)) > score(best)) best = place(i);
  return best;
}

function distanceToSides(x: number, y: number, sides: Float64Array): number {
  let square = Number.POSITIVE_INFINITY;
  for (let k = 0; k < sides.length; k += 4)
    square = Math.min(square, squareFrom(sides[k], sides[k + 1], sides[k + 2], sides[k + 3], x, y));
  return Math.sqrt(square);
}

/** Both ends of every side of outlines, four numbers a side. */
function sidesOf(loops: readonly Loop[]): Float64Array {
  const sides: number[] = [];
  for (const loop of loops)
    for (let i = 0; i < loop.length; i++) {
      const from = loop[i];
      const to = loop[(i + 1) % loop.length];
      sides.push(from[0], from[1], to[0], to[1]);
    }
  return Float64Array.from(sides);
}

function isInside(x: number, y: number, sides: Float64Array): boolean {
  let odd = false;
  for (let k = 0; k < sides.length; k += 4) {
    const ay = sides[k + 1];
    const by = sides[k + 3];
    if (ay > y === by > y) continue;
    const ax = sides[k];
    if (x < ax + ((y - ay) / (by - ay)) * (sides[k + 2] - ax)) odd = !odd;
  }
  return odd;
}
