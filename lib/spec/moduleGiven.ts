import type { Spec } from './types.js';

/** The parameter of a file that sizes its teeth, and what the file gives for it, mm. */
export interface ModuleGiven {
  path: 'module' | 'transverseModule';
  value: number;
}

/** Transverse modules of files that gave those, by what was resolved of them: a resolved file has the normal module. */
const transverse = new WeakMap<Spec, number>();

/** Keeps in mind that a file gave its transverse module, mm; nothing to keep where it gave none. */
export function withModuleGiven<S extends Spec>(spec: S, transverseModule: number | undefined): S {
  if (transverseModule !== undefined) transverse.set(spec, transverseModule);
  return spec;
}

/** How the module stands in the file that was resolved: what is offered must go there. */
export function moduleGiven(spec: Spec): ModuleGiven {
  const value = transverse.get(spec);
  return value === undefined
    ? { path: 'module', value: spec.module }
    : { path: 'transverseModule', value: value };
}
