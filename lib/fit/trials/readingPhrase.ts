import { refuse } from '../../refusal.js';
import type { Feature } from './trialSchema.js';

/** A reading as it is typed: `sun base tangent length over 3 teeth 11.52 = 11.60 on the first layer`. */
export interface ReadingPhrase {
  feature: Feature;
  part?: string;
  teeth?: number;
  /** Left out where a sheet says it, mm. */
  drawn?: number;
  /** mm. */
  read: number;
  perWall?: number;
  firstLayer?: true;
}

const featureWords: Record<string, Feature> = {
  'base tangent length': 'base tangent length',
  'base tangent': 'base tangent length',
  'over pins': 'over pins',
  'between pins': 'over pins',
  'tip diameter': 'tip diameter',
  'root diameter': 'root diameter',
  'outer diameter': 'outer diameter',
  bore: 'bore',
  bar: 'bar',
  hole: 'hole',
};

const decimal = String.raw`(\d+(?:\.\d+)?|\.\d+)(?: ?mm)?`;
const phrase = new RegExp(
  [
    String.raw`^(?:([a-z][\w-]*) )?`,
    `(${Object.keys(featureWords).join('|')})`,
    String.raw`(?: over (\d+) teeth)?`,
    `(?: ${decimal})?`,
    ` ?= ?${decimal}`,
    String.raw`(?: per wall (-?\d+(?:\.\d+)?))?`,
    '( (?:on |at )?(?:the )?first layer)?$',
  ].join(''),
  'i',
);

/**
 * A reading from its phrase: `[PART] FEATURE [over K teeth] [DRAWN] = READ [per wall N] [on the first layer]`.
 * @throws Refusal for the parameter `reading`
 */
export function readPhrase(text: string): ReadingPhrase {
  const plain = text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/(base)-(tangent)|(over|between)-(pins)/gi, '$1$3 $2$4');
  const found = phrase.exec(plain);
  const rule = 'must be FEATURE DRAWN = READ, with a sheet PART FEATURE = READ; lengths in mm';
  if (!found)
    refuse('wrong-form', 'reading', text, rule, [
      'bar 20 = 20.12',
      'hole 5 = 4.83',
      'sun base tangent length = 11.60',
    ]);
  const [, part, feature, teeth, drawn, read, perWall, firstLayer] = found;
  return {
    feature: featureWords[feature.toLowerCase()],
    ...(part && { part: part.toLowerCase() }),
    ...(teeth && { teeth: Number(teeth) }),
    ...(drawn && { drawn: Number(drawn) }),
    read: Number(read),
    ...(perWall && { perWall: Number(perWall) }),
    ...(firstLayer && { firstLayer: true as const }),
  };
}
