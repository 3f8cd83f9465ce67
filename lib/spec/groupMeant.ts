import { formsOf, type Guide, wordsOf } from './guide.js';
import { numberMeant } from './nearest.js';

/** Keys of one form of a group, with the value that they have from a single one. */
interface Meant {
  form: Guide;
  part: Record<string, unknown>;
}

/**
 * What a single value stands for where a group is needed: `{ width: 300, depth: 300, height: 300 }` for a bed of 300,
 * `{ form: spur }` for a helix that is spur, `{ shape: hexagon }` for a bore. Undefined where it fits no key.
 */
export function groupMeant(node: Guide, value: unknown): Meant | undefined {
  const number = numberMeant(value);
  for (const form of formsOf(node)) {
    if (!form.properties) continue;
    const part = Number.isNaN(number)
      ? typeof value === 'string' && withWord(form.properties, value)
      : withNumber(form, number);
    if (part) return { form, part };
  }
  return undefined;
}

function withWord(properties: Record<string, Guide>, value: string): Meant['part'] | undefined {
  const word = value.trim().toLowerCase();
  for (const [key, node] of Object.entries(properties)) {
    const found = formsOf(node)
      .flatMap(wordsOf)
      .find((one) => String(one).toLowerCase() === word);
    if (found !== undefined) return { [key]: found };
  }
  return undefined;
}

/** Keys that must be there before others, counts and sizes before pure numbers; keys alike get the same value. */
function withNumber({ properties = {}, required = [] }: Guide, value: number): Meant['part'] | undefined {
  const weight = ([key, { type, unit }]: [string, Guide]) =>
    (required.includes(key) ? 0 : 3) + (type === 'integer' ? 0 : unit ? 1 : 2);
  const [first] = Object.entries(properties)
    .filter(([, node]) => takes(node, value))
    .sort((a, b) => weight(a) - weight(b));
  if (!first) return undefined;
  const [key, node] = first;
  const keys = required.includes(key)
    ? [key]
    : Object.keys(properties).filter((one) => alike(properties[one], node));
  return Object.fromEntries(keys.map((one) => [one, value]));
}

function takes({ type, minimum = 0, maximum = 0 }: Guide, value: number): boolean {
  if (type !== 'number' && !(type === 'integer' && Number.isInteger(value))) return false;
  return value >= minimum && value <= maximum;
}

function alike(a: Guide, b: Guide): boolean {
  return a.type === b.type && a.minimum === b.minimum && a.maximum === b.maximum && a.unit === b.unit;
}
