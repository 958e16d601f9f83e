import { join } from 'node:path';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { loadQuotations } from '../core/reference/quotations.js';
import { isShownAsPicture, prepareImages } from './exhibit-images.js';
import { cleanDeep, drawableCodePoints, glyphCleaner } from './glyphs.js';
import type { ComposeInput } from './input.js';
import { loadLanguageWords } from './language.js';
import { readLetterhead } from './letterhead.js';
import type { PreparedPicture } from './pictures.js';
import { SECTIONS } from './sections.js';
import { carrierTemplates, SHIPPED, sectionOrder } from './templates.js';
import { type SignaturePlace, type TypesetJob, typeset } from './typeset.js';
import { Typesetter } from './typesetter.js';
import { viewOf } from './view/context.js';
import { documentOf } from './view/document.js';
import { imageAsset } from './view/photographs.js';

export interface Composed {
  pdf: Uint8Array;
  warnings: string[];
  pages: number;
  /** Place of the signature's frame, and its words in one line. */
  signature?: SignaturePlace & { alt: string };
}

/**
 * Typesets the dossier of one delivery. The same input gives the same bytes.
 * @param typesetter one that was started before; it ends with this document Throws DossierError `bad-template` or
 * `typesetting`; an unreadable picture is a warning.
 */
export async function composeDossier(input: ComposeInput, typesetter = new Typesetter()): Promise<Composed> {
  const { job, warnings } = await prepareDossier(input).catch((error: unknown) => {
    typesetter.stop();
    throw error;
  });
  return { warnings, ...(await setDossier(job, typesetter)) };
}

/** Typesets a prepared document. Throws DossierError `bad-template` or `typesetting`. */
export async function setDossier(
  job: TypesetJob,
  typesetter: Typesetter,
): Promise<Omit<Composed, 'warnings'>> {
  const { pdf, pages, signature } = await typeset(job, typesetter);
  return {
    pdf,
    pages,
    ...omitUndefined({
      signature: signature === undefined ? undefined : { ...signature, alt: job.document.signature.alt },
    }),
  };
}

/** Prepares everything for the typesetter, as data. */
export async function prepareDossier(input: ComposeInput): Promise<{ job: TypesetJob; warnings: string[] }> {
  const templates = input.templates ?? (await carrierTemplates());
  const { language } = input.state.delivery.show;
  const { labels, ...words } = input.words ?? (await loadLanguageWords(language, templates));
  const quotations = input.quotations ?? (await loadQuotations());
  const view = viewOf({ ...input, quotations }, words, labels);
  const letterhead = await readLetterhead(templates);

  const pictured = input.volume === 'assessment' ? [] : input.state.evidence;
  const shown = pictured.filter(isShownAsPicture).filter((item) => item.withheld === undefined);
  const images = input.plates ?? (await prepareImages(pictured, input.readOriginal));
  const { pictures, documents } = images;
  const { document: whole, drawings } = documentOf(view, images, await sectionOrder(templates, SECTIONS));
  const document =
    letterhead === undefined
      ? whole
      : {
          ...whole,
          cover: {
            ...whole.cover,
            letterhead: { asset: letterhead.asset, alt: labels('cover.letterhead') },
          },
        };

  const cleaner = glyphCleaner(drawableCodePoints());
  const assets = new Map<string, Uint8Array>();
  if (letterhead !== undefined) assets.set(letterhead.asset, letterhead.bytes);
  for (const [name, drawing] of drawings) assets.set(name, new TextEncoder().encode(cleaner.clean(drawing)));
  const add = (name: string, picture: PreparedPicture) => {
    if (picture.is === 'picture') assets.set(name, picture.bytes);
  };
  for (const [sha256, picture] of pictures) add(imageAsset(sha256), picture);
  for (const [sha256, paper] of documents)
    if (paper.is === 'pages')
      for (const [i, page] of paper.pages.entries()) add(imageAsset(sha256, i + 1), page);

  const job: TypesetJob = {
    pages: join(SHIPPED, 'dossier'),
    ...omitUndefined({ own: templates.own === undefined ? undefined : join(templates.own, 'dossier') }),
    document: cleanDeep(document, cleaner),
    assets,
    attachments: input.attachments.map((one) => ({ ...one, description: cleaner.clean(one.description) })),
    builtAt: input.builtAt,
  };
  const warnings = [
    ...shown.flatMap((item) => {
      const picture = pictures.get(item.file.sha256);
      if (picture?.is === 'picture' && !picture.damaged) return [];
      return [
        `${item.file.name} (${item.evidence}): ${picture?.is === 'picture' ? 'the picture is damaged; what can be read is shown' : `the picture can't be shown: ${picture?.why ?? 'unknown'}`}`,
      ];
    }),
    ...pictured.flatMap((item) => {
      const paper = 'file' in item ? documents.get(item.file.sha256) : undefined;
      return paper?.is === 'unreadable' && 'file' in item
        ? [`${item.file.name} (${item.evidence}): its pages can't be shown: ${paper.why}`]
        : [];
    }),
    ...cleaner
      .replaced()
      .map(
        ({ point, count, shownAs }) =>
          `${point} can't be printed and is shown as ${shownAs} (${count} times)`,
      ),
  ];
  return { job, warnings };
}
