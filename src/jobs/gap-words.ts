import { fileURLToPath } from 'node:url';
import { formatFor } from '../compose/format.js';
import type { GapSpeech } from '../compose/view/gap-words.js';
import { factNames } from '../compose/view/names.js';
import { readLabels } from '../compose/words/labels.js';
import { loadTemplates } from '../compose/words/load.js';
import { wordsFrom } from '../compose/words/words.js';
import type { Delivery } from '../model/delivery.js';

const SHIPPED = fileURLToPath(new URL('../../templates/words/', import.meta.url));

/**
 * The words of the dossier, for saying gaps on a terminal: in English like all that is said there and the rules
 * themselves, in the units of the delivery.
 * Throws DossierError `bad-template` when there are none.
 */
export async function gapSpeech(delivery: Delivery): Promise<GapSpeech> {
  const folder = `${SHIPPED}en`;
  const loaded = await loadTemplates(folder);
  const labels = readLabels(loaded.labels, `${folder}/labels.yaml`);
  const names = factNames(delivery);
  const format = formatFor({ ...delivery.show, language: 'en' }, {
    zoneUnknown: labels('time.zone-unknown'),
    notKnown: labels('time.not-known'),
  });
  return {
    labels,
    names,
    format,
    words: wordsFrom({ templates: loaded.templates, folder, labels, format, names }),
  };
}
