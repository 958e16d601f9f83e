import fc from 'fast-check';

/**
 * How many cases of each property are tried. `npm test` takes the same cases each time, so that a gate says the same
 * of the same code on every machine; `PROPERTY_TIMES=100 npm test` looks for counterexamples among 100 times as many,
 * new ones at every run, and names the seed of what it finds.
 */
const TIMES = Number(import.meta.env.PROPERTY_TIMES || 1);
if (!Number.isInteger(TIMES) || TIMES < 1) throw new Error('PROPERTY_TIMES is a whole number from 1 on');
const A_PROPERTY_MAY_TAKE = 40_000;

/** So many cases in `npm test`, and so many times more where more are asked for. */
export const cases = (count: number): number => count * TIMES;

/**
 * Of a sweep over all places of something, `npm test` tries every `step`th, and `npm run check:outside` each of them. Files
 * that have one are named `*.sweep.test.ts`.
 */
export const sweepStep = (step: number): number => (import.meta.env.WHOLE_SWEEPS ? 1 : step);

fc.configureGlobal({
  numRuns: cases(100),
  ...(TIMES === 1
    ? { seed: 20_260_901 }
    : { interruptAfterTimeLimit: A_PROPERTY_MAY_TAKE, markInterruptAsFailure: false }),
});
