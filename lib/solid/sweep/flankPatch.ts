import { refuse } from '../../refusal.js';
import { rollAt } from '../../tooth/rollAt.js';
import { type Involute, pointOn } from '../../tooth/segments.js';
import { sweptSurface } from './exactSurface.js';
import { foldedBy } from './folded.js';
import { bevelHeight, faceRadius, lipHeight } from './helix.js';
import { addVertex, addZipped, idsOf, levelsAt, type PitchDraft } from './pitchVertices.js';
import { doublesBack, type RimVertex } from './zip.js';

/** Why a bevel is refused. */
const ACROSS = 'cuts flanks next to their base circle in a way that no mesh can follow';

/** What a flank shares with its neighbours. */
export interface FlankEdges {
  /** Ids along the end faces from the root column (left out) to the bevel, in the order of angle. */
  bottom: number[];
  top: number[];
  /** Ids along the bevel's cut from the end face to the tip column, both included. */
  cutBottom: number[];
  cutTop: number[];
}

/**
 * The involute flank between its root column and its tip column, corners cut off by the bevels, zipped along its
 * straight generators.
 * @param side 'up' when the root is at the smaller angle, 'down' when the tip is
 * @param flank from the root column's roll to the tip's for 'up', the other way round for 'down'
 * @param exact the flank that is stood for, where this one stands back from it
 * @throws Refusal of the bevel where its cut runs back across the generators
 */
export function flankPatch(
  draft: PitchDraft,
  flank: Involute,
  rootColumn: readonly number[],
  tipColumn: readonly number[],
  side: 'up' | 'down',
  exact = flank,
): FlankEdges {
  const { profile, sweep, steps, rate, length, tipLevels, bevelTop } = draft;
  const [rootRoll, tipRoll] = side === 'up' ? [flank.from, flank.to] : [flank.to, flank.from];
  const ruling = (roll: number, z: number) => flank.start + flank.turn * roll + rate * z;
  const at = (roll: number, z: number): RimVertex => ({
    id: addVertex(draft, pointOn(flank, roll), z),
    ruling: ruling(roll, z),
  });

  const bevelled = sweep.bevelSize > 0;
  const cutRadius = faceRadius(profile, sweep);
  const cutRoll = bevelled ? rollAt(flank.baseRadius, cutRadius) : tipRoll;
  const cutRolls = bevelled ? steps.flankRolls(flank, cutRoll, tipRoll) : [tipRoll];
  const radiusAt = (roll: number) => flank.baseRadius * Math.sqrt(1 + roll * roll);
  // Exactly in the end face where the cut begins: end faces are known by their height.
  const depth = (roll: number) =>
    roll === cutRoll ? 0 : (Math.abs(radiusAt(roll) - cutRadius) * bevelHeight(sweep)) / sweep.bevelSize;

  const tipRim = tipColumn.map((id, j) => ({ id, ruling: ruling(tipRoll, tipLevels[j]) }));
  const cut = (heightOf: (roll: number) => number, tip: RimVertex) => [
    ...cutRolls.slice(0, -1).map((roll) => at(roll, heightOf(roll))),
    tip,
  ];
  const cutBottom = cut(depth, tipRim[0]);
  const lastTip = tipRim[tipRim.length - 1];
  const cutTop = bevelTop ? cut((roll) => length - depth(roll), lastTip) : [lastTip];

  const lip = (roll: number) => lipHeight(profile, sweep, radiusAt(roll));
  const inside = (heightOf: (roll: number) => number, bevelHere: boolean) =>
    steps
      .flankRolls(flank, rootRoll, bevelHere ? cutRoll : tipRoll)
      .slice(1, -1)
      .map((roll) => at(roll, heightOf(roll)));
  const bottom = inside(lip, true);
  const top = inside((roll) => (bevelTop ? length - lip(roll) : length), bevelTop);
  const rootLevels = levelsAt(draft, Math.hypot(...pointOn(flank, rootRoll)));
  const rootRim = rootColumn.map((id, j) => ({ id, ruling: ruling(rootRoll, rootLevels[j]) }));
  const tipInside = tipRim.slice(1, -1);
  // Counter-clockwise as seen from the space for 'up'; for 'down' root and tip change sides.
  const rim = [
    ...bottom,
    ...cutBottom,
    ...tipInside,
    ...cutTop.toReversed(),
    ...top.toReversed(),
    ...rootRim.toReversed(),
  ];
  const around = side === 'up' ? rim : rim.toReversed();
  // Bevels on teeth whose tips come close to the base circle, as those of a ring with a large negative shift.
  if (bevelled && doublesBack(around)) refuse('not-meshable', 'bevel.size', sweep.bevelSize, ACROSS, [0]);
  addZipped(draft, 'flank', sweptSurface(draft.profile, exact), around);
  const patch = draft.patches[draft.patches.length - 1];
  patch.folded = foldedBy(draft, draft.triangles.slice(3 * patch.from), unrolled);

  const along = (interior: RimVertex[], cutEdge: RimVertex[]) => {
    const ids = [...idsOf(interior), cutEdge[0].id];
    return side === 'up' ? ids : ids.toReversed();
  };
  return {
    bottom: along(bottom, cutBottom),
    top: along(top, cutTop),
    cutBottom: idsOf(cutBottom),
    cutTop: idsOf(cutTop),
  };
}

/** Radius and height in place of x, y, z. */
function unrolled(corners: Float64Array, at: number): void {
  const x = corners[at];
  const y = corners[at + 1];
  corners[at] = Math.sqrt(x * x + y * y);
  corners[at + 1] = corners[at + 2];
}
