import type { Clock } from '../core/ports/clock.js';
import { broken, type RuleResult, Rules } from './rules.js';

const FIRST_YEAR = 1970;
const LAST_YEAR = 9999;
const CALLS = 100;

/** Tries a clock against the contract of `Clock`. Never rejects. */
export async function checkClock(clock: Clock): Promise<RuleResult[]> {
  const rules = new Rules();
  await rules.try('It gives valid dates of the years 1970 to 9999, each time it is asked', async () => {
    for (let call = 1; call <= CALLS; call += 1) {
      const at: unknown = clock();
      if (!(at instanceof Date) || Number.isNaN(at.getTime())) broken(`call ${call} gave no valid Date`);
      const year = at.getUTCFullYear();
      if (year < FIRST_YEAR || year > LAST_YEAR) broken(`call ${call} gave the year ${year}`);
    }
  });
  await rules.try('Each call gives a Date of its own', async () => {
    const first = clock();
    if (clock() === first) broken('two calls gave the same object, so that changing one changes the other');
  });
  return rules.results;
}
