import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';

/** Said by tests that are left out where nothing can be mounted, as in most containers. */
export const NO_MOUNT = 'left out: needs the right to mount a small file system';

/** A small file system of its own on a folder, made anew. */
export interface Mounted {
  remount(options: string): void;
  unmount(): void;
}

/** Mounts one in memory; undefined where that is not allowed. */
export function mounted(folder: string, options: string): Mounted | undefined {
  mkdirSync(folder, { recursive: true });
  const mount = (...words: string[]) => execFileSync('mount', words, { stdio: 'ignore' });
  try {
    mount('-t', 'tmpfs', '-o', options, 'tmpfs', folder);
  } catch {
    return undefined;
  }
  return {
    remount: (changed) => mount('-o', `remount,${changed}`, folder),
    unmount: () => execFileSync('umount', [folder]),
  };
}
