import type { BodyFinding } from '../bodies.js';
import type { Check } from '../check.js';
import type { Measured } from '../findings.js';

/** Every body closed, 2-manifold, outward: each edge has two triangles that run along it in opposite directions. */
export function watertight({ bodies: { bodies } }: Measured): Check {
  const defects = bodies.map((body) => ({ body, count: defectCount(body) }));
  const total = defects.reduce((sum, { count }) => sum + count, 0);
  const bad = defects.filter(({ count }) => count > 0).map(({ body }) => body.name);
  return {
    id: 'watertight',
    holds: total === 0,
    level: 'must',
    value: total,
    limit: 0,
    unit: 'defects',
    says:
      total === 0
        ? 'every part is closed, 2-manifold and outward'
        : `open, doubled or reversed: ${bad.join(', ')}`,
  };
}

function defectCount({ edges, volume }: BodyFinding): number {
  return (
    edges.open +
    edges.doubled +
    edges.misoriented +
    edges.duplicateVertices +
    edges.unusedVertices +
    edges.degenerateTriangles +
    edges.nonManifoldVertices +
    (edges.shells === 1 ? 0 : 1) +
    (volume > 0 ? 0 : 1)
  );
}
