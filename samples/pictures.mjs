// Draws the pictures of the README from the parameter files beside this script: `npm run pictures`.
// Each picture is the drawing that `cogweave make` writes for that file.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { drawSet, readSpec } from 'cogweave';

const here = new URL('.', import.meta.url);
for (const file of readdirSync(here).filter((name) => name.endsWith('.yaml'))) {
  const name = file.replace(/\.yaml$/, '');
  const picture = new URL(`pictures/${name}.svg`, here);
  writeFileSync(picture, drawSet(readSpec(readFileSync(new URL(file, here), 'utf8'), name)));
  console.log(`samples/pictures/${name}.svg`);
}
