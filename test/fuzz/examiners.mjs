// Files examined in a process of their own, so that one that never ends or takes all memory ends nothing else.
import { fork } from 'node:child_process';

/** What a file that is accepted may take at most. */
export const MOST_SECONDS = 20;
export const MOST_MEGABYTES = 1024;
/** A process that has held more is not taken for the next file, so that what that one takes shows. */
const USED_MEGABYTES = 450;
/** Reading, proving, trying every offer: a file that takes longer is ended, seconds. */
const ENDED_AFTER = 600;
/** Memory at which a process gives up by itself, MB. */
const HEAP = 3000;

/**
 * Examines files one after the other.
 * @returns { examined(file), close() }: what became of a file of `parameterFile`, with a fault where it took too long,
 * too much, or its process ended
 */
export function examiners() {
  let child;
  const close = () => child?.kill('SIGKILL');
  return {
    close,
    async examined(file) {
      child ??= await started();
      let result = await ask(child, file);
      // What files before this one left behind is none of its own.
      if (!result.ended && result.cost?.megabytes > MOST_MEGABYTES && child.asked > 1) {
        close();
        child = await started();
        result = await ask(child, file);
      }
      if (result.ended || result.cost?.megabytes > USED_MEGABYTES) {
        close();
        child = undefined;
      }
      return withExcess(result);
    },
  };
}

/** A result whose cost is too high is a find. */
export function withExcess({ ended, ...result }) {
  const { seconds, megabytes } = result.cost ?? {};
  const faults = [...result.faults];
  if (seconds > MOST_SECONDS) faults.push(`takes ${seconds} s: more than ${MOST_SECONDS}`);
  if (megabytes > MOST_MEGABYTES) faults.push(`takes ${megabytes} MB: more than ${MOST_MEGABYTES}`);
  return { ...result, faults };
}

function started() {
  const script = new URL('examiner.mjs', import.meta.url);
  const child = fork(script, { execArgv: [`--max-old-space-size=${HEAP}`], stdio: ['ignore', 2, 2, 'ipc'] });
  child.asked = 0;
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('message', () => resolve(child));
  });
}

/** What it answers; `ended` where it never does. */
function ask(child, file) {
  child.asked++;
  return new Promise((resolve) => {
    const finish = (result) => {
      clearTimeout(timer);
      child.off('message', finish);
      child.off('exit', gone);
      resolve(result);
    };
    const crashed = (fault) => finish({ ended: true, outcome: 'crashed', faults: [fault] });
    const gone = (code, signal) => crashed(`its process ended with ${signal ?? code}`);
    const timer = setTimeout(() => crashed(`has not ended after ${ENDED_AFTER} s`), 1000 * ENDED_AFTER);
    child.on('message', finish);
    child.on('exit', gone);
    child.send(file);
  });
}
