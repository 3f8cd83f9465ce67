// Loaded before a command (`node --import`): at the Kth call of one of node:fs/promises' functions it sends the process a
// signal or stands still for ever, as FAULT_AT says: "SIGKILL rename 2", "stall open 1".
import promises from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';

const [what, name, count] = (process.env.FAULT_AT ?? '').split(' ');
const real = promises[name];
let calls = 0;
promises[name] = async (...words) => {
  if (++calls !== Number(count)) return real(...words);
  process.stdout.write(`at ${name} ${count}\n`);
  if (what !== 'stall') {
    process.kill(process.pid, what);
    await new Promise((resolve) => setTimeout(resolve, 100));
    return real(...words);
  }
  // Nothing else keeps the process alive.
  setInterval(() => {}, 1000);
  return new Promise(() => {});
};
syncBuiltinESMExports();
