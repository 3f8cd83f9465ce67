import fc from 'fast-check';

// The same random cases each time, so that a change alone can turn the tests red; `SEED=random npm test` draws others,
// and `npm run fuzz` searches on for a night.
if (process.env.SEED !== 'random') fc.configureGlobal({ seed: Number(process.env.SEED ?? 1340) });
