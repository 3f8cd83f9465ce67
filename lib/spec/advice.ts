import { groupMeant } from './groupMeant.js';
import { formsOf, type Guide, wordsOf } from './guide.js';
import { namePattern, nameRule, nearestName } from './name.js';
import { clamp, closest, numberMeant } from './nearest.js';

/** What a parameter must be, as words that follow `must be`. */
export function describeGuide(node: Guide): string {
  const forms = formsOf(node);
  if (forms.length > 1) {
    const words = forms.flatMap(wordsOf);
    const shapes = forms.flatMap((form) => form.properties?.shape?.const ?? []);
    const mapping = forms.find((form) => form.properties);
    const keys = shapes.length ? `the shape ${either(shapes)}` : keysOf(mapping);
    return [...(words.length ? [either(words)] : []), `a mapping with ${keys}`].join(', or ');
  }
  const words = wordsOf(node);
  if (words.length) return either(words);
  const unit = node.unit ? ` ${node.unit}` : '';
  switch (node.type) {
    case 'integer':
      return `a whole number from ${node.minimum} to ${node.maximum}${unit}`;
    case 'number':
      return `a number from ${node.minimum} to ${node.maximum}${unit}`;
    case 'string':
      return node.pattern === namePattern
        ? nameRule
        : `text of at most ${node.maxLength} letters and signs of ASCII`;
    default:
      return `a mapping with ${keysOf(node)}`;
  }
}

/** The nearest values that a parameter could hold in place of `value`; empty where none can be named. */
export function nearestTo(node: Guide, value: unknown): unknown[] {
  const words = formsOf(node).flatMap(wordsOf);
  const usual = node.default ?? node.examples?.[0];
  const isWord = words.some((word) => String(word).toLowerCase() === String(value).trim().toLowerCase());
  const meant = isWord ? undefined : groupMeant(node, value);
  if (meant) return [{ ...leastMapping(meant.form), ...meant.part }];
  if (words.length) {
    if (typeof value === 'string') {
      const meant = closest(value, words.map(String));
      return [words.find((word) => String(word) === meant)];
    }
    return [usual ?? words[0]];
  }
  if (node.type === 'number' || node.type === 'integer') {
    const meant = numberMeant(value);
    if (Number.isNaN(meant)) return [usual ?? node.minimum];
    return [clamp(node.type === 'integer' ? Math.round(meant) : meant, node.minimum!, node.maximum!)];
  }
  if (node.type === 'string')
    return [typeof value === 'string' ? (nearestText(node, value) ?? usual) : usual];
  if (usual !== undefined) return [usual];
  return node.properties ? [leastMapping(node)] : [];
}

/** A mapping that holds no more than it must. */
function leastMapping({ properties = {}, required = [] }: Guide): Record<string, unknown> {
  return Object.fromEntries(required.map((key) => [key, nearestTo(properties[key], undefined)[0]]));
}

/** A name, or a text of ASCII, that is near to another one; undefined where nothing of that can stay. */
function nearestText({ pattern, maxLength }: Guide, text: string): string | undefined {
  if (pattern === namePattern) return nearestName(text, '') || undefined;
  const ascii = text.normalize('NFKD').replace(/[^ -~]/g, '');
  return ascii.slice(0, maxLength).trim() || undefined;
}

function keysOf(form: Guide | undefined): string {
  const keys = Object.keys(form?.properties ?? {});
  return `the ${keys.length === 1 ? 'key' : 'keys'} ${keys.join(', ')}`;
}

function either(words: readonly (string | boolean)[]): string {
  const last = words[words.length - 1];
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} or ${last}` : String(last);
}
