import { readPictureSize, usualSize } from '../lib/write/pictureSize.js';

/** Size of the picture that flags ask for, pixels; a size alone asks for it too. */
export function pictureOf(argv: {
  picture?: boolean;
  'picture-size'?: string;
}): { width: number; height: number } | undefined {
  const size = argv['picture-size'];
  if (size !== undefined) return readPictureSize(size);
  return argv.picture ? usualSize : undefined;
}
