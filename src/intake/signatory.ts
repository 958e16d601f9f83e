import { type Signatory, signingParty } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { roleOf } from './roles.js';

/** Words that a role takes at most: `the shipper's agent`. */
const MOST_WORDS = 3;

/**
 * Who wrote or signed, from `shipper J. Ortiz`, `J. Ortiz, shipper` or a role alone. Undefined where no role is named:
 * a name does not tell for whom its bearer signs.
 */
export function parseSignatory(text: string): Signatory | undefined {
  const words = text.trim().split(/\s+/);
  for (let length = Math.min(words.length, MOST_WORDS); length > 0; length -= 1) {
    const party = roleOf(
      words
        .slice(0, length)
        .join(' ')
        .replace(/[,;:]$/, ''),
      signingParty.options,
    );
    if (party !== undefined) return withName(party, words.slice(length).join(' '));
  }
  const comma = text.lastIndexOf(',');
  const party = comma < 0 ? undefined : roleOf(text.slice(comma + 1), signingParty.options);
  return party === undefined ? undefined : withName(party, text.slice(0, comma));
}

const withName = (party: Signatory['party'], name: string): Signatory => ({
  party,
  ...omitUndefined({ name: name.trim() === '' ? undefined : name.trim() }),
});
