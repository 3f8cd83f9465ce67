import { specJsonSchema } from './jsonSchema.js';
import { kindMeant } from './kinds.js';
import { isMapping } from './plainData.js';
import type { Kind } from './types.js';

/** The part of a JSON Schema that messages and offers are made from. */
export interface Guide {
  type?: string;
  properties?: Record<string, Guide>;
  required?: string[];
  anyOf?: Guide[];
  oneOf?: Guide[];
  enum?: (string | boolean)[];
  const?: string | boolean;
  minimum?: number;
  maximum?: number;
  pattern?: string;
  maxLength?: number;
  default?: unknown;
  examples?: unknown[];
  unit?: string;
  /** How the default follows from other values, where it does. */
  defaultRule?: string;
}

let root: Guide | undefined;

/** The schema of the whole file, made once. */
export function guide(): Guide {
  root ??= specJsonSchema() as Guide;
  return root;
}

/** The schema of one kind of file. */
export function guideOf(kind: Kind): Guide {
  return formsOf(guide()).find((form) => form.properties?.kind.const === kind)!;
}

/** Alternatives of a parameter that may take several forms, flat; just itself for any other. */
export function formsOf(node: Guide): Guide[] {
  const forms = node.properties ? undefined : (node.anyOf ?? node.oneOf);
  return forms ? forms.flatMap(formsOf) : [node];
}

/** The words that a form allows. */
export function wordsOf(form: Guide): (string | boolean)[] {
  return form.enum ?? (form.const === undefined ? [] : [form.const]);
}

/**
 * What is known of the parameter at `path`, given the data it stands in (the shape of a bore decides which sizes
 * it has). Undefined where the schema knows no such parameter.
 */
export function guideAt(path: readonly string[], data: unknown): Guide | undefined {
  // The kind itself is a choice between all of them; everything else is judged by the kind that is meant.
  let node: Guide | undefined = path[0] === 'kind' ? guide() : guideOf(kindMeant(data));
  let value = data;
  for (const key of path) {
    if (!node) return undefined;
    node = child(node, key, value);
    value = isMapping(value) ? value[key] : undefined;
  }
  return node;
}

/** Every parameter's dotted path, groups included; where there are several forms or kinds, the keys of all of them. */
export function knownPaths(node: Guide = guide(), prefix = ''): string[] {
  const paths = new Set<string>();
  for (const form of formsOf(node))
    for (const [key, below] of Object.entries(form.properties ?? {})) {
      paths.add(prefix + key);
      for (const path of knownPaths(below, `${prefix}${key}.`)) paths.add(path);
    }
  return [...paths];
}

/** Of the mapping forms of a parameter, the one that `value` is meant to be, by its word keys (such as `shape`). */
export function formFor(node: Guide, value: unknown): Guide | undefined {
  const forms = formsOf(node).filter((form) => form.properties);
  const fits = forms.filter((form) =>
    Object.entries(form.properties!).every(
      ([key, below]) =>
        below.const === undefined || (isMapping(value) && (value[key] ?? false) === below.const),
    ),
  );
  return fits[0] ?? (forms.length === 1 ? forms[0] : undefined);
}

function child(node: Guide, key: string, value: unknown): Guide | undefined {
  const form = formFor(node, value);
  if (form) return own(form.properties, key);
  // No form fits: what remains is the choice between the words that tell the forms apart.
  const words = formsOf(node).flatMap((each) => own(each.properties, key)?.const ?? []);
  return words.length ? { type: 'string', enum: words } : undefined;
}

function own(properties: Record<string, Guide> | undefined, key: string): Guide | undefined {
  return properties && Object.hasOwn(properties, key) ? properties[key] : undefined;
}
