import type { Part } from '../solid/mesh.js';
import { kindOf } from '../solid/partKinds.js';
import type { BodyFindings } from './bodies.js';
import { meshBounds } from './mesh/volume.js';
import type { PartRecord } from './sheetTypes.js';

/** The sheet's record of each kind of part: sun, planet, ring. */
export function partRecords(parts: readonly Part[], { bodies }: BodyFindings): PartRecord[] {
  return bodies.map((body) => {
    const name = kindOf(body.name);
    const same = parts.filter((part) => kindOf(part.name) === name);
    return {
      name,
      count: same.length,
      triangles: same[0].mesh.triangles.length / 3,
      volume: body.volume,
      watertight: body.edges.watertight,
      bounds: boundsOf(same),
    };
  });
}

function boundsOf(parts: readonly Part[]): PartRecord['bounds'] {
  const boxes = parts.map(({ mesh }) => meshBounds(mesh));
  const corner = (key: 'min' | 'max', pick: (...values: number[]) => number) =>
    [0, 1, 2].map((axis) => pick(...boxes.map((box) => box[key][axis]))) as [number, number, number];
  return { min: corner('min', Math.min), max: corner('max', Math.max) };
}
