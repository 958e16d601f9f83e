import { join } from 'node:path';
import { type Format, formatFor } from '../compose/format.js';
import { shippedWords } from '../compose/shipped.js';
import { type Labels, readLabels } from '../compose/words/labels.js';
import { loadTemplates } from '../compose/words/load.js';
import type { Delivery } from '../model/delivery.js';

/**
 * Units and labels of the dossier's drawings, for a drawing that stands by itself.
 * Throws DossierError `bad-template` when the words of the language can't be read.
 */
export async function drawingWords(show: Delivery['show']): Promise<{ format: Format; labels: Labels }> {
  const words = shippedWords(show.language);
  return {
    format: formatFor(show, { zoneUnknown: '', notKnown: '' }),
    labels: readLabels((await loadTemplates(words)).labels, join(words, 'labels.yaml')),
  };
}
