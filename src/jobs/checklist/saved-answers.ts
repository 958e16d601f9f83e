import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { unreadable } from '../../record/disk/disk-error.js';
import { type ChecklistAnswers, readAnswers } from './file.js';

/** Beside the record, in the form in which a checklist may be typed: nothing of it counts before it is entered. */
const FILE = 'checklist-answers.txt';

/** The answers of a form that is being typed in, kept beside the record until it is entered. */
export interface SavedAnswers {
  /** Path of the file. */
  file: string;
  /** What an earlier sitting left; empty where there was none. */
  answers: ChecklistAnswers;
  save(answers: ChecklistAnswers): Promise<void>;
  remove(): Promise<void>;
}

/** Opens what an earlier sitting left for the form of a delivery. Throws DossierError for a file that was made unreadable. */
export async function openSavedAnswers(folder: string, boxes: number): Promise<SavedAnswers> {
  const file = join(folder, FILE);
  const text = await readFile(file, 'utf8').catch((cause: NodeJS.ErrnoException) => {
    if (cause.code === 'ENOENT') return '';
    throw unreadable(file, cause);
  });
  return {
    file,
    answers: readAnswers(text, boxes, FILE),
    save: (answers) =>
      writeFile(
        file,
        [...answers]
          .sort(([a], [b]) => a - b)
          .map(([number, answer]) => `${number}: ${answer.replaceAll(/[\r\n]+/g, ' ')}\n`)
          .join(''),
      ),
    remove: () => rm(file, { force: true }),
  };
}
