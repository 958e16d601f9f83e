import type { CustodySpan, LineOutcome, WindowBound } from '../model/results.js';
import type { EvidenceItem, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import type { Milestones } from './milestones.js';
import { isRefused } from './outcomes.js';

/** What shows that the carrier had received the goods, best first. */
const RECEIVED = ['bill-signed', 'departed', 'doors-closed', 'loading-ended'] as const;
/** What shows that goods were delivered at a stop, best first. */
const DELIVERED = ['receipt-signed', 'accepted', 'unloaded'] as const;

/**
 * How long the carrier had the goods in its hands: from the signed receipt at loading to delivery at the last stop, or,
 * for goods that were refused, to their disposal. Doors bound the transit window, not custody. Undefined when nothing
 * shows that the goods were received; without `to` while nothing shows that the last of them were handed over.
 */
export function custodyOf(
  state: RecordState,
  milestones: Milestones,
  outcomes: readonly LineOutcome[],
): CustodySpan | undefined {
  const shown = [...milestones.events, ...milestones.signatures].sort((a, b) => a.at - b.at);
  const loads = new Set(milestones.stops.filter(({ does }) => does === 'load').map(({ id }) => id));
  const at = (
    names: readonly (typeof RECEIVED | typeof DELIVERED)[number][],
    isThere: (stop: string) => boolean,
  ) =>
    names
      .map((basis) =>
        shown
          .filter((one) => one.event === basis && isThere(one.stop))
          .map((one): WindowBound => ({ at: one.at, basis, evidence: one.evidence })),
      )
      .find((list) => list.length > 0) ?? [];
  const [from] = at(RECEIVED, (stop) => loads.has(stop));
  if (from === undefined) return undefined;
  const held = outcomes.filter(isRefused).map(({ line }) => line);
  const ends = outcomes.map((one): WindowBound | undefined => {
    if (isRefused(one)) return disposalOf(state, milestones, one);
    return at(DELIVERED, (stop) => stop === one.stop).at(-1);
  });
  const known = ends.filter((one) => one !== undefined);
  const last = known.reduce<WindowBound | undefined>(
    (late, one) => (late === undefined || one.at > late.at ? one : late),
    undefined,
  );
  const over = known.length === ends.length && last !== undefined && last.at > from.at;
  return { from, ...(over ? { to: last } : {}), heldAfterRefusal: over ? [] : held };
}

/** When refused goods left the carrier: sold, dumped or sent elsewhere, by the paper or event that says so. */
function disposalOf(
  { evidence }: RecordState,
  { events, now }: Milestones,
  { line, stop }: LineOutcome,
): WindowBound | undefined {
  const sent = events.findLast((one) => one.event === 'diverted' && one.stop === stop);
  const papers = evidence.flatMap((item) => {
    const at = knownMilliseconds(item.time);
    return isOfDisposal(item) && at !== undefined && at <= now && (item.line ?? line) === line
      ? [{ at, basis: 'disposed' as const, evidence: item.evidence }]
      : [];
  });
  const last = papers.sort((a, b) => a.at - b.at).at(-1);
  return last ?? (sent && { at: sent.at, basis: 'disposed', evidence: sent.evidence });
}

const isOfDisposal = (item: EvidenceItem): boolean =>
  item.kind === 'document' && (item.subject?.is === 'sale-account' || item.subject?.is === 'scale-ticket');
