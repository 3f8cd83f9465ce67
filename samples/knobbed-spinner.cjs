// A spinner for the exhibit table of a village science fair (invented) whose sun has a knob to turn it by, as a
// CommonJS script: everything that `cogweave make` writes, proved with the knob on.
//
//   npm ci && npm run build
//   node samples/knobbed-spinner.cjs OUTDIR
const { booleans, hulls, primitives } = require('@jscad/modeling');
const { makeSet, Refusal, resolveSpec } = require('cogweave');

const [folder] = process.argv.slice(2);
if (!folder) {
  console.error('usage: node samples/knobbed-spinner.cjs OUTDIR');
  process.exit(2);
}

const faceWidth = 10;

/** A knob of 12 mm height on the sun's upper end face, with a grip that leans out by less than 45°. */
function knob() {
  const disc = (radius, z) =>
    primitives.cylinder({ radius, height: 0.5, center: [0, 0, faceWidth + z + 0.25], segments: 64 });
  const grip = Array.from({ length: 6 }, (_, i) => {
    const angle = (i * Math.PI) / 3;
    const center = [9 * Math.cos(angle), 9 * Math.sin(angle), faceWidth + 6];
    return primitives.cylinder({ radius: 2.5, height: 20, center, segments: 32 });
  });
  return booleans.subtract(hulls.hull(disc(5, 0), disc(7.5, 4), disc(7.5, 11.5)), ...grip);
}

async function main() {
  const spec = resolveSpec({
    name: 'knobbed-spinner',
    kind: 'planetary',
    module: 1.25,
    faceWidth,
    helix: { form: 'herringbone', angle: 35 },
    sun: { teeth: 15 },
    planets: { teeth: 12, count: 3 },
    ring: { rim: 5 },
    fit: { gap: 0.25 },
  });
  const { files, blocking } = await makeSet(spec, { folder, join: { sun: knob() } });
  for (const { id, says } of blocking) console.error(`refused by ${id}: ${says}`);
  for (const file of files) console.log(file);
  process.exitCode = blocking.length ? 1 : 0;
}

main().catch((error) => {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 2;
});
