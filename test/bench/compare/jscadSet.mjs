// The same gears through @jscad/modeling: twisted extrude, union of the halves, bore by subtract. It cannot be run at
// full fineness in bearable time, so it is run at two coarse ones and carried on by the power law between them.
import jscad from '@jscad/modeling';
import { gearOutline } from '../../../dist/lib/tooth/outline.js';

const { booleans, extrusions, geometries, primitives, transforms } = jscad;

/** One run at a fineness; ms and triangles. */
export function jscadRun(profile, half, twist, sagitta, levels, boreRadius) {
  const { points } = gearOutline(profile, sagitta);
  const corners = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]);
  const started = performance.now();
  const section = geometries.geom2.fromPoints(corners);
  const lower = extrusions.extrudeLinear({ height: half, twistAngle: twist, twistSteps: levels }, section);
  const upper = transforms.translate([0, 0, 2 * half], transforms.mirrorZ(lower));
  const bore = primitives.cylinder({
    radius: boreRadius,
    height: 3 * half,
    center: [0, 0, half],
    segments: 48,
  });
  const body = booleans.subtract(booleans.union(lower, upper), bore);
  const triangles = geometries.geom3
    .toPolygons(body)
    .reduce((sum, { vertices }) => sum + vertices.length - 2, 0);
  return { ms: performance.now() - started, triangles };
}
