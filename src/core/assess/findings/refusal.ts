import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { duration, type FindingContext, finding, stopRef, time, zoneOf } from './make.js';

/** Findings on the rejection, when and why, and on rejection documents that are not on file. */
export function refusalFindings(context: FindingContext): Finding[] {
  const { evidence } = context.state;
  const refused = evidence.find(
    (item): item is ItemOf<'event'> => item.kind === 'event' && item.event === 'refused',
  );
  const papers = (is: 'rejection-notice' | 'inspection-certificate') =>
    evidence.filter((item) => 'subject' in item && item.subject?.is === is).map((item) => item.evidence);
  const notices = papers('rejection-notice');
  if (refused === undefined && notices.length === 0) return [];
  const findings = [refusal(context, refused, notices)];
  const ids = refused === undefined ? notices : [refused.evidence];
  if (notices.length === 0)
    findings.push(finding('refused-no-written-notice', 'papers of the refusal', ids, {}));
  if (papers('inspection-certificate').length === 0) {
    const asked = evidence.some((item) => item.kind === 'event' && item.event === 'inspection-requested');
    findings.push(finding('refused-not-inspected', 'papers of the refusal', ids, { requested: asked }));
  }
  return findings;
}

function refusal(
  context: FindingContext,
  refused: ItemOf<'event'> | undefined,
  notices: Finding['evidence'],
): Finding {
  const at = refused === undefined ? undefined : knownMilliseconds(refused.time);
  const stop = refused?.place?.stop;
  const arrived = context.milestones.events.find(
    (one) =>
      one.side === 'unload' &&
      (stop === undefined || one.stop === stop) &&
      (one.event === 'arrived' || one.event === 'notice-of-arrival'),
  );
  return finding('refused', 'events and papers', [...(refused ? [refused.evidence] : []), ...notices], {
    ...omitUndefined({
      at: at === undefined ? undefined : time(at, zoneOf(context.state, stop)),
      stop: stop === undefined ? undefined : stopRef(stop),
      reason: refused?.note,
      sinceArrival:
        at === undefined || arrived === undefined || at < arrived.at
          ? undefined
          : duration((at - arrived.at) / 1000),
    }),
    notices: notices.length,
  });
}
