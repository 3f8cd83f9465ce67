// Plugins for the mutation tester: a checker that lets only the mutants of the sample through, and a reporter that names
// each one that lives as soon as it is known.
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { described, identityOf, inSample, lives, reasonFor } from './mutant.mjs';

const checkerOf = ({ sample }) => ({
  init: async () => {},
  group: async (mutants) => [mutants.map(({ id }) => id)],
  check: async (mutants) =>
    Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        inSample(identityOf(mutant, 0), sample)
          ? { status: 'passed' }
          : { status: 'compileError', reason: 'not in the sample' },
      ]),
    ),
});
checkerOf.inject = tokens(commonTokens.options);

const reporterOf = () => ({
  onMutantTested(result) {
    if (!lives(result)) return;
    const reason = reasonFor(result);
    console.log(described(result) + (reason ? `\n  equivalent: ${reason}` : ''));
  },
});

export const strykerPlugins = [
  declareFactoryPlugin(PluginKind.Checker, 'sample', checkerOf),
  declareFactoryPlugin(PluginKind.Reporter, 'living', reporterOf),
];
export const strykerValidationSchema = {
  properties: {
    sample: {
      type: 'object',
      properties: { seed: { type: 'integer' }, oneIn: { type: 'integer', minimum: 0 } },
      required: ['seed', 'oneIn'],
    },
  },
};
