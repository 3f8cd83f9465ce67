import { type Arc, pointOn } from '../../tooth/segments.js';
import { sweptSurface } from './exactSurface.js';
import { addVertex, addZipped, idsOf, type PitchDraft, rimOf } from './pitchVertices.js';
import type { RimVertex } from './zip.js';

/**
 * A cylindrical land between two columns that share their levels.
 * @returns ids strictly inside its lower and upper edge, in the order of angle
 */
export function landPatch(
  draft: PitchDraft,
  arc: Arc,
  left: readonly number[],
  right: readonly number[],
  levels: readonly number[],
): { bottom: number[]; top: number[] } {
  const bottom = arcInterior(draft, arc, levels[0]);
  const top = arcInterior(draft, arc, levels[levels.length - 1]);
  const leftRim = rimOf(draft, left, levels, arc.from);
  addZipped(draft, 'land', sweptSurface(draft.profile, arc), [
    leftRim[0],
    ...bottom,
    ...rimOf(draft, right, levels, arc.to),
    ...top.toReversed(),
    ...leftRim.slice(1).toReversed(),
  ]);
  return { bottom: idsOf(bottom), top: idsOf(top) };
}

function arcInterior(draft: PitchDraft, arc: Arc, z: number): RimVertex[] {
  const count = Math.max(1, Math.ceil((arc.to - arc.from) / draft.steps.arc(arc.radius) - 1e-9));
  return Array.from({ length: count - 1 }, (_, i) => {
    const angle = arc.from + ((arc.to - arc.from) * (i + 1)) / count;
    return { id: addVertex(draft, pointOn(arc, angle), z), ruling: angle + draft.rate * z };
  });
}
