// Writes a tiny set into a folder: node writeTiny.mjs FOLDER WORD. Its files hold the word.
import { writeSet } from '../../dist/lib/write/writeSet.js';

const [, , folder, word] = process.argv;
const file = (ending) => ({
  name: `tiny.${ending}`,
  chunks: () => [new TextEncoder().encode(`${word} ${ending}`)],
});
await writeSet(folder, { name: 'tiny', word }, ['stl', 'svg', 'sheet.html'].map(file), {});
