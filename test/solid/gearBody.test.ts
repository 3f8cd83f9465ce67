import { describe, expect, it } from 'vitest';
import { edgeDefects } from '../../lib/proof/mesh/edges.js';
import { meshVolume } from '../../lib/proof/mesh/volume.js';
import { buildSet } from '../../lib/solid/buildSet.js';
import { gearBody } from '../../lib/solid/gearBody.js';
import { resolveSpec } from '../../lib/spec/resolveSpec.js';
import { reachOf } from '../../lib/stack/contour.js';
import { gearOutline } from '../../lib/tooth/outline.js';
import { fitted, sweptGears } from '../planetarySets.js';
import { setOf } from '../sets.js';

/** Area of a closed polyline by the shoelace formula. */
function area(points: Float64Array): number {
  let twice = 0;
  for (let i = 0; i < points.length; i += 2) {
    const j = (i + 2) % points.length;
    twice += points[i] * points[j + 1] - points[j] * points[i + 1];
  }
  return twice / 2;
}

describe('a swept gear', () => {
  // A twist keeps the area of every section (Cavalieri), so volume must be area × face width, whatever the helix,
  // and the same for both hands. Walls split along one diagonal whatever the hand lose or gain volume.
  it.each([
    ['spur', 0],
    ['helical', 30],
    ['helical', 45],
    ['herringbone', 15],
    ['herringbone', 30],
  ])('%s at %d° has the volume of its section times its face width', (form, angle) => {
    for (const hand of ['right', 'left']) {
      const spec = setOf(15, 15, 45, 5, { helix: { form, angle, hand }, bevel: { size: 0 } });
      for (const { first, profile, sweep, wall } of sweptGears(fitted(spec))) {
        const rim = 'rim' in wall && wall.rim ? reachOf(wall.rim.bottom.points) : 0;
        const outline = area(gearOutline(profile, 1e-5).points);
        const section = rim ? Math.PI * rim ** 2 - outline : outline;
        const body = gearBody(profile, sweep, wall, spec.tolerance);
        // A surface that is off by at most t changes the volume by at most t × its area; half of that on average.
        const perimeter = profile.gear.teeth * 3 * 2.25 * profile.gear.module;
        const slack = 0.5 * spec.tolerance * (perimeter + 2 * Math.PI * rim) * spec.faceWidth;
        expect(Math.abs(meshVolume(body) - section * spec.faceWidth), `${first} ${hand}`).toBeLessThan(slack);
      }
    }
  });

  it('is closed, of genus 0, or 1 with a bore or as a ring', () => {
    const spec = setOf(15, 15, 45, 5, {
      sun: { teeth: 15, bore: { shape: 'D', diameter: 8, acrossFlat: 7 } },
    });
    const [sun, planet, ...rest] = buildSet(spec).map(({ mesh }) => edgeDefects(mesh));
    expect(sun).toMatchObject({
      watertight: true,
      shells: 1,
      genus: 1,
      duplicateVertices: 0,
      unusedVertices: 0,
    });
    expect(planet).toMatchObject({
      watertight: true,
      shells: 1,
      genus: 0,
      duplicateVertices: 0,
      unusedVertices: 0,
    });
    expect(rest.at(-1)).toMatchObject({ watertight: true, shells: 1, genus: 1 });
  });

  it('of the left hand is the mirror image of the right one, triangles included', () => {
    const body = (hand: string) => {
      const spec = setOf(15, 15, 45, 5, { helix: { form: 'helical', angle: 25, hand } });
      const { profile, sweep, wall } = sweptGears(fitted(spec))[0];
      return gearBody(profile, sweep, wall, spec.tolerance);
    };
    const right = body('right');
    const left = body('left');
    expect(left.positions.length).toBe(right.positions.length);
    for (let i = 0; i < right.positions.length; i++)
      expect(left.positions[i]).toBe(i % 3 === 1 ? -right.positions[i] : right.positions[i]);
    for (let i = 0; i < right.triangles.length; i += 3)
      expect([...left.triangles.subarray(i, i + 3)]).toEqual([
        right.triangles[i],
        right.triangles[i + 2],
        right.triangles[i + 1],
      ]);
  });

  it('turns against the clock going up when it is right-handed', () => {
    const spec = setOf(15, 15, 45, 5, {
      helix: { form: 'helical', angle: 20, hand: 'right' },
      bevel: { size: 0 },
    });
    const { profile, sweep, wall } = sweptGears(fitted(spec))[0];
    const { positions } = gearBody(profile, sweep, wall, 0.05);
    // Lead π d / tan β (ISO 21771): over the face width the section turns by 2 π b / lead.
    const turn = (2 * spec.faceWidth * Math.tan((20 * Math.PI) / 180)) / (profile.sizes.referenceRadius * 2);
    const angles = (z: number) => {
      const found: number[] = [];
      for (let i = 0; i < positions.length; i += 3)
        if (positions[i + 2] === z && Math.hypot(positions[i], positions[i + 1]) > profile.tipRadius - 1e-9)
          found.push(Math.atan2(positions[i + 1], positions[i]));
      return found;
    };
    for (const angle of angles(0)) {
      const wanted = angle + turn;
      const nearest = Math.min(
        ...angles(20).map((a) => Math.abs(Math.atan2(Math.sin(a - wanted), Math.cos(a - wanted)))),
      );
      expect(nearest).toBeLessThan(1e-9);
    }
  });

  it('needs about as many more triangles as the tolerance is finer, steep helices with deep bevels too', () => {
    const trianglesAt = (tolerance: number) => {
      const [gear] = buildSet(
        resolveSpec({
          kind: 'gear',
          module: 1.5,
          faceWidth: 6,
          tolerance,
          helix: { angle: 45 },
          bevel: { size: 1.75 },
          gear: { teeth: 9 },
        }),
      );
      return gear.mesh.triangles.length / 3;
    };
    // Chords stay within a tolerance by the square of their length: half of it, √2 as many along each direction.
    const counts = [0.016, 0.008, 0.004, 0.002].map(trianglesAt);
    for (let i = 1; i < counts.length; i++) {
      expect(counts[i] / counts[i - 1]).toBeGreaterThan(1.2);
      expect(counts[i] / counts[i - 1]).toBeLessThan(2.2);
    }
  });

  it('comes out the same, byte for byte, every time', () => {
    const [once, again] = [buildSet(setOf(18, 18, 54, 4)), buildSet(setOf(18, 18, 54, 4))];
    expect(again).toEqual(once);
  });
});
