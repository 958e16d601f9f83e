import { isDeepStrictEqual } from 'node:util';
import type { NewEntry } from '../../core/model/entry.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { EvidenceItem } from '../../core/model/state.js';
import type { ReceivedDraft } from '../../intake/draft.js';
import type { EvidenceByHash } from './evidence-by-hash.js';

/** The evidence of a file's new reading, and the earlier reading that it replaces. */
interface Reading {
  evidence: EvidenceId;
  received: ReceivedDraft;
  replaces: EvidenceId | undefined;
  by: string;
}

/**
 * Entries for a file that is read anew: the new evidence replaces the earlier one and takes over its descriptions,
 * except where it states its own; withheld evidence stays withheld.
 */
export function reimportEntries(
  byHash: EvidenceByHash,
  before: EvidenceId,
  { evidence, received, replaces, by }: Reading,
): NewEntry[] {
  const earlier = byHash.item(before);
  const note =
    replaces === undefined
      ? `The same file is read as a ${received.kind === 'unit-log' ? 'unit log' : 'table'} in ${evidence}.`
      : `The same file is read anew in ${evidence}; this reading no longer counts.`;
  const entries: NewEntry[] = [
    {
      type: 'evidence-described',
      by,
      body: {
        evidence: before,
        caption: [...(earlier?.caption === undefined ? [] : [earlier.caption]), note].join(' ').slice(-2000),
        why: replaces === undefined ? 'what it lacked was said' : 'another way of reading it was said',
      },
    },
  ];
  const said = earlier === undefined ? {} : carriedDescription(earlier, received);
  if (Object.keys(said).length > 0)
    entries.push({
      type: 'evidence-described',
      by,
      body: { evidence, ...said, why: `as was said of ${before}, the same file` },
    });
  if (earlier?.withheld !== undefined)
    entries.push({ type: 'evidence-withheld', by, body: { evidence, why: earlier.withheld } });
  return entries;
}

/** Descriptions of the earlier reading that the new one does not state itself. */
function carriedDescription(earlier: EvidenceItem, received: ReceivedDraft) {
  const place = { ...earlier.place, ...received.place };
  return {
    ...omitUndefined({
      place: isDeepStrictEqual(place, received.place ?? {}) ? undefined : place,
      line: earlier.line === undefined || received.line !== undefined ? undefined : earlier.line,
      by: earlier.by === undefined || received.by !== undefined ? undefined : earlier.by,
      caption: earlier.caption === undefined || received.caption !== undefined ? undefined : earlier.caption,
    }),
  };
}
