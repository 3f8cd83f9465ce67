import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeProblem, Refusal } from '../../lib/refusal.js';
import { knownPaths } from '../../lib/spec/guide.js';
import { readSpec } from '../../lib/spec/readSpec.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { evenly } from '../evenly.js';
import { type File, problemsOf, spinner, withValue } from './table.js';

const paths = knownPaths().filter((path) => !path.startsWith('variants') && !path.startsWith('sun.bore.'));
const anything = fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true });
const value = fc.oneof(
  fc.double(),
  fc.integer(),
  fc.string(),
  fc.constantFrom('spur', 'helical', 'left', 'none', 'D', 0, -1, 1e9, '12', null, true),
  fc.record({ shape: fc.constantFrom('round', 'hexagon', 'D', 'oval'), diameter: fc.double() }),
  anything,
);
const change = fc.tuple(fc.oneof(fc.constantFrom(...paths), fc.stringMatching(/^[a-zA-Z]{1,12}$/)), value);

const changed = (changes: [string, unknown][]) =>
  changes.reduce((file, [path, to]) => {
    try {
      return withValue(path, structuredClone(to), file);
    } catch {
      return file; // An earlier change put a plain value where this one looks for a group.
    }
  }, spinner());

describe('whatever comes in', () => {
  it('objects: resolves or throws a Refusal whose every problem reads on one line', () => {
    fc.assert(
      fc.property(
        fc.oneof(anything, fc.array(change, { minLength: 1, maxLength: 4 }).map(changed)),
        (object) => {
          for (const problem of problemsOf(object)) {
            const line = describeProblem(problem);
            expect(line).not.toMatch(/[\p{Cc}\u2028]/u);
            expect(line.length).toBeLessThan(1000);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('text: reads or throws a Refusal', () => {
    const line = fc.oneof(
      fc.string(),
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom(
        'module: 1',
        '- ',
        '? ',
        '&a ',
        '*a',
        '!!set',
        '{',
        '[',
        '"',
        "'",
        '|',
        '>',
        '%YAML 1.1',
        '---',
        '<<: *a',
      ),
      fc.json(),
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), fc.constantFrom('\n', ' ', ': '), (lines, joint) => {
        problemsOf(lines.join(joint), readSpec);
      }),
      { numRuns: 2000 },
    );
  });

  it('bytes read as text: refused or read', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        problemsOf(new TextDecoder().decode(bytes), readSpec);
      }),
    );
  });
});

/** Whether `path` can be set: mappings, or nothing yet, all the way to it. */
const isFree = (path: string, file: File) => {
  let at: unknown = file;
  for (const key of path.split('.').slice(0, -1)) {
    at = (at as File)[key];
    if (at === undefined) return true;
    if (typeof at !== 'object' || at === null || Array.isArray(at)) return false;
  }
  return true;
};

describe('offers', () => {
  it('each one, put in place of the refused value, removes that problem', () => {
    let tried = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        for (const problem of problemsOf(changed(changes))) {
          for (const offer of problem.nearest) {
            if (problem.rule.startsWith('unknown key (')) continue; // Its dots are no path.
            const unknown = problem.rule === 'unknown key';
            const file = changed(changes);
            if (unknown) {
              withValue(problem.parameter, undefined, file);
              if (!isFree(String(offer), file)) continue; // A plain value stands where the key would go.
              withValue(String(offer), structuredClone(problem.value), file);
            } else withValue(problem.parameter, structuredClone(offer), file);
            tried++;
            const left = problemsOf(file).map(({ parameter }) => parameter);
            expect(left).not.toContain(problem.parameter);
          }
        }
      }),
      { numRuns: 3000 },
    );
    expect(tried).toBeGreaterThan(1000);
  });
});

/** The file resolved; one with more triangles than a set may have as it is offered. */
function resolvedWithin(file: Record<string, unknown>) {
  try {
    return resolveSpec(file);
  } catch (error) {
    if (!(error instanceof Refusal) || !error.rule.includes('million triangles')) throw error;
    const offers = error.problems.map(({ parameter, nearest }) => [parameter, nearest[0]]);
    return resolveSpec({ ...file, ...Object.fromEntries(offers) });
  }
}

describe('resolving again', () => {
  it('changes nothing', () => {
    const file = fc.record(
      {
        module: evenly(0.6, 3),
        pressureAngle: evenly(14, 26),
        rack: fc.constantFrom('A', 'B', 'C', 'D'),
        helix: fc.oneof(
          fc.constant({ form: 'spur' }),
          fc.record({ form: fc.constantFrom('helical', 'herringbone'), angle: evenly(1, 45) }),
        ),
        faceWidth: evenly(1, 300),
        sun: fc.record({ teeth: fc.integer({ min: 8, max: 60 }), profileShift: evenly(-0.5, 1) }),
        planets: fc.record({
          teeth: fc.integer({ min: 8, max: 60 }),
          count: fc.integer({ min: 2, max: 12 }),
          profileShift: evenly(-0.5, 1),
        }),
        printer: fc.record({ nozzle: evenly(0.1, 2) }),
        bevel: fc.record({ angle: evenly(30, 60) }),
      },
      { requiredKeys: ['module', 'sun', 'planets', 'faceWidth'] },
    );
    fc.assert(
      fc.property(file, fc.boolean(), (part, transverse) => {
        const { module, ...rest } = part;
        const given = transverse ? { transverseModule: module } : { module };
        const once = resolvedWithin({ kind: 'planetary', tolerance: 0.05, ...rest, ...given });
        expect(resolveSpec(once)).toEqual(once);
        expect(resolveSpec(JSON.parse(JSON.stringify(once)))).toEqual(once);
      }),
      { numRuns: 500 },
    );
  });
});
