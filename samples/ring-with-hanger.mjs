// A spinner with an eye on its ring, to hang above the exhibit table of a village science fair (invented).
//
//   npm ci && npm run build
//   node samples/ring-with-hanger.mjs OUTDIR
//
// Shows how a modelling script takes a part of a set, joins a solid of its own to it, and saves the whole.
// The eye is meant for the weight of the toy alone: hang nothing from it, and nothing above people's heads.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import modeling from '@jscad/modeling';
import stlSerializer from '@jscad/stl-serializer';
import { buildSet, encode3mf, fromGeom3, resolveSpec, toGeom3 } from 'cogweave';

const { booleans, primitives } = modeling;

const [folder] = process.argv.slice(2);
if (!folder) {
  console.error('usage: node samples/ring-with-hanger.mjs OUTDIR');
  process.exit(2);
}

const spec = resolveSpec({
  name: 'hanging-spinner',
  kind: 'planetary',
  module: 1.25,
  helix: { form: 'herringbone', angle: 25 },
  faceWidth: 10,
  sun: { teeth: 12, bore: { shape: 'round', diameter: 5 } },
  planets: { teeth: 12, count: 4 },
  ring: { teeth: 36, rim: 5 },
  fit: { gap: 0.25 },
  // Booleans of polygons slow down with the square of their number: coarse is enough for a toy.
  tolerance: 0.02,
});
const parts = buildSet(spec);
const ring = parts.find(({ name }) => name === 'ring');

/** An eye of 4 mm, flat on the bed, that bites half the rim's width into it and stays clear of the teeth. */
function hangerEye(outerRadius, rim) {
  const [eyeRadius, holeRadius, height] = [7, 3.5, 4];
  const center = [0, outerRadius - rim / 2 + eyeRadius, height / 2];
  return booleans.subtract(
    primitives.cylinder({ radius: eyeRadius, height, center, segments: 48 }),
    primitives.cylinder({ radius: holeRadius, height: 2 * height, center, segments: 48 }),
  );
}

const outerRadius = ring.mesh.positions.reduce(
  (most, x, i, all) => (i % 3 === 0 ? Math.max(most, Math.hypot(x, all[i + 1])) : most),
  0,
);
const joined = booleans.union(toGeom3(ring.mesh, 'ring'), hangerEye(outerRadius, spec.ring.rim));

// Every solid of the set through the modelling library's own writer …
const solids = parts.map(({ name, mesh }) => (name === 'ring' ? joined : toGeom3(mesh, name)));
const stl = Buffer.concat(
  stlSerializer.serialize({ binary: true }, ...solids).map((piece) => Buffer.from(piece)),
);

// … and back as meshes, which refuses anything that is not closed, for a 3MF with named parts.
const meshes = parts.map(({ name, mesh }) => ({ name, mesh: name === 'ring' ? fromGeom3(joined) : mesh }));

await mkdir(folder, { recursive: true });
for (const [file, bytes] of [
  [`${spec.name}.stl`, stl],
  [`${spec.name}.3mf`, encode3mf(meshes, { title: spec.name })],
]) {
  await writeFile(join(folder, file), bytes);
  console.log(join(folder, file));
}
