import type { PlacedBar } from '../../fit/train/fitTrain.js';
import type { Contour, Point } from '../../stack/contour.js';
import { teethAlong } from '../bar/barBody.js';
import { barDraft } from '../bar/barDraft.js';
import type { BarSweep } from '../bar/barSweep.js';
import type { OpenSurface } from '../stack/stackMesh.js';

/** A hole of straight walls, one of them toothed, about the axis of its pinion. As drawn, mm. */
export interface SlotShape {
  /** x of both end walls. */
  ends: [number, number];
  /** y of the smooth wall. */
  smooth: number;
}

/**
 * The walls of a slot whose lower one is the toothed side of a bar, open at both ends of the axis: material around it.
 * @param at where the pinion's axis is in the frame
 */
export function slotSurface(
  bar: PlacedBar,
  sweep: BarSweep,
  { ends: [low, high], smooth }: SlotShape,
  at: Point,
  tolerance: number,
): Required<OpenSurface> {
  const draft = barDraft(bar, sweep);
  const root = bar.datum + bar.profile.root;
  const start = draft.standing(high, root);
  // Clockwise, as holes run; so the material is on the left, as on a bar.
  const last = draft.strip(teethAlong(draft, bar, start, tolerance), draft.standing(low, root));
  draft.strip(
    draft.strip(draft.strip(last, draft.standing(low, smooth)), draft.standing(high, smooth)),
    start,
  );
  const { positions, triangles, bottom, top } = draft.open();
  const moved = positions.map((value, i) => (i % 3 < 2 ? value + at[i % 3] : value));
  const end = (loop: readonly number[], z: number) => {
    const ids = loop.toReversed();
    const points = ids.map((id): Point => [moved[3 * id], moved[3 * id + 1]]);
    const contour: Contour = { z, points };
    return { contour, ids };
  };
  return {
    positions: moved,
    triangles: Uint32Array.from(triangles),
    ends: [end(bottom, 0), end(top, sweep.faceWidth)],
  };
}

/** Several surfaces as one, in their order; the triangles of each stay together. */
export function surfacesTogether(surfaces: readonly Required<OpenSurface>[]): Required<OpenSurface> {
  const positions: number[] = [];
  const triangles: number[] = [];
  const ends: OpenSurface['ends'][number][] = [];
  for (const surface of surfaces) {
    const first = positions.length / 3;
    for (let i = 0; i < surface.positions.length; i++) positions.push(surface.positions[i]);
    for (const id of surface.triangles) triangles.push(id + first);
    for (const { contour, ids } of surface.ends) ends.push({ contour, ids: ids.map((id) => id + first) });
  }
  return { positions, triangles: Uint32Array.from(triangles), ends };
}
