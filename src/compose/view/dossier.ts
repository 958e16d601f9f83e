import type { Section } from '../../core/words/blocks.js';
import type { PreparedImages } from '../exhibit-images.js';
import { claimSections } from './claim.js';
import type { View } from './context.js';
import { custodySection } from './custody.js';
import { withoutEmptyParts } from './empty-parts.js';
import { exhibitSection, shownExhibits } from './exhibits.js';
import { glanceSection } from './glance.js';
import { inspectionSection } from './inspections.js';
import { loadBlocks } from './load-plan.js';
import { methodSection, verifySection } from './method.js';
import { pulpSection } from './pulps.js';
import { sectionsByExhibit, withPlaces } from './references.js';
import { setPointSection } from './set-points.js';
import { arrivalSection, beforeLoadingSection, loadingSection } from './stages.js';
import { temperatureSection } from './temperatures.js';
import { transitSection } from './transit.js';

/** The sections of a dossier, with their drawings and the exhibits that can be linked to. */
export function dossierSections(
  view: View,
  images: PreparedImages,
): { sections: Section[]; drawings: ReadonlyMap<string, string>; exhibits: number[] } {
  const glance = glanceSection(view);
  const temperatures = temperatureSection(view);
  const load = loadBlocks(view);
  const pulps = pulpSection(view);
  const told: Section[] = [
    glance.section,
    setPointSection(view),
    temperatures.section,
    pulps,
    loadingSection(view, load.loading),
    beforeLoadingSection(view),
    transitSection(view),
    arrivalSection(view),
    ...inspectionSection(view),
    ...claimSections(view),
  ];
  const dropped = new Set<string>(view.input.copy?.sectionsLeftOut ?? []);
  const shown = told.filter(({ id }) => !dropped.has(id)).flatMap(withoutEmptyParts);
  const seenIn = sectionsByExhibit(shown);
  const exhibits = exhibitSection(view, images, seenIn);
  const inFull = new Set(shownExhibits(exhibits));
  const elsewhere = view.input.exhibits
    .map(({ exhibit }) => exhibit)
    .filter((number) => !inFull.has(number) && seenIn(number).length > 0);
  return {
    sections: [
      ...withPlaces(shown, elsewhere),
      methodSection(view),
      ...withoutEmptyParts(custodySection(view)),
      verifySection(view),
      ...withoutEmptyParts(exhibits),
    ],
    drawings: new Map([...glance.drawings, ...load.drawings, ...temperatures.drawings]),
    exhibits: [...inFull, ...elsewhere].sort((a, b) => a - b),
  };
}
