import type { Copy, Mesh, Part } from '../../solid/mesh.js';

/** A part that is the same body as an earlier one: turn that one about z, then move it. */
export interface Shared {
  /** Index of the earlier part. */
  first: number;
  cos: number;
  sin: number;
  /** x and y, mm. */
  offset: [number, number];
}

/** For each part the earlier one that it repeats; null for the first of its kind and for parts of their own. */
export function sharedBodies(parts: readonly Part[]): (Shared | null)[] {
  const firsts = new Map<Mesh, number>();
  return parts.map(({ mesh: { copyOf } }, index) => {
    if (!copyOf) return null;
    const first = firsts.get(copyOf.body);
    if (first !== undefined) return between(first, parts[first].mesh.copyOf!, copyOf);
    firsts.set(copyOf.body, index);
    return null;
  });
}

function between(first: number, from: Copy, to: Copy): Shared {
  const cos = Math.cos(to.angle - from.angle);
  const sin = Math.sin(to.angle - from.angle);
  const [x, y] = from.offset;
  return {
    first,
    cos,
    sin,
    offset: [to.offset[0] - (x * cos - y * sin), to.offset[1] - (x * sin + y * cos)],
  };
}
