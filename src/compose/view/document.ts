import { qrPicture } from '../../core/charts/qr.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { DossierDocument } from '../../core/words/blocks.js';
import { typstPaperName } from '../../core/words/document-head.js';
import type { PreparedImages } from '../exhibit-images.js';
import { SECTIONS } from '../sections.js';
import { assessmentSections } from './assessment.js';
import { confidentialWords, type View } from './context.js';
import { CODE_ASSET, coverOf, fingerprintLine } from './cover.js';
import { dossierSections } from './dossier.js';
import { pageOne } from './page-one.js';
import { signatureBlock } from './signature.js';

/** Builds a dossier or an assessment, and its drawings, from the results; the order of sections is that of the pages. */
export function documentOf(
  view: View,
  images: PreparedImages,
  order: readonly string[] = SECTIONS,
): { document: DossierDocument; drawings: ReadonlyMap<string, string> } {
  const { labels, input, volume } = view;
  const { delivery } = input.state;
  const made =
    volume === 'assessment' ? { ...assessmentSections(view), exhibits: [] } : dossierSections(view, images);
  const first = volume === 'dossier' ? pageOne(view) : undefined;
  const named = (key: string) =>
    labels(`${volume === 'assessment' ? 'assessment' : 'document'}.${key}`).replace(
      'DELIVERY',
      () => input.fingerprint.delivery,
    );
  return {
    document: {
      language: delivery.show.language,
      region: 'US',
      paper: typstPaperName(delivery.show.paper),
      title: named('title'),
      author: input.signer.name,
      description: named('description'),
      running: named('running').replace('SHORT', () => input.fingerprint.root.slice(0, 16)),
      ...omitUndefined({ marking: confidentialWords(view) }),
      page: labels('document.page'),
      pageOf: labels('document.page-of'),
      contents: labels('document.contents'),
      exhibit: labels('document.exhibit'),
      seenIn: labels('document.seen-in'),
      exhibits: made.exhibits,
      cover: coverOf(view, first?.blocks),
      sections: order.flatMap((id) => made.sections.filter((section) => section.id === id)),
      signature: signatureBlock(view),
    },
    drawings: new Map([
      [CODE_ASSET, qrPicture(fingerprintLine(input.fingerprint))],
      ...made.drawings,
      ...(first?.drawings ?? []),
    ]),
  };
}
