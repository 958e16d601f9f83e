import { access } from 'node:fs/promises';
import { join } from 'node:path';
import type { Language } from '../core/model/delivery.js';
import { DossierError } from '../core/model/error.js';
import { type Labels, readLabels } from '../core/words/labels.js';
import { asWritten, type Remarks, readRemarks } from '../core/words/remarks.js';
import { loadOver, loadTemplates } from './load-words.js';
import { type OwnTemplates, SHIPPED } from './templates.js';

/** What is said in one language, the carrier's own words over the shipped ones. */
export interface LanguageWords {
  templates: ReadonlyMap<string, string>;
  /** Where each template lies, for error messages. */
  files: ReadonlyMap<string, string>;
  folder: string;
  labels: Labels;
  remarks: Remarks;
}

/** Throws DossierError `bad-template` when there are no words in the language, or when they can't be read. */
export async function wordsIn(language: Language, own: OwnTemplates): Promise<LanguageWords> {
  const folder = join(SHIPPED, 'words', language);
  await mustBeThere(folder, language);
  const hasWords = [...own.changed].some((name) => name.startsWith(`words/${language}/`));
  const loaded =
    own.own !== undefined && hasWords
      ? await loadOver(folder, join(own.own, 'words', language))
      : await loadTemplates(folder);
  const { templates, files, remarks } = loaded;
  return {
    templates,
    files,
    folder,
    labels: readLabels(loaded.labels, join(folder, 'labels.yaml'), loaded.ownLabels),
    remarks: remarks === undefined ? asWritten : readRemarks(remarks.text, remarks.file),
  };
}

async function mustBeThere(folder: string, language: string): Promise<void> {
  try {
    await access(join(folder, 'labels.yaml'));
  } catch (cause) {
    throw new DossierError('bad-template', `there are no words in the language "${language}"`, {
      where: { file: folder },
      fix: 'Set show.language to en in delivery.yaml, or give a templates folder that has the language.',
      cause,
    });
  }
}
