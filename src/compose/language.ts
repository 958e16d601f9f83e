import { access } from 'node:fs/promises';
import { join } from 'node:path';
import type { Language } from '../core/model/delivery.js';
import { DossierError } from '../core/model/error.js';
import { goodsTable } from '../core/reference/goods.js';
import { type Labels, readLabels } from '../core/words/labels.js';
import { readRemarks, type TranslateRemark, untranslated } from '../core/words/remarks.js';
import { type LoadedTemplates, loadOver, loadTemplates } from './load-words.js';
import { type CarrierTemplates, SHIPPED } from './templates.js';

/** The words of one language, the carrier's own over the shipped ones. */
export interface LanguageWords {
  templates: ReadonlyMap<string, string>;
  /** Path of each template, for error messages. */
  files: ReadonlyMap<string, string>;
  folder: string;
  labels: Labels;
  remarks: TranslateRemark;
}

/** Shipped words by language: they never change, and reading them takes longer than writing a letter. */
const shipped = new Map<Language, LanguageWords>();

/** Throws DossierError `bad-template` when the language has no words, or they can't be read. */
export async function loadLanguageWords(language: Language, own: CarrierTemplates): Promise<LanguageWords> {
  const folder = join(SHIPPED, 'words', language);
  if (own.own !== undefined && [...own.changed].some((name) => name.startsWith(`words/${language}/`))) {
    await mustBeThere(folder, language);
    return languageWords(folder, loadOver(folder, join(own.own, 'words', language)), language);
  }
  const kept = shipped.get(language);
  if (kept !== undefined) return kept;
  await mustBeThere(folder, language);
  const read = languageWords(folder, loadTemplates(folder), language);
  shipped.set(language, read);
  return read;
}

function languageWords(folder: string, loaded: LoadedTemplates, language: Language): LanguageWords {
  const { templates, files, remarks } = loaded;
  return {
    templates,
    files,
    folder,
    labels: readLabels(loaded.labels, loaded.ownLabels),
    remarks: withGoodsNames(remarks === undefined ? untranslated : readRemarks(remarks), language),
  };
}

/** Goods by their Spanish names of the reference library on Spanish pages, where the words do not name them otherwise. */
function withGoodsNames(translate: TranslateRemark, language: Language): TranslateRemark {
  if (language !== 'es') return translate;
  return (group, text) => {
    const words = translate(group, text);
    if (group !== 'goods' || words !== text) return words;
    return goodsTable.find(({ name }) => name === text)?.spanish ?? text;
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
