import { chordTolerance } from '../spec/workload.js';
import type { Face } from '../stack/stack.js';
import type { ToothProfile } from '../tooth/profile.js';
import { blankOf, type Wall } from './blank.js';
import type { Mesh } from './mesh.js';
import { stackMesh } from './stack/stackMesh.js';
import type { Sweep } from './sweep/helix.js';
import { type KnownPitches, teethOf } from './teeth.js';

/**
 * A gear as a closed body in its own frame: axis on z, end faces at 0 and the face width, at z = 0 the first
 * tooth on +x. A left-hand gear is the exact mirror y → −y of the right-hand one, features included.
 * @param tolerance largest distance of the mesh from the exact surface, mm
 * @param known pitches of the other gears of the set, to which this one is added [none]
 */
export function gearBody(
  profile: ToothProfile,
  sweep: Sweep,
  wall: Wall,
  tolerance: number,
  known: KnownPitches = new Map(),
): Mesh {
  const teeth = teethOf(profile, sweep, chordTolerance(profile.gear.module, tolerance), known);
  const { rim, feature } = blankOf(wall, sweep.faceWidth, tolerance);
  const endFace = (at: 'bottom' | 'top'): Face => {
    const looks = at === 'bottom' ? 'down' : 'up';
    const { contour } = teeth.ends[at === 'bottom' ? 0 : 1];
    const holes = feature.holes[at] ?? [];
    return rim ? { looks, outer: rim[at], holes: [contour, ...holes] } : { looks, outer: contour, holes };
  };
  const mesh = stackMesh(
    { walls: feature.walls, faces: [endFace('bottom'), endFace('top'), ...feature.faces] },
    teeth,
  );
  return sweep.hand === 'left' ? mirrorY(mesh) : mesh;
}

/** Mirrored in place. */
function mirrorY({ positions, triangles }: Mesh): Mesh {
  for (let i = 1; i < positions.length; i += 3) positions[i] = -positions[i];
  for (let i = 0; i < triangles.length; i += 3) {
    const second = triangles[i + 1];
    triangles[i + 1] = triangles[i + 2];
    triangles[i + 2] = second;
  }
  return { positions, triangles };
}
