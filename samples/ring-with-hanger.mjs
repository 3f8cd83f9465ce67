// A spinner with an eye on its ring and finger holes in its planets, to hang above the exhibit table of a village
// science fair (invented).
//
//   npm ci && npm run build
//   node samples/ring-with-hanger.mjs OUTDIR
//
// Shows how a modelling script joins solids of its own to parts of a set and cuts others from them, has the whole
// proved, and saves it, in two ways. The eye is meant for the weight of the toy alone: hang nothing from it, and
// nothing above people's heads.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import modeling from '@jscad/modeling';
import stlSerializer from '@jscad/stl-serializer';
import { encode3mf, proveSet, resolveSpec, toGeom3 } from 'cogweave';

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
});
const outerRadius = proveSet(spec).sheet.parts.find(({ name }) => name === 'ring').bounds.max[1];

/** An eye of 4 mm, flat on the bed, that bites half the rim's width into it and stays clear of the teeth. */
function hangerEye() {
  const [eyeRadius, holeRadius, height] = [7, 3.5, 4];
  const center = [0, outerRadius - spec.ring.rim / 2 + eyeRadius, height / 2];
  return booleans.subtract(
    primitives.cylinder({ radius: eyeRadius, height, center, segments: 48 }),
    primitives.cylinder({ radius: holeRadius, height: 2 * height, center, segments: 48 }),
  );
}

// What is for all planets is drawn once, around a planet's own axis.
const pencilHole = primitives.cylinder({ radius: 2, height: 40, segments: 48 });

const { sheet, parts } = await proveSet(spec, { join: { ring: hangerEye() }, cut: { planets: pencilHole } });
const failed = sheet.checks.filter(({ level, holds }) => level === 'must' && !holds);
if (failed.length) {
  for (const { id, says } of failed) console.error(`refused by ${id}: ${says}`);
  process.exit(1);
}

// Parts as solids of the modelling library, each with its name and colour, through that library's own writer …
const solids = parts.map((part) => toGeom3(part));
const stl = Buffer.concat(
  stlSerializer.serialize({ binary: true }, ...solids).map((piece) => Buffer.from(piece)),
);

// … and as a 3MF with named parts, straight from the meshes.
await mkdir(folder, { recursive: true });
for (const [file, bytes] of [
  [`${spec.name}.stl`, stl],
  [`${spec.name}.3mf`, encode3mf(parts, { title: spec.name })],
]) {
  await writeFile(join(folder, file), bytes);
  console.log(join(folder, file));
}
