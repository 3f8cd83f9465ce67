import { holeLevels } from '../../features/axisHole.js';
import { bedFrame, boltColumns } from '../../features/bolts.js';
import type { Flange } from '../../features/flange.js';
import type { Mount } from '../../features/mount.js';
import { column } from '../../stack/column.js';
import { circlePoints } from '../../stack/contour.js';
import type { InUse } from '../inUse.js';
import type { Mesh } from '../mesh.js';
import { placed } from '../place.js';
import { stackMesh } from '../stack/stackMesh.js';

/** Room between loose parts on the bed, mm. Common practice. */
export const BESIDE = 3;

/**
 * The ring that clamps a mounted set to its panel from the far side: as wide as the flange, its screw holes under
 * those of the flange, with pockets for the nuts in its upper side. It lies beside the set, off a corner, where two
 * round bodies need the least bed.
 * @param bodyRadius outer radius of the set's ring, mm
 */
export function clampRing(mount: Mount, flange: Flange, bodyRadius: number, tolerance: number): Mesh {
  const { clamp, clearance, circle, screws, diameter, nutFlats, nutDepth } = mount;
  const round = (radius: number) => {
    const outline = circlePoints(radius, tolerance);
    return [
      { z: 0, outline },
      { z: clamp, outline },
    ];
  };
  const edge = column(round(flange.diameter / 2), 'inside');
  const nut = { acrossFlats: nutFlats, depth: nutDepth };
  const open = [
    column(round(bodyRadius + clearance), 'outside'),
    ...boltColumns(holeLevels({ diameter, top: nut }, clamp, tolerance), circle, screws, bedFrame),
  ];
  const mesh = stackMesh({
    walls: [edge, ...open].flatMap(({ walls }) => walls),
    faces: [
      { looks: 'down', outer: edge.first, holes: open.map(({ first }) => first) },
      { looks: 'up', outer: edge.last, holes: open.map(({ last }) => last) },
      ...open.flatMap(({ faces }) => faces),
    ],
  });
  const aside = asideOf(flange);
  return placed(mesh, 0, [aside, aside]);
}

/** How far along x and y it lies beside the set, mm. */
function asideOf({ diameter }: Flange): number {
  return (diameter + BESIDE) / Math.SQRT2;
}

/** How it gets from the bed onto the panel's far side, the nut pockets outward as they are printed. */
export function clampInUse({ panel }: Mount, flange: Flange): InUse {
  const aside = asideOf(flange);
  return { motion: [-aside, -aside, flange.thickness + panel, 0, 0, 0], about: [0, 0, 0] };
}
