import { describe, expect, it } from 'vitest';
import { captured } from '../../../lib/proof/checks/captured.js';
import { tilt } from '../../../lib/proof/checks/tilt.js';
import { triangleTree } from '../../../lib/proof/mesh/triangleTree.js';
import { looseSetOf } from '../../../lib/proof/motion/looseSetOf.js';
import { type PlayRecord, playRecord } from '../../../lib/proof/motion/playRecord.js';
import { buildTrain } from '../../../lib/solid/buildTrain.js';
import type { PlanetarySpec } from '../../../lib/spec/types.js';
import { fitted } from '../../planetarySets.js';
import { referenceSet, setOf } from '../../sets.js';

function playOf(spec: PlanetarySpec): PlayRecord {
  const train = fitted(spec);
  const trees = new Map(buildTrain(train).map(({ name, mesh }) => [name, triangleTree(mesh)]));
  return playRecord(spec, { set: looseSetOf(train), trees });
}

describe('the reference set', () => {
  const play = playOf(referenceSet());

  it('turns its ring as far as the formula says, found by turning outlines', () => {
    const { byFormula, bySimulation } = play.ringRotation;
    expect(bySimulation.clockwise / byFormula).toBeCloseTo(1, 2);
    expect(bySimulation.counterClockwise / byFormula).toBeCloseTo(1, 2);
  });

  it('has axial play of gap / sin β_b between held mates, more with everything loose', () => {
    // β_b 28.02432° at β 30°: published helical example, EMGT 6.10 (from memory, recomputed).
    const axial = 0.25 / Math.sin((28.02432 * Math.PI) / 180);
    for (const part of [play.planet.axial, play.sun.axial])
      for (const way of [part.up!, part.down!]) expect(Math.abs(way / axial - 1)).toBeLessThan(0.02);
    expect(play.together.planetAxial.up!).toBeGreaterThan(axial);
    expect(play.together.sunAxial.up!).toBeGreaterThan(play.together.planetAxial.up!);
  });

  it('is borne out by the meshes', () => {
    expect(play.confirmed.map(({ motion }) => motion)).toEqual([
      'planet up',
      'planet down',
      'planet tilted',
      'sun up',
      'sun down',
    ]);
    expect(play.confirmed.filter(({ clear, meets }) => !clear || !meets)).toEqual([]);
    expect(play.wayOut).toHaveLength(4);
    expect(play.wayOut.filter(({ blocked }) => !blocked)).toEqual([]);
  });

  it('passes the checks at their limits and fails them below', () => {
    expect(play.heldBy).toEqual(['herringbone teeth']);
    expect(captured(play, 5)).toMatchObject({ id: 'captured', holds: true, level: 'should' });
    expect(captured(play, play.together.sunAxial.up! - 0.01).holds).toBe(false);
    expect(tilt(play, 4.3)).toMatchObject({ id: 'tilt', holds: true, level: 'should' });
    expect(tilt(play, play.planet.tilt.degrees! - 0.01).holds).toBe(false);
  });

  it('does not hold what its meshes do not bear out', () => {
    const [first, ...others] = play.wayOut;
    expect(captured({ ...play, wayOut: [{ ...first, blocked: false }, ...others] }, 5).holds).toBe(false);
    const confirmed = play.confirmed.map((one) => ({ ...one, meets: false }));
    expect(captured({ ...play, confirmed }, 5).holds).toBe(false);
    expect(tilt({ ...play, planet: { ...play.planet, clearsWhenTilted: false } }, 4.3).holds).toBe(false);
  });
});

describe.each(['spur', 'helical'])('%s teeth', (form) => {
  const play = playOf(referenceSet({ helix: { form } }));

  it('hold nothing along the axis', () => {
    expect(play.together).toEqual({
      planetAxial: { up: null, down: null },
      sunAxial: { up: null, down: null },
    });
    expect(play.heldBy).toEqual([]);
    expect(captured(play, 1000)).toMatchObject({ holds: false, value: null });
  });

  it('still keep planets from tipping over', () => {
    expect(play.planet.tilt.degrees).toBeGreaterThan(1);
    expect(play.planet.tilt.degrees).toBeLessThan(5);
  });
});

describe('binding', () => {
  it('is found where a planet that tilts meets the one beside it', () => {
    // Tip circles pass at 2 (m_t (z_sun + z_planet)/2) sin(π/N) − d_a = 0.08 mm (neighbour condition of handbooks);
    // the ends of a planet that leans move sideways by more.
    const play = playOf(setOf(24, 12, 48, 8, { fit: { gap: 0.25 } }));
    expect(play.planet.tilt.overFaceWidth).toBeGreaterThan(0.4);
    expect(play.planet.clearsWhenTilted).toBe(false);
    expect(tilt(play, 90).holds).toBe(false);
  });
});
