#!/usr/bin/env node
// Nothing is imported at once: where even the command's own files cannot be opened, that is to be said like all else.
import('./run.js').then(
  ({ start }) => start(process.argv.slice(2)),
  (error: NodeJS.ErrnoException) => {
    const few = error.code === 'EMFILE' || error.code === 'ENFILE';
    const why = few
      ? 'system: too few files may be open at once; raise the limit (ulimit -n 1024)'
      : `internal error: ${error.message.split('\n')[0]} (is it installed whole?)`;
    process.stderr.write(`cogweave: ${why}\n`);
    process.exitCode = few ? 2 : 3;
  },
);
