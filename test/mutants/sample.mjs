// A plugin for the mutation tester that lets a sample through: one mutant in so many, chosen by a digest of seed and identity.
import { createHash } from 'node:crypto';
import { commonTokens, declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { identityOf } from './identity.mjs';

const chosen = (mutant, { seed, oneIn }) =>
  createHash('sha256')
    .update(JSON.stringify([seed, identityOf(mutant)]))
    .digest()
    .readUInt32BE() %
    oneIn ===
  0;

const sampleOf = ({ sample }) => ({
  init: async () => {},
  group: async (mutants) => [mutants.map(({ id }) => id)],
  check: async (mutants) =>
    Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        chosen(mutant, sample)
          ? { status: 'passed' }
          : { status: 'compileError', reason: 'not in the sample' },
      ]),
    ),
});
sampleOf.inject = tokens(commonTokens.options);

export const strykerPlugins = [declareFactoryPlugin(PluginKind.Checker, 'sample', sampleOf)];
export const strykerValidationSchema = {
  properties: {
    sample: {
      type: 'object',
      properties: { seed: { type: 'integer' }, oneIn: { type: 'integer', minimum: 1 } },
      required: ['seed', 'oneIn'],
    },
  },
};
