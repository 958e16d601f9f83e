import type { CorrectedBody, Entry, EntryOf } from '../model/entry.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Correction, Strike } from '../model/state.js';

/** An entry as it counts, with the numbers of the entries that gave it its right value. */
export interface CountedEntry {
  entry: Entry;
  correctedBy: number[];
}

export interface CountedEntries {
  entries: CountedEntry[];
  corrections: Correction[];
  strikes: Strike[];
}

/**
 * The entries that count, in the order of the ledger: those that were struck are left out, together with what
 * only speaks of evidence that was struck; those that were corrected carry their right value in their old place.
 * A strike or a correction speaks of an earlier entry, so that reading from the end settles which ones hold.
 */
export function countedEntries(entries: readonly Entry[]): CountedEntries {
  const struckBy = strikesInForce(entries);
  const corrections = new Map<number, EntryOf<'entry-corrected'>[]>();
  for (const entry of entries) {
    if (entry.type !== 'entry-corrected' || struckBy.has(entry.seq)) continue;
    const { entry: wrong } = entry.body;
    corrections.set(wrong, [...(corrections.get(wrong) ?? []), entry]);
  }

  const struckEvidence = new Set(
    entries.filter(({ seq }) => struckBy.has(seq)).flatMap((entry) => broughtInBy(entry) ?? []),
  );
  const counts = (entry: Entry) => {
    if (struckBy.has(entry.seq)) return false;
    const about = onlyAbout(entry);
    return about === undefined || !struckEvidence.has(about);
  };
  return {
    entries: entries.filter(counts).map((entry) => {
      const given = corrections.get(entry.seq) ?? [];
      const last = given.at(-1);
      return {
        entry: last === undefined ? entry : withBody(entry, last.body.becomes),
        correctedBy: given.map(({ seq }) => seq),
      };
    }),
    corrections: [...corrections].flatMap(([seq, given]) => {
      const entry = entries[seq];
      return entry === undefined ? [] : [{ entry, corrections: given }];
    }),
    strikes: entries.flatMap((entry) => {
      const strike = struckBy.get(entry.seq);
      return strike === undefined ? [] : [{ entry, strike }];
    }),
  };
}

/** Numbers of the entries that were struck. */
export function struckSeqs(entries: readonly Entry[]): ReadonlySet<number> {
  return new Set(strikesInForce(entries).keys());
}

/** The strike of each entry that has one which is not struck itself. */
function strikesInForce(entries: readonly Entry[]): Map<number, EntryOf<'entry-struck'>> {
  const struckBy = new Map<number, EntryOf<'entry-struck'>>();
  for (const entry of entries.toReversed())
    if (entry.type === 'entry-struck' && !struckBy.has(entry.seq)) struckBy.set(entry.body.entry, entry);
  return struckBy;
}

function withBody(entry: Entry, becomes: CorrectedBody): Entry {
  const { seq, at, by, origin } = entry;
  return { seq, at, by, ...omitUndefined({ origin }), ...becomes };
}

/** The evidence that an entry brings in. */
function broughtInBy(entry: Entry): string | undefined {
  return entry.type === 'evidence-received' || entry.type === 'reading-recorded'
    ? entry.body.evidence
    : undefined;
}

/** The evidence without which an entry says nothing. */
function onlyAbout(entry: Entry): string | undefined {
  switch (entry.type) {
    case 'evidence-described':
    case 'evidence-withheld':
    case 'evidence-admitted':
      return entry.body.evidence;
    default:
      return undefined;
  }
}
