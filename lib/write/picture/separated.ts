import type { Part } from '../../solid/mesh.js';
import { kindOf } from '../../solid/partKinds.js';

/** Free height between kinds that are lifted apart, share of the lower one's height. */
const AIR = 0.35;

/** The parts with their kinds lifted out of one another: the widest stays, the next widest stands above it, and so on. */
export function separated(parts: readonly Part[]): Part[] {
  const kinds = new Map<string, { reach: number; bottom: number; top: number }>();
  for (const { name, mesh } of parts) {
    const kind = kinds.get(kindOf(name)) ?? {
      reach: 0,
      bottom: Number.POSITIVE_INFINITY,
      top: Number.NEGATIVE_INFINITY,
    };
    for (let i = 0; i < mesh.positions.length; i += 3) {
      kind.reach = Math.max(kind.reach, Math.hypot(mesh.positions[i], mesh.positions[i + 1]));
      kind.bottom = Math.min(kind.bottom, mesh.positions[i + 2]);
      kind.top = Math.max(kind.top, mesh.positions[i + 2]);
    }
    kinds.set(kindOf(name), kind);
  }
  const lifts = new Map<string, number>();
  let free = 0;
  for (const [name, { bottom, top }] of [...kinds].sort(([, a], [, b]) => b.reach - a.reach)) {
    lifts.set(name, lifts.size ? free - bottom : 0);
    free = (lifts.get(name) ?? 0) + top + AIR * (top - bottom);
  }
  return parts.map(({ mesh, ...part }) => {
    const positions = mesh.positions.slice();
    const lift = lifts.get(kindOf(part.name)) ?? 0;
    for (let i = 2; i < positions.length; i += 3) positions[i] += lift;
    return { ...part, mesh: { positions, triangles: mesh.triangles } };
  });
}
