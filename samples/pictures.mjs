// Draws the pictures of the README from the parameter files beside this script: `npm run pictures`.
// Each picture is what `cogweave make --picture` writes for that file, smaller; the drawing is the spinner's.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { buildSet, drawSet, proveCoupon, readGaps, readSpec, renderPicture } from 'cogweave';

const DRAWN = 'table-spinner';
const SIZE = { width: 680, height: 490 };

const here = new URL('.', import.meta.url);
mkdirSync(new URL('pictures', here), { recursive: true });

function write(file, bytes) {
  writeFileSync(new URL(`pictures/${file}`, here), bytes);
  console.log(`samples/pictures/${file} ${Math.ceil(bytes.length / 1000)} kB`);
}

for (const file of readdirSync(here).filter((name) => name.endsWith('.yaml'))) {
  const name = file.replace(/\.yaml$/, '');
  const text = readFileSync(new URL(file, here), 'utf8');
  // A file of variants is many sets that look alike.
  if (/^variants:/m.test(text)) continue;
  const spec = readSpec(text, name);
  const parts = buildSet(spec);
  write(`${name}.png`, renderPicture(parts, SIZE));
  if (name === DRAWN) write(`${name}.svg`, drawSet(spec, parts));
}

// What `cogweave coupon samples/table-spinner.yaml` makes.
const spinner = readSpec(readFileSync(new URL(`${DRAWN}.yaml`, here), 'utf8'), DRAWN);
write(
  'gap-coupon.png',
  renderPicture(proveCoupon(spinner, readGaps('0.10:0.40:0.05')).parts, {
    ...SIZE,
    elevation: 60,
    azimuth: -80,
  }),
);
