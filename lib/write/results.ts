import type { Sheet } from '../proof/sheetTypes.js';
import type { Part } from '../solid/mesh.js';
import type { Spec } from '../spec/types.js';
import { subjectOf } from './drawing/subjectOf.js';
import { drawSet } from './drawing.js';
import type { OutputFile } from './files.js';
import { formats as allFormats } from './formats.js';
import type { MakeOptions } from './makeSet.js';
import { renderPicture } from './picture.js';
import { liveOf } from './sheetPage/live/liveOf.js';
import { sheetPage } from './sheetPage.js';
import { stlChunks } from './stl.js';
import { threemfChunks } from './threemf.js';

/** Every file that `makeSet` writes beside the sheet itself, each made when its contents are asked for. */
export function resultsOf(
  spec: Spec,
  sheet: Sheet,
  parts: readonly Part[],
  { formats = allFormats, picture }: Pick<MakeOptions, 'formats' | 'picture'>,
): OutputFile[] {
  const drawing = drawSet(spec, parts);
  const file = (ending: string, chunks: () => Iterable<Uint8Array>) => ({
    name: `${spec.name}.${ending}`,
    chunks,
  });
  const text = (ending: string, content: string) => file(ending, () => [new TextEncoder().encode(content)]);
  const bodies = {
    stl: file('stl', () => stlChunks(parts)),
    '3mf': file('3mf', () => threemfOf(spec, parts)),
  };
  return [
    ...formats.map((format) => bodies[format]),
    text('svg', drawing),
    text('sheet.html', sheetPage(sheet, drawing, liveOf(sheet, subjectOf(spec, parts)))),
    ...(picture && parts.length ? [file('png', () => [renderPicture(parts, picture)])] : []),
  ];
}

/** Pixels of the picture that stands for the file, either way. */
const THUMBNAIL = 256;

function threemfOf(spec: Spec, parts: readonly Part[]): Iterable<Uint8Array> {
  const thumbnail = renderPicture(parts, { width: THUMBNAIL, height: THUMBNAIL });
  return threemfChunks(parts, { title: spec.name, thumbnail });
}
