import { usualSize } from '../../lib/write/pictureSize.js';
import { text } from './text.js';

/** Flags of `inspect`; `make` has them too. */
export const inspectFlags = {
  profile: text('file with printer and filament, for what FILE itself does not say of them'),
  tolerance: text('largest distance of the mesh from the exact surface, mm; in place of the file’s'),
  strict: { type: 'boolean', describe: 'let checks that should hold stop the job too' },
  json: { type: 'boolean', describe: 'print one JSON document and nothing else' },
} as const;

/** Flags of `make`. */
export const makeFlags = {
  out: text('folder for the files (required)'),
  format: text('formats of the parts [stl,3mf]; drawing and sheets are always written'),
  picture: { type: 'boolean', describe: 'write NAME.png too: a shaded picture of the whole set' },
  'picture-size': text(
    `write it with so many pixels, width x height [${usualSize.width}x${usualSize.height}]`,
  ),
  force: { type: 'boolean', describe: 'write even though checks fail' },
  ...inspectFlags,
} as const;
