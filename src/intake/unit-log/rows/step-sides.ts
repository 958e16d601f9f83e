import type { ClockStep } from '../../../core/model/unit-log.js';
import { type FoundStep, runsBackwards } from './clock-steps.js';

/** Tells on which side of the steps of a clock a row stands, and counts the rows that others hide. */
export class StepSides {
  readonly #found: readonly FoundStep[];
  readonly #sign: 1 | -1;
  readonly #hidden: number[];

  constructor(times: readonly number[], found: readonly FoundStep[]) {
    this.#found = found;
    // In a log that runs backwards the rows after a step stand above it.
    this.#sign = found.length > 0 && runsBackwards(times) ? -1 : 1;
    this.#hidden = found.map(() => 0);
  }

  #isAfter(index: number, step: FoundStep): boolean {
    return this.#sign * (index - step.index) >= 0;
  }

  /** Whether two rows of one time stand on two sides of a step, so that they are of two times. */
  hides(index: number, kept: number): boolean {
    const between = this.#found.findIndex((step) => this.#isAfter(index, step) !== this.#isAfter(kept, step));
    if (between < 0) return false;
    this.#hidden[between] = (this.#hidden[between] ?? 0) + 1;
    return true;
  }

  steps(lineOf: (index: number) => number): ClockStep[] {
    return this.#found.map(({ index, ...step }, i) => ({
      row: lineOf(index),
      ...step,
      hiddenRows: this.#hidden[i] ?? 0,
    }));
  }
}
