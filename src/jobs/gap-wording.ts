import { loadLanguageWords } from '../compose/language.js';
import { carrierTemplates } from '../compose/templates.js';
import type { GapWording } from '../compose/view/gap-words.js';
import { factNames } from '../compose/view/names.js';
import type { Delivery } from '../core/model/delivery.js';
import { formatFor } from '../core/words/format.js';
import { wordsFrom } from '../core/words/words.js';

/**
 * Words for gaps on a terminal: in English, like the rules and all terminal output, in the units of the delivery.
 * @param templates folder of the carrier's own templates, which replace the shipped words Throws DossierError
 * `bad-template` when there are none.
 */
export async function gapWording(delivery: Delivery, templates?: string): Promise<GapWording> {
  const said = await loadLanguageWords('en', await carrierTemplates(templates));
  const { labels } = said;
  const names = factNames(delivery);
  const format = formatFor(
    { ...delivery.show, language: 'en' },
    {
      zoneUnknown: labels('time.zone-unknown'),
      notKnown: labels('time.not-known'),
    },
  );
  return { labels, names, format, words: wordsFrom({ ...said, format, names }) };
}
