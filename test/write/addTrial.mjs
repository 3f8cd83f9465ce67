// Adds a trial to a log: node addTrial.mjs LOG NOTES. Prints what it is told on the way.
import { addToLogFile } from '../../dist/lib/write/trials/logFile.js';

const [, , log, notes] = process.argv;
await addToLogFile(
  log,
  { gap: 0.3, outcome: 'free', notes },
  { say: (words) => process.stdout.write(`${words}\n`) },
);
