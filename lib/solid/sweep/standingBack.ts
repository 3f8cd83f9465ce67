import type { ToothProfile } from '../../tooth/profile.js';
import { type Arc, type Segment, turned } from '../../tooth/segments.js';

/**
 * The outline whose concave sides stand back into the tooth: flanks and roots of a ring, roots of an external gear. Chords
 * leave a concave side towards the mate alone, so that facets of vertices that stand back by half as much lie on both
 * sides of it. All that stands back is turned about the axis: points stay on lands, bevels and lips, which grow and shrink
 * along themselves, and flanks keep their generators.
 * @param back along the normal of a flank, mm
 */
export function standingBack({ gear, sizes, segments }: ToothProfile, back: number): Segment[] {
  const angle = back / (sizes.baseRadius * Math.cos(sizes.baseHelixAngle));
  const [land, rootUp, flankUp, tip, flankDown, rootDown] = segments as [
    Arc,
    Segment,
    Segment,
    Arc,
    Segment,
    Segment,
  ];
  const widened = { ...land, from: land.from - angle, to: land.to + angle };
  const [up, down] = [turned(rootUp, angle), turned(rootDown, -angle)];
  if (!gear.internal) return [widened, up, flankUp, tip, flankDown, down];
  const narrowed = { ...tip, from: tip.from + angle, to: tip.to - angle };
  return [widened, up, turned(flankUp, angle), narrowed, turned(flankDown, -angle), down];
}
