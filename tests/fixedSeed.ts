/**
 * Generated cases are the same in every run, so that a run can be repeated; other ones by
 * `ROUNDHAND_SEED=7 npx vitest run tests/laws`. A case that fails there is a fault to look into.
 */
import fc from 'fast-check';

const DEFAULT_SEED = 4736;

fc.configureGlobal({ seed: Number(process.env.ROUNDHAND_SEED ?? DEFAULT_SEED) });
