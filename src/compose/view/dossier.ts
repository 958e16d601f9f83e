import { qrPicture } from '../../core/charts/qr.js';
import type { DossierDocument, Section } from '../../core/words/blocks.js';
import { typstPaperName } from '../../core/words/document-head.js';
import type { PreparedImages } from '../exhibit-images.js';
import { SECTIONS } from '../sections.js';
import { claimSections } from './claim.js';
import type { View } from './context.js';
import { CODE_ASSET, coverOf, fingerprintLine } from './cover.js';
import { custodySection } from './custody.js';
import { exhibitSection, shownExhibits } from './exhibits.js';
import { findingsSection } from './findings.js';
import { glanceSection } from './glance.js';
import { goodDeliverySection } from './good-delivery.js';
import { inspectionSection } from './inspections.js';
import { loadBlocks } from './load-plan.js';
import { methodSection, verifySection } from './method.js';
import { missingSection } from './missing.js';
import { pulpSection } from './pulps.js';
import { sectionsByExhibit } from './references.js';
import { setPointSection } from './set-points.js';
import { signatureBlock } from './signature.js';
import { arrivalSection, beforeLoadingSection, loadingSection } from './stages.js';
import { temperatureSection } from './temperatures.js';
import { transitSection } from './transit.js';

/** Builds the document and its drawings from the results; the order of sections is the order of pages. */
export function documentOf(
  view: View,
  images: PreparedImages,
  order: readonly string[] = SECTIONS,
): { document: DossierDocument; drawings: ReadonlyMap<string, string> } {
  const { labels, input } = view;
  const { delivery } = input.state;
  const glance = glanceSection(view);
  const temperatures = temperatureSection(view);
  const load = loadBlocks(view);
  const pulps = pulpSection(view, load.pulps);
  const told: Section[] = [
    glance.section,
    setPointSection(view),
    temperatures.section,
    pulps.section,
    loadingSection(view, load.loading),
    beforeLoadingSection(view),
    transitSection(view),
    arrivalSection(view),
    ...inspectionSection(view),
    ...goodDeliverySection(view),
    ...claimSections(view),
    findingsSection(view),
    missingSection(view),
  ];
  const dropped = new Set(input.copy?.sectionsLeftOut ?? []);
  const shown = told.filter(({ id }) => !dropped.has(id));
  const exhibits = exhibitSection(view, images, sectionsByExhibit(shown));
  const made: Section[] = [
    ...shown,
    exhibits,
    methodSection(view),
    custodySection(view),
    verifySection(view),
  ];
  const sections = order.flatMap((id) => made.filter((section) => section.id === id));
  const short = input.fingerprint.root.slice(0, 16);
  return {
    document: {
      language: delivery.show.language,
      region: 'US',
      paper: typstPaperName(delivery.show.paper),
      title: labels('document.title').replace('DELIVERY', () => input.fingerprint.delivery),
      author: input.signer.name,
      description: labels('document.description'),
      running: labels('document.running')
        .replace('DELIVERY', () => input.fingerprint.delivery)
        .replace('SHORT', () => short),
      page: labels('document.page'),
      pageOf: labels('document.page-of'),
      contents: labels('document.contents'),
      exhibit: labels('document.exhibit'),
      seenIn: labels('document.seen-in'),
      exhibits: shownExhibits(exhibits),
      cover: coverOf(view),
      sections,
      signature: signatureBlock(view),
    },
    drawings: new Map([
      [CODE_ASSET, qrPicture(fingerprintLine(input.fingerprint))],
      ...glance.drawings,
      ...load.drawings,
      ...temperatures.drawings,
      ...pulps.drawings,
    ]),
  };
}
