import { type Problem, problemOf, Refusal, refuseAll } from '../refusal.js';
import { closest } from '../spec/nearest.js';
import type { Additions } from './additions.js';
import { fromGeom3, type Geom3 } from './geom3.js';
import type { Mesh, Part } from './mesh.js';

/** One solid that a script adds. */
export interface Addition {
  operation: 'join' | 'cut';
  /** Name of a part, or `planets`. */
  to: string;
  solid: Mesh;
  /** `join.ring[0]` */
  parameter: string;
}

const OPERATIONS = ['join', 'cut'] as const;

/**
 * Every solid of a script as a closed mesh; the bridge mends what it can.
 * @throws Refusal with every entry that is wrong
 */
export function readAdditions(additions: Additions): Addition[] {
  const problems: Problem[] = [];
  const read: Addition[] = [];
  const wrong = (parameter: string, value: unknown, rule: string, nearest: readonly unknown[] = []) =>
    problems.push(
      problemOf(nearest.length ? 'unknown-key' : 'wrong-type', parameter, shown(value), rule, nearest),
    );
  const readSolid = (operation: 'join' | 'cut', to: string, geometry: unknown, parameter: string) => {
    if (!isGeom3(geometry)) return wrong(parameter, geometry, 'must be a geom3 of @jscad/modeling');
    try {
      read.push({ operation, to, parameter, solid: fromGeom3(geometry) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      for (const { parameter: at, ...rest } of error.problems)
        problems.push({ ...rest, parameter: at.replace('geom3', parameter) });
    }
  };
  const isRecord = (value: unknown): value is Record<string, unknown> =>
    typeof value === 'object' && value !== null && !Array.isArray(value);

  if (!isRecord(additions)) wrong('additions', additions, 'must be an object with join, cut or both');
  else
    for (const [operation, byPart] of Object.entries(additions)) {
      const known = OPERATIONS.find((one) => one === operation);
      if (!known) wrong(operation, byPart, 'is not known here', [closest(operation, OPERATIONS)]);
      else if (byPart === undefined) continue;
      else if (!isRecord(byPart) || isGeom3(byPart))
        wrong(operation, byPart, 'must be an object: solids by the names of parts');
      else
        for (const [to, solids] of Object.entries(byPart)) {
          const at = `${operation}.${to}`;
          if (!Array.isArray(solids)) readSolid(known, to, solids, at);
          else for (const [i, solid] of solids.entries()) readSolid(known, to, solid, `${at}[${i}]`);
        }
    }
  refuseAll(problems);
  return read;
}

/** @throws Refusal with every entry for a part that is not there, the names that are beside it */
export function refuseUnknownParts(
  additions: readonly Addition[],
  parts: readonly Part[],
  hasPlanets: boolean,
): void {
  const names = [...(hasPlanets ? ['planets'] : []), ...parts.map(({ name }) => name)];
  const problems = additions
    .filter(({ to }) => !names.includes(to))
    .map(({ operation, to }): Problem => {
      const first = closest(to, names);
      const nearest = [first, ...names.filter((name) => name !== first)];
      return problemOf('not-one-of', `${operation}.${to}`, to, 'is no part of this set', nearest);
    });
  refuseAll(problems);
}

/** Looks at every polygon, so that what passes can be read without an error of any other class. */
function isGeom3(value: unknown): value is Geom3 {
  const { polygons, transforms } = (value ?? {}) as Partial<Geom3>;
  return (
    Array.isArray(polygons) &&
    isNumbers(transforms, 16) &&
    polygons.every(
      (polygon) =>
        Array.isArray(polygon?.vertices) &&
        polygon.vertices.length >= 3 &&
        polygon.vertices.every((vertex: unknown) => isNumbers(vertex, 3)),
    )
  );
}

function isNumbers(value: unknown, count: number): boolean {
  return (
    (Array.isArray(value) || ArrayBuffer.isView(value)) &&
    (value as ArrayLike<unknown>).length === count &&
    Array.from(value as ArrayLike<unknown>).every((entry) => typeof entry === 'number')
  );
}

/** A whole solid is nothing to print in a message. */
function shown(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Array.isArray(value) ? 'a list' : 'an object';
}
