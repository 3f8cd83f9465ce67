import { type Combine, combineWith } from './kernel/combine.js';

/** Joins solids to a body and cuts them from it. */
export interface Kernel {
  combine: Combine;
}

let starting: Promise<Kernel> | undefined;

/**
 * The kernel for booleans of solids (manifold-3d, WebAssembly), loaded when it is first asked for and once only.
 * Everything else works without it.
 * @throws Error where the module cannot be fetched; asking again tries again
 */
export function loadKernel(): Promise<Kernel> {
  starting ??= start().catch((error) => {
    starting = undefined;
    throw error;
  });
  return starting;
}

async function start(): Promise<Kernel> {
  const { default: load } = await import('manifold-3d');
  const kernel = await load();
  kernel.setup();
  return { combine: combineWith(kernel) };
}
