import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** The checkout. */
export const root = join(import.meta.dirname, '..', '..');
/** The command as it is installed. */
export const command = join(root, 'dist', 'bin', 'cogweave.js');

if (
  !existsSync(command) ||
  newest(join(root, 'dist')) < Math.max(...['lib', 'bin'].map((f) => newest(join(root, f))))
)
  throw new Error('the compiled command is missing or older than its sources: npm run build');

function newest(folder: string): number {
  const times = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.[jt]s$/.test(entry.name))
    .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs);
  return Math.max(...times);
}

/** What a run of the command left behind. */
export interface Run {
  status: number;
  stdout: string;
  stderr: string;
}

/** Runs the command in a folder, as a process of its own. */
export function run(cwd: string, ...words: string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(process.execPath, [command, ...words], { cwd, maxBuffer: 1 << 26 }, (error, stdout, stderr) =>
      resolve({ status: typeof error?.code === 'number' ? error.code : error ? -1 : 0, stdout, stderr }),
    );
  });
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** A new folder holding these files. */
export function folderWith(files: Record<string, string | Uint8Array>): string {
  const folder = mkdtempSync(join(tmpdir(), 'cogweave-'));
  folders.push(folder);
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

/** A small set of the invented exhibit table that is quick to make. */
export const spinner = `name: spinner
kind: planetary
module: 1.5
faceWidth: 5
helix: { form: spur }
bevel: { size: 0 }
sun: { teeth: 18 }
planets: { teeth: 18, count: 3 }
tolerance: 0.03
`;
