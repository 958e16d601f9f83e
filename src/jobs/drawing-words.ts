import { loadTemplates } from '../compose/load-words.js';
import { shippedWords } from '../compose/shipped.js';
import type { Delivery } from '../core/model/delivery.js';
import { type Format, formatFor } from '../core/words/format.js';
import { type Labels, readLabels } from '../core/words/labels.js';

/**
 * Units and labels of the dossier's drawings, for a drawing that stands by itself.
 * Throws DossierError `bad-template` when the words of the language can't be read.
 */
export async function drawingWords(show: Delivery['show']): Promise<{ format: Format; labels: Labels }> {
  return {
    format: formatFor(show, { zoneUnknown: '', notKnown: '' }),
    labels: readLabels(loadTemplates(shippedWords(show.language)).labels),
  };
}
