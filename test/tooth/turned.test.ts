import { describe, expect, it } from 'vitest';
import { toothProfile } from '../../lib/tooth/profile.js';
import { sampleSegment } from '../../lib/tooth/sample.js';
import { pointOn, turned } from '../../lib/tooth/segments.js';
import { gear, ring } from './gears.js';

const profiles = [
  toothProfile(gear(9)),
  toothProfile(gear(20, { module: 2 })),
  toothProfile(ring(45), { tipRadius: 22 }),
];

describe('a curve of a tooth', () => {
  it('turned about the axis is the curve with every point turned', () => {
    const kinds = new Set<string>();
    for (const { segments } of profiles)
      for (const segment of segments)
        for (const angle of [-0.7, 0.1, 2]) {
          kinds.add(segment.kind);
          const image = turned(segment, angle);
          for (const share of [0, 0.3, 1]) {
            const [x, y] = pointOn(segment, segment.from + share * (segment.to - segment.from));
            const [u, v] = pointOn(image, image.from + share * (image.to - image.from));
            expect(u).toBeCloseTo(x * Math.cos(angle) - y * Math.sin(angle), 9);
            expect(v).toBeCloseTo(x * Math.sin(angle) + y * Math.cos(angle), 9);
          }
        }
    expect([...kinds].sort()).toEqual(['arc', 'involute', 'round', 'trochoid']);
  });

  it('is left by no chord farther than asked, also where it bends sharply next to a straight run', () => {
    for (const fillet of [0.02, 0.1, 0.38])
      for (const teeth of [7, 12, 40]) {
        const rack = { addendum: 1, dedendum: 1.25, fillet };
        const { segments } = toothProfile(gear(teeth, { rack, profileShift: teeth < 10 ? 0.3 : 0 }));
        for (const segment of segments.filter(({ kind }) => kind === 'trochoid'))
          for (const sagitta of [0.001, 0.01]) {
            const at = sampleSegment(segment, sagitta);
            for (let i = 1; i < at.length; i++) {
              const [ax, ay] = pointOn(segment, at[i - 1]);
              const [bx, by] = pointOn(segment, at[i]);
              for (let k = 1; k < 20; k++) {
                const [x, y] = pointOn(segment, at[i - 1] + ((at[i] - at[i - 1]) * k) / 20);
                const off =
                  Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
                expect(off / sagitta, `${teeth} ${fillet} ${sagitta}`).toBeLessThan(1.02);
              }
            }
          }
      }
  });
});
