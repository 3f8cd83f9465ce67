// A plugin of typedoc: the types of parameter files are inferred from their schema, and their properties are described in
// its words, so that unit, range, default and source stand in one place.
import { Comment, Converter, ReflectionKind } from 'typedoc';
import { specJsonSchema } from '../dist/lib/index.js';

const roots = {
  PlanetarySpec: 'planetary',
  PairSpec: 'pair',
  RackSpec: 'rack',
  GearSpec: 'gear',
  CommonSpec: 'pair',
};

export function load(app) {
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => {
    const kinds = specJsonSchema().oneOf;
    const seen = new Set();
    for (const [name, kind] of Object.entries(roots))
      describe(
        project.getChildByName([name]),
        kinds.find(({ properties }) => properties.kind.const === kind),
        { seen, logger: app.logger },
      );
  });
}

/** Gives every property of a type the words of its parameter, and goes on to the types of those. */
function describe(type, node, run) {
  if (run.seen.has(type)) return;
  run.seen.add(type);
  // What a type was inferred from is no type of ours.
  type.extendedTypes = type.extendedTypes?.filter(({ reflection }) => reflection);
  for (const property of type.children ?? []) {
    if (!property.inheritedFrom?.reflection) delete property.inheritedFrom;
    delete property.defaultValue;
    const forms = formsOf(node).filter(({ properties }) => properties?.[property.name]);
    const parameter = forms[0]?.properties[property.name] ?? {};
    if (!property.comment && parameter.description)
      property.comment = new Comment([{ kind: 'text', text: wordsOf(parameter) }]);
    // Undescribed: a warning, which fails the description. Words that tell shapes apart say enough themselves.
    if (!property.comment && type.kindOf(ReflectionKind.Interface))
      run.logger.warn(`${type.name}.${property.name} is described nowhere`);
    follow(property.type, parameter, run);
  }
}

function follow(type, node, run) {
  if (type?.type === 'union' || type?.type === 'intersection')
    for (const one of type.types) follow(one, node, run);
  const declared = type?.type === 'reflection' ? type.declaration : type?.reflection;
  if (!declared) return;
  if (declared.type) follow(declared.type, node, run);
  describe(declared, node, run);
}

function formsOf(node) {
  const forms = node.properties ? undefined : (node.anyOf ?? node.oneOf);
  return forms ? forms.flatMap(formsOf) : [node];
}

function wordsOf({ description, unit, minimum, maximum, default: usual, defaultRule, source }) {
  const range = minimum === undefined ? '' : ` From ${minimum} to ${maximum}${unit ? ` ${unit}` : ''}.`;
  const rule = defaultRule ?? (typeof usual === 'object' ? undefined : usual);
  return `${description}.${range}${rule ? ` Default: ${rule}.` : ''}${source ? ` Source: ${source}.` : ''}`;
}
