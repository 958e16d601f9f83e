import { join } from 'node:path';
import { toInstant } from '../../core/model/time.js';
import { formatFor } from '../../core/words/format.js';
import { readLabels } from '../../core/words/labels.js';
import { cleanDeep, drawableCodePoints, glyphCleaner } from '../glyphs.js';
import { loadTemplates, yamlFile } from '../load-words.js';
import { SHIPPED, shippedWords } from '../shipped.js';
import { typeset } from '../typeset.js';
import { type TrailPrintInput, trailDocument } from './document.js';

/**
 * Typesets the audit trail in the language and page size of the delivery. The same input gives the same bytes.
 * Throws DossierError `bad-template` or `typesetting`.
 */
export async function composeTrail(printed: TrailPrintInput): Promise<{ pdf: Uint8Array; pages: number }> {
  const { show } = printed.state.delivery;
  const folder = shippedWords(show.language);
  const trail = readLabels(yamlFile(join(folder, 'trail.yaml')));
  const labels = readLabels(loadTemplates(folder).labels);
  const format = formatFor(show, {
    zoneUnknown: labels('time.zone-unknown'),
    notKnown: labels('time.not-known'),
  });
  return typeset({
    pages: join(SHIPPED, 'trail'),
    document: cleanDeep(
      trailDocument(printed, { trail, labels, format }),
      glyphCleaner(drawableCodePoints()),
    ),
    assets: new Map(),
    attachments: [],
    builtAt: toInstant(printed.printedAt),
  });
}
