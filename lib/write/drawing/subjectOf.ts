import type { Part } from '../../solid/mesh.js';
import type { Spec } from '../../spec/types.js';
import { planetarySubject } from './planetarySubject.js';
import type { Subject } from './subject.js';
import { trainSubject } from './trainSubject.js';

/**
 * What a file asks for, as it is to be shown.
 * @param parts its parts [built here]
 * @throws Refusal when the teeth cannot be made
 */
export function subjectOf(spec: Spec, parts?: readonly Part[]): Subject {
  return spec.kind === 'planetary' ? planetarySubject(spec, parts) : trainSubject(spec, parts);
}
