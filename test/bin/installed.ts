import { execFile, execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { folderWith, root } from './command.js';

/** A folder of a user's that holds nothing but these files and the packed package, installed without a registry. */
export interface Installed {
  folder: string;
  /** What the package holds, as paths in it. */
  packed: string[];
}

/**
 * Packs the package as it would be published and installs it as `npm install` lays it out. Of our own
 * dependencies only those that a user gets too are there (each finds its own where this checkout keeps them).
 */
export function install(files: Record<string, string>): Installed {
  const folder = folderWith(files);
  const [{ filename, files: packed }] = JSON.parse(
    execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', folder], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  );
  const own = join(folder, 'node_modules', 'cogweave');
  mkdirSync(own, { recursive: true });
  execFileSync('tar', ['-xzf', join(folder, filename), '-C', own, '--strip-components=1']);
  const { dependencies, bin } = JSON.parse(readFileSync(join(own, 'package.json'), 'utf8'));
  for (const name of Object.keys(dependencies)) link(join(root, 'node_modules', name), folder, name);
  link(join(own, bin.cogweave), folder, '.bin/cogweave');
  chmodSync(join(own, bin.cogweave), 0o755);
  return { folder, packed: packed.map(({ path }: { path: string }) => path) };
}

function link(target: string, folder: string, name: string): void {
  const path = join(folder, 'node_modules', name);
  mkdirSync(dirname(path), { recursive: true });
  symlinkSync(target, path);
}

/** What a program wrote. Rejects where it ends otherwise than with 0. */
export function output(
  folder: string,
  program: string,
  ...words: string[]
): Promise<{ stdout: string; stderr: string }> {
  return promisify(execFile)(program, words, { cwd: folder, maxBuffer: 1 << 26 });
}
