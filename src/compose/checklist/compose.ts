import { join } from 'node:path';
import type { Delivery, Language, Paper } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import type { RuleSet } from '../../core/model/rule-set.js';
import type { Instant } from '../../core/model/time.js';
import { type Labels, readLabels } from '../../core/words/labels.js';
import { cleanDeep, drawableCodePoints, glyphCleaner } from '../glyphs.js';
import { yamlFile } from '../load-words.js';
import { SHIPPED } from '../shipped.js';
import { typeset } from '../typeset.js';
import { checklistDocument } from './document.js';
import { checklistParts } from './parts.js';

export interface ComposeChecklistInput {
  delivery: Delivery;
  ruleSet: RuleSet;
  language: Language;
  paper: Paper;
  madeAt: Instant;
  /** Also the page for an inspection certificate, whose boxes come last. */
  inspection?: boolean;
  /** Folder of templates instead of the shipped ones. */
  templates?: string;
}

/**
 * Typesets the form for one delivery. The same input gives the same bytes. Throws DossierError `bad-template` or
 * `typesetting`.
 */
export async function composeChecklist(
  input: ComposeChecklistInput,
): Promise<{ pdf: Uint8Array; pages: number }> {
  const { delivery, ruleSet, language, paper, templates = SHIPPED } = input;
  const labels = await checklistLabels(language, templates);
  const parts = checklistParts(delivery, ruleSet);
  const printed = input.inspection === true ? parts : parts.filter(({ is }) => is !== 'inspection');
  const document = checklistDocument(printed, {
    delivery,
    language,
    paper,
    labels,
  });
  return typeset({
    pages: join(templates, 'checklist'),
    document: cleanDeep(document, glyphCleaner(drawableCodePoints())),
    assets: new Map(),
    attachments: [],
    builtAt: input.madeAt,
  });
}

/** The words of the form in one language. Throws DossierError `bad-template`. */
export async function checklistLabels(language: Language, templates = SHIPPED): Promise<Labels> {
  const file = join(templates, 'words', language, 'checklist.yaml');
  try {
    return readLabels(yamlFile(file));
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('bad-template', `there are no words for the form in the language "${language}"`, {
      where: { file },
      fix: 'Give a templates folder that has words/<language>/checklist.yaml, or leave the option out.',
      cause,
    });
  }
}
