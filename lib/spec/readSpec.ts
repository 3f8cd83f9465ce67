import { type Document, isAlias, isScalar, LineCounter, parseAllDocuments, visit } from 'yaml';
import type { ProblemCode } from '../problemCode.js';
import { type Problem, problemOf, refuse, refuseAll } from '../refusal.js';
import { asProfile, type Profile, resolveProfile, withProfile } from './profileFile.js';
import { resolveSpec } from './resolveSpec.js';
import { guardText } from './textGuards.js';
import type { Spec } from './types.js';

/** References (`*name`) that a file may use. */
const MOST_ALIASES = 20;
/** Faults of the notation itself that are listed: later ones mostly follow from the first. */
const MOST_FAULTS = 5;

/**
 * A parameter file, YAML or JSON, checked and with every default filled in. Lengths in mm, angles in degrees.
 * @param text at most 1 MB
 * @param fallbackName base name where the file gives none, usually the file's own [planetary-set]
 * @param profile from `readProfile`: printer, filament and fit where the file gives none of its own
 * @throws Refusal with every problem found; `file` is the parameter where the text itself is the problem
 * @example readSpec('{ kind: planetary, module: 1.5, faceWidth: 20, sun: { teeth: 15 }, planets: { teeth: 15, count: 5 } }')
 */
export function readSpec(text: string, fallbackName?: string, profile: Profile = {}): Spec {
  return resolveSpec(withProfile(readData(text), profile), fallbackName);
}

/**
 * A profile file, YAML or JSON: `printer`, `filament` and `fit` as a parameter file has them, checked.
 * @param text at most 1 MB
 * @throws Refusal with every problem found, each parameter beginning with `profile`
 * @example readProfile('printer: { profile: large, growth: 0.04 }')
 */
export function readProfile(text: string): Profile {
  let data: unknown;
  try {
    data = readData(text);
  } catch (error) {
    throw asProfile(error);
  }
  return resolveProfile(data);
}

/**
 * The data in a YAML or JSON text.
 * @param mostTokens marks, words and breaks that it may have [20 000]
 * @throws Refusal for text that is empty, binary, over 1 MB or nested too deeply, faults of the notation, several
 * documents, keys given twice, tags, and more than a few references
 */
export function readData(text: string, mostTokens?: number): unknown {
  const body = text.replace(/^\ufeff/, '');
  guardText(body, mostTokens);
  const lines = new LineCounter();
  const documents = parseAllDocuments(body, {
    lineCounter: lines,
    logLevel: 'silent',
    prettyErrors: false,
    // Ours below takes time in proportion to the keys; the reader's own compares each with each.
    uniqueKeys: false,
  });
  if (!Array.isArray(documents) || documents.length === 0) refuse('empty', 'file', '', 'is empty');
  const [document, second] = documents;
  const problems = [...faultsOf(document, lines), ...structureFaults(document, lines)];
  const rule = 'must hold one document: leave out the lines of ---';
  if (second) problems.push(problemOf('not-yaml', 'file', `${documents.length} documents`, rule));
  refuseAll(problems.slice(0, MOST_FAULTS));
  try {
    return document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch {
    refuse('not-yaml', 'file', 'references', 'refer to themselves, to nothing, or to too much');
  }
}

function faultsOf(document: Document, lines: LineCounter): Problem[] {
  return [...document.errors, ...document.warnings].map(({ message, pos: [at] }) => {
    const rule = `is neither YAML nor JSON: ${message.split('\n')[0]}`;
    return problemOf('not-yaml', 'file', `line ${lines.linePos(at).line}`, rule);
  });
}

function structureFaults(document: Document, lines: LineCounter): Problem[] {
  const problems: Problem[] = [];
  const report = (code: ProblemCode, at: number | undefined, rule: string) =>
    problems.push(problemOf(code, 'file', `line ${lines.linePos(at ?? 0).line}`, rule));
  let aliases = 0;
  visit(document, {
    Node(_, node) {
      if (isAlias(node) && ++aliases === MOST_ALIASES + 1)
        report('too-large', node.range?.[0], `holds more than ${MOST_ALIASES} references`);
    },
    Map(_, map) {
      const seen = new Set<unknown>();
      for (const { key } of map.items) {
        const name = isScalar(key) ? String(key.value) : undefined;
        const at = isScalar(key) ? key.range?.[0] : map.range?.[0];
        if (name === undefined) report('not-yaml', at, 'has a key that is no word');
        else if (seen.has(name)) report('given-twice', at, `gives the key ${name} twice`);
        seen.add(name);
      }
    },
  });
  return problems;
}
