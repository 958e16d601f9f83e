import { join } from 'node:path';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { cleanDeep, drawableCodePoints, glyphCleaner } from '../glyphs.js';
import { readLetterhead } from '../letterhead.js';
import { SHIPPED } from '../templates.js';
import { typeset } from '../typeset.js';
import { type LetterDocument, letterDocument } from './document.js';
import type { CorrespondenceInput, LetterInput } from './input.js';
import { letterText } from './text.js';
import { letterView } from './view.js';

/** A letter before it is typeset. */
export interface Letter {
  document: LetterDocument;
  /** For an e-mail. */
  text: string;
  /** Places to fill in, in their order. */
  blanks: string[];
}

/**
 * Writes one letter: states only what the record holds, and leaves a place to fill in for anything else. Throws
 * DossierError `bad-template`.
 */
export async function writeLetter(input: LetterInput): Promise<Letter> {
  const view = await letterView(input);
  const document = letterDocument(view);
  return { document, text: letterText(document), blanks: view.blanks() };
}

/**
 * Typesets a letter or certificate under the carrier's letterhead, as PDF/A-3a without a signature: a person signs.
 * The same input gives the same bytes. Throws DossierError `bad-template` or `typesetting`.
 */
export async function typesetLetter(
  document: LetterDocument,
  { templates, madeAt }: Pick<CorrespondenceInput, 'templates' | 'madeAt'>,
  standard: 'a-3a' | 'ua-1' = 'a-3a',
): Promise<{ pdf: Uint8Array; pages: number; warnings: string[] }> {
  const letterhead = await readLetterhead(templates);
  const cleaner = glyphCleaner(drawableCodePoints());
  const whole: LetterDocument =
    letterhead === undefined
      ? document
      : { ...document, letterhead: { asset: letterhead.asset, alt: document.author } };
  const hasPages = [...templates.changed].some((name) => name.startsWith('letter/'));
  const { pdf, pages } = await typeset({
    pages: join(SHIPPED, 'letter'),
    ...omitUndefined({
      own: hasPages && templates.own !== undefined ? join(templates.own, 'letter') : undefined,
    }),
    document: cleanDeep(whole, cleaner),
    assets: new Map(letterhead === undefined ? [] : [[letterhead.asset, letterhead.bytes]]),
    attachments: [],
    builtAt: madeAt,
    standard,
  });
  const warnings = cleaner
    .replaced()
    .map(
      ({ point, count, shownAs }) => `${point} can't be printed and is shown as ${shownAs} (${count} times)`,
    );
  return { pdf, pages, warnings };
}
