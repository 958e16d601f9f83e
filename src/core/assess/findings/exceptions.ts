import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { type FindingContext, finding, lineRef, time, zoneOf } from './make.js';

const BY = 'exceptions on bill of lading or receipt';

/**
 * A finding on each exception that was made at loading. One that the shipper signed is the shipper's own word that the
 * goods were not received in apparent good order; one that nobody signed for the shipper is the carrier's word alone.
 */
export function exceptionFindings({ state, now }: FindingContext): Finding[] {
  return state.evidence
    .filter((item): item is ItemOf<'exception'> => item.kind === 'exception')
    .filter(({ time: noted }) => (knownMilliseconds(noted) ?? 0) <= now)
    .map((item) => {
      const signer = item.signedBy.find(({ party }) => party === 'shipper');
      const at = knownMilliseconds(item.time);
      return finding(
        signer === undefined ? 'exception-not-signed' : 'exception-signed',
        BY,
        [item.evidence, ...item.documents],
        {
          words: item.words,
          ...omitUndefined({
            line: item.line === undefined ? undefined : lineRef(item.line),
            at: at === undefined ? undefined : time(at, zoneOf(state, item.place?.stop)),
            name: signer?.name,
            document: item.document,
          }),
        },
      );
    });
}
