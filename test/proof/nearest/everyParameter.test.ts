// Every number of a file beyond its range, and every other parameter given as something else, alone: what is offered
// for it goes into the file and makes it work.
import { describe, expect, it } from 'vitest';
import { resolveTried } from '../../../lib/proof/nearest/workingOffers.js';
import { works } from '../../../lib/proof/nearest/works.js';
import { type Guide, guideAt, guideOf, knownPaths } from '../../../lib/spec/guide.js';
import type { Kind } from '../../../lib/spec/types.js';
import { type File, problemsOf, spinner, withValue } from '../../spec/table.js';

const common = { module: 1.5, faceWidth: 20 };
const files: Record<string, () => File> = {
  'a set': spinner,
  'a pair': () => ({ kind: 'pair', ...common, pinion: { teeth: 15 }, wheel: { teeth: 40 } }),
  'a pinion in a ring': () => ({
    kind: 'pair',
    ...common,
    pinion: { teeth: 15 },
    wheel: { internal: true, teeth: 40 },
  }),
  'a rack': () => ({ kind: 'rack', ...common, pinion: { teeth: 15 } }),
  'a gear': () => ({ kind: 'gear', ...common, gear: { teeth: 15 } }),
};
/** Given beside the module it is no number out of range but one too many. */
const besides = ['transverseModule', 'variants'];
/** Lips find no room in this set whatever is said of them: no value of theirs works. */
const hopeless = (path: string) => path.startsWith('lips');

/** Letters of the usual size have no room on a usual rim, whatever they say: theirs is wider. */
const roomFor = (path: string, file: File): File =>
  path.includes('ring.text') || (path.includes('wheel.text') && file.wheel?.internal)
    ? withValue(`${path.split('.')[0]}.rim`, 12, file)
    : file;

/** Nothing for a size of which the file does not say what it is of. */
function wrongValues(guide: Guide | undefined): unknown[] {
  if (!guide) return [];
  const { minimum, maximum } = guide;
  return minimum === undefined || maximum === undefined ? [3, 'x'] : [minimum - 1, 10 * maximum + 3];
}

describe('an offer for a single value works', () => {
  it.each(Object.entries(files))('in %s', (_, base) => {
    const paths = knownPaths(guideOf(base().kind as Kind)).filter(
      (path) => !besides.includes(path) && !hopeless(path),
    );
    const failing: string[] = [];
    let offers = 0;
    for (const path of paths)
      for (const value of wrongValues(guideAt(path.split('.'), base()))) {
        const given = () => withValue(path, value, roomFor(path, base()));
        const [problem, ...more] = problemsOf(given(), resolveTried);
        if (!problem || more.length) continue;
        const { parameter, nearest } = problem;
        offers++;
        const mended = withValue(parameter, nearest[0], given());
        if (problemsOf(mended, resolveTried).length || !works(resolveTried(mended)))
          failing.push(`${path} ${JSON.stringify(value)}: ${parameter} ${JSON.stringify(nearest)}`);
      }
    expect(failing).toEqual([]);
    expect(offers).toBeGreaterThan(100);
  });
});
