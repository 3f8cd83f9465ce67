import type { ToothProfile } from '../../tooth/profile.js';
import { type Arc, type Involute, pointOn, rollAt, type Segment } from '../../tooth/segments.js';
import { bevelSurface, type SurfaceDistance, sweptSurface } from './exactSurface.js';
import { bevelHeight, type Sweep, twistRate } from './helix.js';
import type { Steps } from './steps.js';
import { type RimVertex, zipPatch } from './zip.js';

/** Ids from here on mean the vertex `id − NEXT` of the following pitch. */
export const NEXT = 1 << 24;

/** What a run of triangles stands for: which exact surface, and which of the step sizes governs it. */
export interface Patch {
  kind: 'flank' | 'land' | 'root';
  surface: SurfaceDistance;
  /** First triangle, and one past the last. */
  from: number;
  to: number;
}

/**
 * The toothed surface of one pitch of a right-handed gear, from root land to root curve, over one helix:
 * the whole face width, or the lower half of a herringbone. Winding is that of an external gear.
 */
export interface PitchMesh {
  /** x, y, z of vertex i at 3i, mm. */
  positions: number[];
  triangles: number[];
  patches: Patch[];
  /** Outline of this pitch in the end faces, counter-clockwise, without the vertex shared with the next pitch. */
  bottom: number[];
  top: number[];
}

/** Place of a vertex of a pitch, one of the following pitch included, mm. */
export function cornerOf(mesh: PitchMesh, id: number, pitch: number): [number, number, number] {
  const own = id >= NEXT ? id - NEXT : id;
  const x = mesh.positions[3 * own];
  const y = mesh.positions[3 * own + 1];
  const z = mesh.positions[3 * own + 2];
  if (id === own) return [x, y, z];
  const cos = Math.cos(pitch);
  const sin = Math.sin(pitch);
  return [x * cos - y * sin, x * sin + y * cos, z];
}

/** Builds the pitch of the tooth on +x. */
export function pitchMesh(profile: ToothProfile, sweep: Sweep, steps: Steps): PitchMesh {
  const rate = twistRate(profile, sweep);
  const length = sweep.form === 'herringbone' ? sweep.faceWidth / 2 : sweep.faceWidth;
  const bevelTop = sweep.form !== 'herringbone';
  const bevel = bevelHeight(sweep);
  const [land, rootUp, flankUp, tip, flankDown, rootDown] = profile.segments as [
    Arc,
    Segment,
    Involute,
    Arc,
    Involute,
    Segment,
  ];
  const mesh: PitchMesh = { positions: [], triangles: [], patches: [], bottom: [], top: [] };

  const add = ([x, y]: readonly [number, number], z: number): number => {
    const cos = Math.cos(rate * z);
    const sin = Math.sin(rate * z);
    return mesh.positions.push(x * cos - y * sin, x * sin + y * cos, z) / 3 - 1;
  };
  const emit = (a: number, b: number, c: number) => void mesh.triangles.push(a, b, c);
  const patch = (kind: Patch['kind'], surface: SurfaceDistance, fill: () => void) => {
    const from = mesh.triangles.length / 3;
    fill();
    mesh.patches.push({ kind, surface, from, to: mesh.triangles.length / 3 });
  };

  const levelCount = rate === 0 ? 1 : Math.max(1, Math.ceil((rate * length) / steps.turn - 1e-9));
  const levels = Array.from({ length: levelCount + 1 }, (_, j) => (length * j) / levelCount);
  const tipLevels = levelsBetween(levels, bevel, bevelTop ? length - bevel : length);
  const column = (point: readonly [number, number], heights: readonly number[]) =>
    heights.map((z) => add(point, z));

  /** Rim vertices of a column at ruling angle `angle`, upward. */
  const side = (ids: readonly number[], heights: readonly number[], angle: number): RimVertex[] =>
    ids.map((id, j) => ({ id, ruling: angle + rate * heights[j] }));
  /** New vertices strictly between the ends of a land, at height z, as rim vertices in the order of angle. */
  const arcInterior = (arc: Arc, z: number): RimVertex[] => {
    const count = Math.max(1, Math.ceil((arc.to - arc.from) / steps.arc(arc.radius) - 1e-9));
    return Array.from({ length: count - 1 }, (_, i) => {
      const angle = arc.from + ((arc.to - arc.from) * (i + 1)) / count;
      return { id: add(pointOn(arc, angle), z), ruling: angle + rate * z };
    });
  };

  // Columns shared by neighbouring patches. The first one must hold the ids that the previous pitch refers to.
  const start = column(pointOn(land, land.from), levels);
  const landEnd = column(pointOn(rootUp, rootUp.from), levels);
  const formUp = column(pointOn(flankUp, flankUp.from), levels);
  const tipUp = column(pointOn(flankUp, flankUp.to), tipLevels);
  const tipDown = column(pointOn(flankDown, flankDown.from), tipLevels);
  const formDown = column(pointOn(flankDown, flankDown.to), levels);
  const end = start.map((id) => id + NEXT);

  const landBottom = arcInterior(land, 0);
  const landTop = arcInterior(land, length);
  patch('land', sweptSurface(profile, land), () =>
    zipPatch(
      [
        ...side(start, levels, land.from).slice(0, 1),
        ...landBottom,
        ...side(landEnd, levels, land.to),
        ...landTop.toReversed(),
        ...side(start, levels, land.from).slice(1).toReversed(),
      ],
      emit,
    ),
  );

  const rootUpColumns = rootPatch(rootUp, landEnd, formUp);
  const up = flankPatch(flankUp, formUp, tipUp, 'up');
  const tipBottom = arcInterior(tip, tipLevels[0]);
  const tipTop = arcInterior(tip, tipLevels[tipLevels.length - 1]);
  patch('land', sweptSurface(profile, tip), () =>
    zipPatch(
      [
        ...side(tipUp, tipLevels, tip.from).slice(0, 1),
        ...tipBottom,
        ...side(tipDown, tipLevels, tip.to),
        ...tipTop.toReversed(),
        ...side(tipUp, tipLevels, tip.from).slice(1).toReversed(),
      ],
      emit,
    ),
  );
  const down = flankPatch(flankDown, formDown, tipDown, 'down');
  const arcBottom = bevelPatch(up.cutBottom, down.cutBottom, ids(tipBottom), false);
  const arcTop = bevelTop ? bevelPatch(up.cutTop, down.cutTop, ids(tipTop), true) : ids(tipTop);
  const rootDownColumns = rootPatch(rootDown, formDown, end);

  const outline = (at: 'bottom' | 'top', level: number, landArc: number[], tipArc: number[]) => [
    start[level],
    ...landArc,
    ...rootUpColumns.map((ids) => ids[level]),
    ...up[at],
    ...tipArc,
    ...down[at],
    ...rootDownColumns.map((ids) => ids[level]).slice(0, -1),
  ];
  mesh.bottom = outline('bottom', 0, ids(landBottom), arcBottom);
  mesh.top = outline('top', levelCount, ids(landTop), arcTop);
  return mesh;

  /** Root curve: a grid of columns, each quad split along the diagonal that stays nearer to the surface. */
  function rootPatch(segment: Segment, first: number[], last: number[]): number[][] {
    const surface = sweptSurface(profile, segment);
    const parameters = steps.rootPoints(segment);
    const columns = parameters.map((t, i) =>
      i === 0 ? first : i === parameters.length - 1 ? last : column(pointOn(segment, t), levels),
    );
    patch('root', surface, () => {
      for (let i = 0; i + 1 < columns.length; i++) {
        const [a, b, c, d] = [columns[i], columns[i + 1], columns[i + 1], columns[i]];
        const rising = midpointError(a[0], c[1], surface) <= midpointError(b[0], d[1], surface);
        for (let j = 0; j < levelCount; j++)
          if (rising) {
            emit(a[j], b[j], c[j + 1]);
            emit(a[j], c[j + 1], d[j + 1]);
          } else {
            emit(a[j], b[j], d[j + 1]);
            emit(b[j], c[j + 1], d[j + 1]);
          }
      }
    });
    return columns;
  }

  /** Distance from the exact surface of the middle of the edge between two vertices. */
  function midpointError(a: number, b: number, surface: SurfaceDistance): number {
    const p = vertex(a);
    const q = vertex(b);
    const z = (p[2] + q[2]) / 2;
    const [x, y] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
    const cos = Math.cos(rate * z);
    const sin = Math.sin(rate * z);
    return surface(x * cos + y * sin, -x * sin + y * cos, z);
  }

  function vertex(id: number): [number, number, number] {
    return cornerOf(mesh, id, (2 * Math.PI) / profile.gear.teeth);
  }

  /**
   * Involute flank between its root column and its tip column, its corners cut by the bevels.
   * Returns the outline in both end faces (from form to bevel for 'up', from bevel to form for 'down', the form
   * column left out) and the cut edges from the end face to the tip column.
   */
  function flankPatch(flank: Involute, form: number[], tipColumn: number[], direction: 'up' | 'down') {
    const tipRoll = direction === 'up' ? flank.to : flank.from;
    const formRoll = direction === 'up' ? flank.from : flank.to;
    const cutRadius = profile.tipRadius - (profile.gear.internal ? -1 : 1) * sweep.bevelSize;
    const cutRoll = sweep.bevelSize > 0 ? rollAt(flank.baseRadius, cutRadius) : tipRoll;
    const faceRolls = steps.flankRolls(flank, formRoll, cutRoll);
    const cutRolls = sweep.bevelSize > 0 ? steps.flankRolls(flank, cutRoll, tipRoll) : [tipRoll];
    const at = (roll: number, z: number): RimVertex => ({
      id: add(pointOn(flank, roll), z),
      ruling: flank.start + flank.turn * roll + rate * z,
    });
    const known = (id: number, roll: number, z: number): RimVertex => ({
      id,
      ruling: flank.start + flank.turn * roll + rate * z,
    });
    const fromFace = (roll: number) =>
      (Math.abs(flank.baseRadius * Math.sqrt(1 + roll * roll) - cutRadius) * bevel) / (sweep.bevelSize || 1);
    /** From the end face to the tip column. */
    const cutEdge = (top: boolean): RimVertex[] => {
      const tipId = top ? tipColumn[tipColumn.length - 1] : tipColumn[0];
      const tipZ = top ? tipLevels[tipLevels.length - 1] : tipLevels[0];
      return cutRolls.map((roll, i) =>
        i === cutRolls.length - 1
          ? known(tipId, tipRoll, tipZ)
          : at(roll, top ? length - fromFace(roll) : fromFace(roll)),
      );
    };
    const cutBottom = cutEdge(false);
    const cutTop = bevelTop ? cutEdge(true) : [known(tipColumn[tipColumn.length - 1], tipRoll, length)];
    // Face interiors run from the form column towards the bevel; the last roll is the cut edge's first vertex.
    const interior = (z: number) =>
      (bevelTop || z === 0 ? faceRolls : steps.flankRolls(flank, formRoll, tipRoll))
        .slice(1, -1)
        .map((roll) => at(roll, z));
    const bottom = interior(0);
    const top = interior(length);
    const formSide = form.map((id, j) => known(id, formRoll, levels[j]));
    const tipSide = tipColumn.map((id, j) => known(id, tipRoll, tipLevels[j])).slice(1, -1);
    const rim =
      direction === 'up'
        ? [
            ...bottom,
            ...cutBottom,
            ...tipSide,
            ...cutTop.toReversed(),
            ...top.toReversed(),
            ...formSide.toReversed(),
          ]
        : [
            ...cutBottom.toReversed(),
            ...bottom.toReversed(),
            ...formSide,
            ...top,
            ...cutTop,
            ...tipSide.toReversed(),
          ];
    patch('flank', sweptSurface(profile, flank), () => zipPatch(rim, emit));
    const faceOutline = (inside: RimVertex[], cut: RimVertex[]) => {
      const list = [...ids(inside), cut[0].id];
      return direction === 'up' ? list : list.toReversed();
    };
    return {
      bottom: faceOutline(bottom, cutBottom),
      top: faceOutline(top, cutTop),
      cutBottom: ids(cutBottom),
      cutTop: ids(cutTop),
    };
  }

  /**
   * The cone at one end between the cut edges of the two flanks: rows at equal radius, neighbouring rows zipped
   * together along the cone's straight generators, which keep their polar angle.
   * @returns ids strictly inside the edge that lies in the end face, in the order of angle
   */
  function bevelPatch(leftEdge: number[], rightEdge: number[], tipArc: number[], top: boolean): number[] {
    if (leftEdge.length === 1) return tipArc;
    const rows = leftEdge.map((leftId, row) =>
      bevelRow(leftId, rightEdge[row], row === leftEdge.length - 1 ? tipArc : null),
    );
    patch('land', bevelSurface(profile, sweep), () => {
      for (let row = 0; row + 1 < rows.length; row++) {
        const [low, high] = top ? [rows[row + 1], rows[row]] : [rows[row], rows[row + 1]];
        zipPatch([...low, ...high.toReversed()], emit);
      }
    });
    return ids(rows[0]).slice(1, -1);
  }

  /** The arc between two vertices at equal height and radius, on the vertices given or on new ones. */
  function bevelRow(leftId: number, rightId: number, inside: number[] | null): RimVertex[] {
    const [lx, ly, z] = vertex(leftId);
    const [rx, ry] = vertex(rightId);
    const radius = Math.hypot(lx, ly);
    const from = Math.atan2(ly, lx);
    const span = Math.atan2(lx * ry - ly * rx, lx * rx + ly * ry);
    const count = inside ? inside.length + 1 : Math.max(1, Math.ceil(span / steps.arc(radius) - 1e-9));
    const between = Array.from({ length: count - 1 }, (_, i) => {
      const angle = from + (span * (i + 1)) / count;
      const id = inside
        ? inside[i]
        : mesh.positions.push(radius * Math.cos(angle), radius * Math.sin(angle), z) / 3 - 1;
      return { id, ruling: angle };
    });
    return [{ id: leftId, ruling: from }, ...between, { id: rightId, ruling: from + span }];
  }
}

function ids(rim: readonly RimVertex[]): number[] {
  return rim.map((vertex) => vertex.id);
}

/** The levels inside [low, high], with both ends, none nearer to an end than a quarter of a step. */
function levelsBetween(levels: readonly number[], low: number, high: number): number[] {
  const margin = (levels[1] - levels[0]) / 4;
  return [low, ...levels.filter((z) => z > low + margin && z < high - margin), high];
}
