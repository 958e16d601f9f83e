import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { composeChecklist } from '../../compose/checklist/compose.js';
import type { Language, Paper } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { toInstant } from '../../core/model/time.js';
import { type OpenDelivery, withDelivery } from '../delivery.js';
import { loadRuleSet } from '../rule-set.js';
import { placeToWrite } from '../typed/place-to-write.js';

/** A form for the dock to be written as PDF. */
export interface ChecklistInput extends OpenDelivery {
  /** Path of the PDF; by default `checklist-<language>.pdf` in the delivery's folder. */
  to?: string;
  language?: Language;
  paper?: Paper;
  /** Also the page for an inspection certificate. */
  inspection?: boolean;
  templates?: string;
}

/** The form that was written. */
export interface WrittenChecklist {
  file: string;
  pages: number;
}

/**
 * Writes the form to print for a delivery, from its rule set, stops and lines. Nothing enters the record. Throws
 * DossierError `bad-template`, `typesetting` or `disk`.
 */
export async function writeChecklist(input: ChecklistInput): Promise<WrittenChecklist> {
  const { delivery, ruleSet } = await withDelivery(input, false, async (record) => {
    const facts = record.state().delivery;
    return { delivery: facts, ruleSet: (await loadRuleSet(facts.rules, record.folder)).ruleSet };
  });
  const language = input.language ?? delivery.show.language;
  const { pdf, pages } = await composeChecklist({
    delivery,
    ruleSet,
    language,
    paper: input.paper ?? delivery.show.paper,
    madeAt: toInstant(input.now().getTime()),
    ...omitUndefined({ inspection: input.inspection, templates: input.templates }),
  });
  const file =
    input.to === undefined
      ? join(input.folder, `checklist-${language}.pdf`)
      : await placeToWrite(input.to, input.folder, '--output');
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, pdf);
  } catch (cause) {
    throw new DossierError('disk', 'the form cannot be written', {
      where: { file },
      fix: 'Name another file with --output.',
      cause,
    });
  }
  return { file, pages };
}
