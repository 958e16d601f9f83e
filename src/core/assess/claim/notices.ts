import type { EvidenceId, NoticeOf } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { EvidenceItem, RecordState } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';

/** A notice to the consignor: who told it, how, and when. */
export interface ConsignorNotice {
  of: NoticeOf;
  at: number;
  /** The stop that it names; a notice without one may be of any. */
  stop?: string;
  evidence: EvidenceId;
}

/**
 * Notices to the consignor on record, in the order of their times: contacts with the shipper that say what they give
 * notice of, and refusals that were told to the shipper or consignor. What is told to the driver is none (7 CFR
 * 46.2(dd)(3)).
 */
export function consignorNotices(
  { evidence, delivery }: Pick<RecordState, 'evidence' | 'delivery'>,
  now: number,
): ConsignorNotice[] {
  const stopOf = ({ place, line }: EvidenceItem) =>
    place?.stop ?? delivery.lines.find(({ id }) => id === line)?.to;
  return evidence
    .flatMap((item): ConsignorNotice[] => {
      const at = knownMilliseconds(item.time);
      const of = noticeIn(item);
      if (of === undefined || at === undefined || at > now) return [];
      return [{ of, at, evidence: item.evidence, ...omitUndefined({ stop: stopOf(item) }) }];
    })
    .sort((a, b) => a.at - b.at);
}

function noticeIn(item: EvidenceItem): NoticeOf | undefined {
  if (item.kind === 'contact') return item.with === 'shipper' ? item.notice : undefined;
  const told = item.kind === 'outcome' && (item.told === 'shipper' || item.told === 'consignor');
  return told && item.outcome === 'refused' ? 'rejection' : undefined;
}

/** The first notice of one kind about a stop, within a time; ends are included. */
export function firstNotice(
  notices: readonly ConsignorNotice[],
  of: NoticeOf,
  stop: string,
  { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = {},
): ConsignorNotice | undefined {
  return notices.find(
    (one) => one.of === of && (one.stop ?? stop) === stop && one.at >= from && one.at <= to,
  );
}
