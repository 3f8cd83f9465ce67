// Whatever stands in the lists of features is taken from the file, given its defaults, drawn, and seen on the mesh.
import { describe, expect, it } from 'vitest';
import { gearFeatures, planetFeatures, ringFeatures } from '../../lib/features/index.js';
import { drawnFeatures, readings } from '../../lib/features/through.js';
import { gearIn } from '../../lib/fit/train/train.js';
import { trainNumbers } from '../../lib/fit/train/trainNumbers.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { setOf } from '../sets.js';

const lists = { sun: gearFeatures, planets: planetFeatures, ring: ringFeatures };
const parts = { sun: 'sun', planets: 'planet', ring: 'ring' } as const;

/** In place of the example in the schema, which is for a larger part. */
const smaller: Record<string, object> = {
  text: { content: 'a', size: 2.5 },
  bolts: { circle: 80, count: 6, size: 'M3' },
};

const each = Object.entries(lists).flatMap(([group, list]) =>
  Object.entries(list).map(([key, { schema }]) => {
    const { examples = [] } = schema.meta() ?? {};
    return [group as keyof typeof lists, key, smaller[key] ?? (examples as object[])[0]] as const;
  }),
);

const bodies = { faceWidth: 12, helix: { form: 'spur' }, retention: 'none', tolerance: 0.05 };
const file = (group: string, more: object) =>
  setOf(15, 15, 45, 3, {
    ...bodies,
    sun: { teeth: 15 },
    planets: { teeth: 15, count: 3 },
    ring: { teeth: 45, rim: 8 },
    [group]: {
      ...{ sun: { teeth: 15 }, planets: { teeth: 15, count: 3 }, ring: { teeth: 45, rim: 8 } }[group],
      ...more,
    },
  });
const meshOf = (spec: ReturnType<typeof file>, part: string) =>
  buildSet(spec).find(({ name }) => name.startsWith(part))!.mesh.positions.length;
const plain = file('sun', {});

describe.each(each)('%s.%s', (group, key, example) => {
  const spec = file(group, { [key]: example });
  const asked = gearIn(trainNumbers(spec), parts[group]).features;
  const given: unknown = Reflect.get(asked, key);

  it('is in the file that is resolved, and in the train, with what the file says', () => {
    expect(spec[group]).toMatchObject({ [key]: example });
    expect(given).toEqual(Reflect.get(spec[group], key));
  });

  it('is drawn larger with everything else', () => {
    const drawn = Reflect.get(drawnFeatures(asked, { growth: 0, scale: 2 }, {}), key) as object;
    const sizes = Object.entries(given as object).filter(([, size]) => typeof size === 'number');
    const grown = sizes.filter(([name, size]) => Reflect.get(drawn, name) === 2 * size);
    expect(grown.length).toBeGreaterThan(0);
    // Counts are no sizes, and a nut's clearance is in its width already.
    const kept = sizes.filter(([name, size]) => Reflect.get(drawn, name) === size).map(([name]) => name);
    expect(kept.filter((name) => !/^(count|screws|grips)$/.test(name))).toEqual(
      key === 'nut' ? ['clearance'] : [],
    );
  });

  it('is on the mesh', () => {
    expect(meshOf(spec, parts[group])).not.toBe(meshOf(plain, parts[group]));
  });

  it('can be read with calipers where it has a width, each reading by a name of its own', () => {
    const read = readings(asked, 100).map(({ part, feature }) => `${part} ${feature}`);
    expect(new Set(read).size).toBe(read.length);
    expect(read.length > 0).toBe(!['grip', 'text'].includes(key));
  });
});

it('a part of another kind carries none of them: the file refuses the key', () => {
  for (const [group, key] of each)
    for (const [other, list] of Object.entries(lists))
      if (other !== group && !(key in list))
        expect(() => file(other, { [key]: 'none' }), `${other}.${key}`).toThrow(key);
});
