// A plugin for the mutation tester: a checker that lets only the mutants of the sample through.
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { identityOf, inSample } from './identity.mjs';

const checkerOf = ({ sample }) => ({
  init: async () => {},
  group: async (mutants) => [mutants.map(({ id }) => id)],
  check: async (mutants) =>
    Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        inSample(identityOf(mutant), sample)
          ? { status: 'passed' }
          : { status: 'compileError', reason: 'not in the sample' },
      ]),
    ),
});
checkerOf.inject = tokens(commonTokens.options);

export const strykerPlugins = [declareFactoryPlugin(PluginKind.Checker, 'sample', checkerOf)];
export const strykerValidationSchema = {
  properties: {
    sample: {
      type: 'object',
      properties: { seed: { type: 'integer' }, oneIn: { type: 'integer', minimum: 0 } },
      required: ['seed', 'oneIn'],
    },
  },
};
