import { describe, expect, it } from 'vitest';
import { captured } from '../../../lib/proof/checks/captured.js';
import { tilt } from '../../../lib/proof/checks/tilt.js';
import type { PlayRecord } from '../../../lib/proof/motion/playRecord.js';
import { inspectSet } from '../../../lib/proof/proveSet.js';
import { setOf } from '../../sets.js';

const spec = setOf(15, 15, 45, 3, { faceWidth: 8, tolerance: 0.03 });
const play = () => structuredClone(inspectSet(spec).play!);
const sound = play();
const without = (change: (record: PlayRecord) => void) => {
  const record = structuredClone(sound);
  change(record);
  return record;
};

describe('what meshes do not bear out', () => {
  it('is counted: a lean that meets too early or nowhere, or was never made', () => {
    expect(tilt(sound, 90)).toMatchObject({ holds: true });
    for (const change of [{ clear: false }, { meets: false }]) {
      const record = without(({ confirmed }) =>
        Object.assign(confirmed.find(({ motion }) => motion === 'planet tilted')!, change),
      );
      expect(tilt(record, 90)).toMatchObject({
        holds: false,
        says: expect.stringMatching(/the meshes do not bear it out/),
      });
      // Play along the axis is borne out all the same.
      expect(captured(record, 90).holds).toBe(true);
    }
    const never = without((record) => {
      record.confirmed = record.confirmed.filter(({ motion }) => motion !== 'planet tilted');
    });
    expect(tilt(never, 90).holds).toBe(false);
  });

  it.each(['planet up', 'planet down', 'sun up', 'sun down'])('is counted of the %s', (name) => {
    expect(captured(sound, 90).holds).toBe(true);
    const early = without(({ confirmed }) => {
      confirmed.find(({ motion }) => motion === name)!.clear = false;
    });
    expect(captured(early, 90)).toMatchObject({ holds: false, says: expect.stringContaining(name) });
    const never = without((record) => {
      record.confirmed = record.confirmed.filter(({ motion }) => motion !== name);
    });
    expect(captured(never, 90)).toMatchObject({
      holds: false,
      says: expect.stringContaining(`${name} was not tried`),
    });
  });

  it('is counted of ways out that are open, or were not tried', () => {
    const open = without(({ wayOut }) => {
      wayOut[0].blocked = false;
    });
    expect(captured(open, 90).holds).toBe(false);
    const none = without((record) => {
      record.wayOut = [];
    });
    expect(captured(none, 90)).toMatchObject({ holds: false, says: expect.stringMatching(/was not tried/) });
  });

  // A leaning spur gear shows an outline longer by 1 / cos: without that the first of these leant by 9.0° on paper, and its
  // meshes met at less than 8.1°.
  it.each([
    [22, 22, 66, 4, { module: 1.25, faceWidth: 8, helix: { form: 'spur' }, fit: { gap: 0.3 } }],
    [19, 11, 41, 6, { module: 1, faceWidth: 5, helix: { angle: 18 }, fit: { gap: 0.4 } }],
  ])('is nothing of how far planets of %d/%d/%d × %d lean', (sun, planet, ring, count, more) => {
    const { confirmed, planet: own } = inspectSet(
      setOf(sun, planet, ring, count, { ...more, tolerance: 0.03 }),
    ).play!;
    expect(own.tilt.degrees).toBeGreaterThan(6);
    expect(confirmed.filter(({ clear, meets }) => !(clear && meets))).toEqual([]);
  });
});
