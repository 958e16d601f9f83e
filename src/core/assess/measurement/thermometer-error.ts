import type { InstrumentRecord } from '../../model/results.js';
import { timeOfCheck } from './instruments.js';

/** What checks in ice water say of the error of a thermometer at one time. */
export interface ThermometerError {
  /** To be taken off what was read, K. */
  errorKelvin: number;
  /** Half of what the error changed by between the checks on both sides; absent where there is a check on one side alone. */
  driftKelvin?: number;
}

/**
 * The error at a time: along a straight line between the last check before it and the first after it, else that of the
 * nearest check; undefined without any. A check without a time is taken for one before all readings.
 */
export function errorAt({ checks }: InstrumentRecord, at: number | undefined): ThermometerError | undefined {
  const before = at === undefined ? checks.at(-1) : checks.findLast((one) => timeOfCheck(one) <= at);
  const after = at === undefined ? undefined : checks.find((one) => timeOfCheck(one) > at);
  if (before === undefined || after === undefined) {
    const only = before ?? after;
    return only === undefined ? undefined : { errorKelvin: only.errorKelvin };
  }
  const change = after.errorKelvin - before.errorKelvin;
  const share =
    before.at === undefined || at === undefined || after.at === undefined
      ? 1 / 2
      : (at - before.at) / (after.at - before.at);
  return { errorKelvin: before.errorKelvin + change * share, driftKelvin: Math.abs(change) / 2 };
}
