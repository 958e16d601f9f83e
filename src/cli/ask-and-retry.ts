import { DossierError } from '../core/model/error.js';
import type { Output } from './output.js';
import { printProblem } from './problems.js';
import { isInteractive, promptChoice } from './prompts.js';

/** What a person typed: the main word, and the options by name. */
export interface TypedArguments {
  word: string | undefined;
  fields: Record<string, unknown>;
}

/** Prompts before giving up: more wrong answers than a person gives. */
const MOST_QUESTIONS = 8;

/**
 * Runs work on typed words. Where a word is ambiguous and a person is present, the person chooses and the work is
 * repeated; otherwise the error with its choices is thrown.
 */
export async function askAndRetry<T>(
  output: Output,
  typed: TypedArguments,
  work: (typed: TypedArguments) => Promise<T>,
  ask: typeof promptChoice | undefined = isInteractive() ? promptChoice : undefined,
): Promise<T> {
  let said = typed;
  for (let asked = 0; ; asked += 1) {
    try {
      return await work(said);
    } catch (error) {
      if (!(error instanceof DossierError) || error.choices === undefined || ask === undefined) throw error;
      if (asked >= MOST_QUESTIONS) throw error;
      const { fix: _fix, ...problem } = error.toProblem();
      printProblem(output, problem);
      const field = error.where.field ?? '';
      const answer = await ask('Which is meant', error.choices);
      said = field.startsWith('--')
        ? { ...said, fields: { ...said.fields, [optionName(field)]: answer } }
        : { ...said, word: answer };
    }
  }
}

/** Converts `--shown-by` to `shownBy`. */
function optionName(field: string): string {
  return field.slice(2).replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** Prompts until the check accepts the answer: a typing error costs one answer, not all before it. */
export async function askUntilValid(
  output: Output,
  ask: () => Promise<string>,
  check: (answer: string) => void,
): Promise<string> {
  for (;;) {
    const answer = await ask();
    try {
      check(answer);
      return answer;
    } catch (error) {
      if (!(error instanceof DossierError)) throw error;
      printProblem(output, error.toProblem());
    }
  }
}
