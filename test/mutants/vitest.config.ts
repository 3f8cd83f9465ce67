import { relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Quick files first, since the first failure ends a mutant's run; what failed last says nothing about the next one. */
class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const took = ({ project, moduleId }: TestSpecification) =>
      this.ctx.cache.getFileTestResults(`${project.name}:${relative(this.ctx.config.root, moduleId)}`)
        ?.duration ?? 0;
    return [...files].sort((a, b) => took(a) - took(b));
  }
}

/**
 * How tests are run against mutants. A configuration of its own, because here thousands of short runs follow one another:
 * all files of a run share one worker (loading the modules anew for each takes longer than most files' tests), and only
 * those near the mutants are asked, which mutants.mjs names.
 */
export default defineConfig({
  test: {
    include: JSON.parse(process.env.MUTANTS_TESTS ?? '["test/**/*.test.ts"]'),
    setupFiles: ['test/seed.ts'],
    testTimeout: 300_000,
    isolate: false,
    sequence: { sequencer: QuickFirst },
  },
});
