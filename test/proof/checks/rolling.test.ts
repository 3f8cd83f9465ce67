import { describe, expect, it } from 'vitest';
import { rolling } from '../../../lib/proof/checks/rolling.js';
import { inspectSet } from '../../../lib/proof/proveSet.js';
import { outlinesOf } from '../../planetarySets.js';
import { referenceSet } from '../../sets.js';
import { ringPairOf } from '../../trains.js';

describe('rolling', () => {
  it('fails where tips in a ring of five teeth more come nearer than the gap, however coarse the meshes', () => {
    for (const tolerance of [0.01, 0.04]) {
      const { checks } = inspectSet(ringPairOf(22, 27, { faceWidth: 8, fit: { gap: 0.1 }, tolerance }));
      expect(checks.find(({ id }) => id === 'rolling')).toMatchObject({ holds: false, level: 'must' });
    }
  });

  it('gives nothing of the mesh tolerance away: two chords, what lies between phases, rounding', () => {
    const spec = { ...referenceSet({ tolerance: 0.1 }), fit: { gap: 0.25, gapShare: 0.5 } };
    const found = outlinesOf(spec);
    const at = (least: number) =>
      rolling({ ...found, rolling: found.rolling.map((mesh) => ({ ...mesh, least })) }).holds;
    expect(at(0.25 * 0.992)).toBe(true);
    expect(at(0.25 * 0.9919)).toBe(false);
  });
});
