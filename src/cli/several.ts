import { basename, resolve } from 'node:path';
import { pMapIterable } from 'p-map';
import { DossierError, type Problem } from '../core/model/error.js';
import type { CliContext } from './context.js';
import { EXIT } from './exit.js';
import { escapeControls } from './output.js';
import { describeProblem } from './problems.js';

/** Deliveries that are read side by side: what one waits for the disk, another computes. */
const AT_ONCE = 4;

/** Where the answers of a command over several deliveries go, one after the other. */
export interface Answers<T> {
  answered(folder: string, answer: T): void;
  /** The error stream has the problem already. */
  refused?(folder: string, problem: Problem): void;
}

/**
 * Asks about each folder and hands on each answer as soon as it is known, in the order of the folders; nothing is kept.
 * A folder that is no delivery, or can't be read, is reported and stops none of the others; a bug stops everything.
 */
export async function askEach<T>(
  { output, exit }: CliContext,
  folders: readonly string[],
  ask: (folder: string) => Promise<T>,
  answers: Answers<T>,
): Promise<void> {
  const asked = async (folder: string) => {
    try {
      return { folder, answer: await ask(folder) };
    } catch (error) {
      if (error instanceof DossierError) return { folder, problem: error.toProblem() };
      throw error;
    }
  };
  for await (const one of pMapIterable(folders, asked, { concurrency: AT_ONCE, backpressure: AT_ONCE }))
    if ('answer' in one) answers.answered(one.folder, one.answer);
    else {
      exit(EXIT.badInput);
      const [first = '', ...more] = describeProblem(one.problem);
      output.note(`${output.style('red', escapeControls(one.folder))}: ${first}`);
      for (const line of more) output.note(line);
      answers.refused?.(one.folder, one.problem);
    }
}

/** Room for the names of deliveries in a table whose rows come one by one: as their folders are called. */
export function nameWidth(folders: readonly string[]): number {
  return Math.min(40, Math.max(12, ...folders.map((folder) => [...basename(resolve(folder))].length)));
}
