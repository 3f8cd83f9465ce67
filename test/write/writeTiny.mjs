// Writes a tiny set into a folder: node writeTiny.mjs FOLDER WORD [NAME]. Its files hold the word.
import { writeSet } from '../../dist/lib/write/writeSet.js';

const [, , folder, word, name = 'tiny'] = process.argv;
const file = (ending) => ({
  name: `${name}.${ending}`,
  chunks: () => [new TextEncoder().encode(`${word} ${ending}`)],
});
await writeSet(folder, { name, word }, ['stl', 'svg', 'sheet.html'].map(file), {});
