import { DossierError } from '../core/model/error.js';
import type { Doubt } from '../core/model/results.js';
import type { DoubtedReading } from '../jobs/record-reading.js';
import { askAndRetry, type TypedArguments } from './ask-and-retry.js';
import type { Output } from './output.js';
import { printProblem } from './problems.js';
import { isInteractive, prompt } from './prompts.js';

/** What the person has put aside so far; all of it by --sure. */
type Sure = true | readonly Doubt['is'][];

/**
 * Runs work on typed words. Where they lie far from their kin and a person is present, the person says that they are
 * right, or types others; otherwise the doubts are thrown, and nothing is written.
 */
export async function settleDoubts<T extends { is: string }>(
  output: Output,
  typed: TypedArguments,
  isSure: boolean,
  work: (typed: TypedArguments, sure: Sure) => Promise<T | DoubtedReading>,
  ask: typeof prompt | undefined = isInteractive() ? prompt : undefined,
): Promise<T> {
  let said = typed;
  let sure: Sure = isSure ? true : [];
  for (;;) {
    const settled: Sure = sure;
    const result = await askAndRetry(output, said, async (current) => {
      said = current;
      return work(current, settled);
    });
    if (!isDoubted(result)) return result;
    const [doubt] = result.doubts;
    const [problem] = result.problems;
    if (ask === undefined || doubt === undefined || problem === undefined || sure === true) {
      const { doubtedError } = await import('../jobs/doubts.js');
      throw doubtedError(result.problems);
    }
    const { fix: _fix, ...shown } = problem;
    printProblem(output, shown);
    const answer = await ask(questionOf(doubt));
    if (/^n(?:o)?$/i.test(answer)) throw new DossierError('doubtful', 'nothing was written');
    if (/^y(?:es)?$/i.test(answer)) sure = [...sure, doubt.is];
    else if (answer !== '') said = withAnswer(said, doubt, answer);
  }
}

function isDoubted<T extends { is: string }>(result: T | DoubtedReading): result is DoubtedReading {
  return result.is === 'doubted';
}

function questionOf(doubt: Doubt): string {
  switch (doubt.is) {
    case 'no-time-given':
      return 'When was it? (a time, or now)';
    case 'outside-delivery':
    case 'inspected-before-arrival':
    case 'inspected-after-disposal':
      return 'Is that right? (yes, no, or the right time)';
    case 'far-from-instruction':
    case 'other-unit':
    case 'far-from-neighbours':
      return 'Is that right? (yes, no, or the right temperature)';
    case 'recorded-before':
      return 'Did it happen twice? (yes, no)';
  }
}

/** The words with the answer in the place of what was doubted. */
function withAnswer(typed: TypedArguments, doubt: Doubt, answer: string): TypedArguments {
  switch (doubt.is) {
    case 'no-time-given':
    case 'outside-delivery':
    case 'inspected-before-arrival':
    case 'inspected-after-disposal':
      return { ...typed, fields: { ...typed.fields, at: answer } };
    case 'far-from-instruction':
    case 'other-unit':
      return doubt.field === '--set-point'
        ? { ...typed, fields: { ...typed.fields, setPoint: answer } }
        : { ...typed, word: answer };
    case 'far-from-neighbours':
      return { ...typed, word: answer };
    case 'recorded-before':
      return typed;
  }
}
