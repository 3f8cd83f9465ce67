import type { ToothProfile } from '../../tooth/profile.js';
import { rollAt } from '../../tooth/rollAt.js';
import { type Arc, type Involute, mirrored, pointOn, type Segment } from '../../tooth/segments.js';
import { conePatch } from './conePatch.js';
import { bevelSurface, lipSurface } from './exactSurface.js';
import { flankPatch } from './flankPatch.js';
import type { Sweep } from './helix.js';
import { landPatch } from './landPatch.js';
import { addColumn, levelsAt, type PitchDraft, startPitch } from './pitchVertices.js';
import { NEXT } from './places.js';
import { rootPatch } from './rootPatch.js';
import { GRID_TURNS, type Steps } from './steps.js';

/**
 * The toothed surface of one pitch of a right-handed gear, from root land to root curve, over one helix:
 * the whole face width, or the lower half of a herringbone. Winding is that of an external gear.
 */
export interface PitchMesh extends Pick<PitchDraft, 'positions' | 'triangles' | 'patches' | 'profile'> {
  /** Outline of this pitch in the end faces, counter-clockwise, without the vertex shared with the next pitch. */
  bottom: number[];
  top: number[];
}

/** A tooth's segments: root land, root curve, flank, tip land, flank, root curve. */
type Tooth = [Arc, Segment, Involute, Arc, Involute, Segment];

/**
 * Builds the pitch of the tooth on +x.
 * @param placed where its vertices are put [on the exact outline]
 */
export function pitchMesh(
  profile: ToothProfile,
  sweep: Sweep,
  steps: Steps,
  placed: Segment[] = profile.segments,
): PitchMesh {
  const draft = startPitch(profile, sweep, steps);
  const { tipLevels } = draft;
  const [land, rootUp, flankUp, tip, , rootDown] = placed as Tooth;
  const exact = profile.segments as Tooth;
  const [nearBase, flank] = splitNearBase(draft, flankUp);
  const flankDown = mirrored(flank) as Involute;

  // The first column's ids are what the previous pitch refers to as its last.
  const start = addColumn(draft, pointOn(land, land.from));
  const landEnd = addColumn(draft, pointOn(rootUp, rootUp.from));
  const formUp = addColumn(draft, pointOn(flankUp, flankUp.from));
  const flankStart = nearBase ? addColumn(draft, pointOn(flank, flank.from)) : formUp;
  const tipUp = addColumn(draft, pointOn(flank, flank.to), tipLevels);
  const tipDown = addColumn(draft, pointOn(flankDown, flankDown.from), tipLevels);
  const flankEnd = addColumn(draft, pointOn(flankDown, flankDown.to));
  const formDown = nearBase ? addColumn(draft, pointOn(rootDown, rootDown.from)) : flankEnd;
  const end = start.map((id) => id + NEXT);

  const landInside = landPatch(draft, land, start, landEnd, levelsAt(draft, land.radius));
  const rising = rootPatch(draft, rootUp, landEnd, formUp, exact[1]);
  if (nearBase) rising.push(...rootPatch(draft, nearBase, formUp, flankStart).slice(1));
  const up = flankPatch(draft, flank, flankStart, tipUp, 'up', exact[2]);
  const tipInside = landPatch(draft, tip, tipUp, tipDown, tipLevels);
  const down = flankPatch(draft, flankDown, flankEnd, tipDown, 'down', exact[4]);
  const bevel = bevelSurface(profile, sweep);
  const tipBottom = conePatch(draft, bevel, up.cutBottom, down.cutBottom, tipInside.bottom, false);
  const tipTop = draft.bevelTop
    ? conePatch(draft, bevel, up.cutTop, down.cutTop, tipInside.top, true)
    : tipInside.top;
  const falling = nearBase ? rootPatch(draft, mirrored(nearBase), flankEnd, formDown).slice(0, -1) : [];
  falling.push(...rootPatch(draft, rootDown, formDown, end, exact[5]));

  const outline = (at: 'bottom' | 'top', level: number, tipArc: number[]) => {
    const [rise, fall] = [rising, falling].map((columns) => columns.map((column) => column[level]));
    if (!sweep.lips || (at === 'top' && !draft.bevelTop))
      return [
        start[level],
        ...landInside[at],
        ...rise,
        ...up[at],
        ...tipArc,
        ...down[at],
        ...fall.slice(0, -1),
      ];
    // The lip closes the space between this tooth and the next one.
    const next = [...rise, ...up[at]].toReversed().map((id) => id + NEXT);
    const landArc = landInside[at].map((id) => id + NEXT);
    const lip = lipSurface(profile, sweep);
    const lipArc = conePatch(draft, lip, [...down[at], ...fall], next, landArc, at === 'top');
    return [up[at].at(-1)!, ...tipArc, down[at][0], ...lipArc];
  };
  return {
    positions: draft.positions,
    triangles: draft.triangles,
    patches: draft.patches,
    profile,
    bottom: outline('bottom', 0, tipBottom),
    top: outline('top', draft.levels.length - 1, tipTop),
  };
}

/** The part of the rising flank next to the base circle, if there is any, and the rest of it. */
function splitNearBase(
  { profile, sweep, steps, rate }: PitchDraft,
  flank: Involute,
): [Involute | null, Involute] {
  if (profile.gear.internal || rate === 0) return [null, flank];
  const cut = rollAt(flank.baseRadius, profile.tipRadius - sweep.bevelSize);
  const split = Math.min(GRID_TURNS * steps.rootTurn, (flank.from + cut) / 2);
  if (split <= flank.from) return [null, flank];
  return [
    { ...flank, to: split },
    { ...flank, from: split },
  ];
}
