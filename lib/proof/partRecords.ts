import type { Part } from '../solid/mesh.js';
import { firstOfEachKind, kindOf } from '../solid/partKinds.js';
import type { BodyFindings } from './bodies.js';
import { meshBounds } from './mesh/volume.js';
import type { PartRecord } from './sheetTypes.js';

/** The sheet's record of each kind of part: sun, planet, ring; a planet that a script changed alone has its own. */
export function partRecords(parts: readonly Part[], { bodies }: BodyFindings): PartRecord[] {
  return firstOfEachKind(parts).map(({ kind, part, count }) => {
    const { volume, edges } = bodies.find(({ name }) => name === part.name)!;
    const same = part.unlike ? [part] : parts.filter(({ name, unlike }) => !unlike && kindOf(name) === kind);
    return {
      name: kind,
      count,
      triangles: part.mesh.triangles.length / 3,
      volume,
      watertight: edges.watertight,
      bounds: boundsOf(same),
    };
  });
}

/** Box around all of some parts, mm. */
export function boundsOf(parts: readonly Part[]): PartRecord['bounds'] {
  const boxes = parts.map(({ mesh }) => meshBounds(mesh));
  const corner = (key: 'min' | 'max', pick: (...values: number[]) => number) =>
    [0, 1, 2].map((axis) => pick(...boxes.map((box) => box[key][axis]))) as [number, number, number];
  return { min: corner('min', Math.min), max: corner('max', Math.max) };
}
