import type { AmountItem } from '../../model/claim.js';
import type { Delivery } from '../../model/delivery.js';
import type { Finding, GapResult, LineOutcome } from '../../model/results.js';
import type { ClaimEntry } from '../../model/state.js';
import type { Milestones } from '../milestones.js';
import { isRefused } from '../outcomes.js';
import { currentEntries } from './quantities.js';

/** Items of the goods themselves, not of freight or costs. */
const GOODS: ReadonlySet<AmountItem> = new Set([
  'market-value',
  'origin-value',
  'invoice-value',
  'agreed-value',
  'arrived-value',
  'salvage',
]);

/**
 * The lines that a claim concerns: those named by all its values and quantities of goods. Undefined when no entry
 * names a line, or a value is of the whole; then the claim concerns every line. A claim that says nothing of its goods
 * concerns those that were refused or noted against, where every other line was accepted.
 */
export function claimedLines(
  entries: readonly ClaimEntry[],
  outcomes: readonly LineOutcome[] = [],
): ReadonlySet<string> | undefined {
  const named = currentEntries(entries).flatMap((one): (string | undefined)[] => {
    if (one.is === 'amount') return GOODS.has(one.item) ? [one.line] : [];
    return one.is === 'quantity' && ['rejected', 'damaged', 'short'].includes(one.state) ? [one.line] : [];
  });
  const lines = named.filter((line) => line !== undefined);
  if (lines.length > 0) return lines.length < named.length ? undefined : new Set(lines);
  return named.length > 0 ? undefined : linesInDispute(outcomes);
}

/** Lines that were refused or noted against, where others were accepted; undefined where that tells none apart. */
function linesInDispute(outcomes: readonly LineOutcome[]): ReadonlySet<string> | undefined {
  const sound = outcomes.filter(({ is }) => is === 'accepted');
  const disputed = outcomes.filter((one) => isRefused(one) || one.is === 'accepted-with-exceptions');
  return sound.length === 0 || disputed.length === 0 || sound.length + disputed.length < outcomes.length
    ? undefined
    : new Set(disputed.map(({ line }) => line));
}

/** Whether a finding concerns one of the lines, or no line in particular and no stop of others only. */
export function findingAbout(
  { facts }: Finding,
  lines: ReadonlySet<string>,
  otherStops: ReadonlySet<string> = new Set(),
): boolean {
  const named = Object.values(facts).flatMap((fact) =>
    typeof fact === 'object' && fact.is === 'line' ? [fact.line] : [],
  );
  if (named.length > 0) return named.some((line) => lines.has(line));
  return !Object.values(facts).some(
    (fact) => typeof fact === 'object' && fact.is === 'stop' && otherStops.has(fact.stop),
  );
}

/** Unloading stops where no line of the claim is delivered. */
export const stopsOfOthers = (
  { stops, lines: all }: Pick<Delivery, 'stops' | 'lines'>,
  lines: ReadonlySet<string> | undefined,
): ReadonlySet<string> =>
  new Set(
    stops
      .filter(
        ({ id, does }) =>
          does === 'unload' &&
          lines !== undefined &&
          !all.some((line) => lines.has(line.id) && line.to === id),
      )
      .map(({ id }) => id),
  );

/** What happened at the stops of the claimed lines: the times of a claim are counted there. */
export function milestonesOfLines(
  milestones: Milestones,
  { lines: all }: Pick<Delivery, 'lines'>,
  lines: ReadonlySet<string> | undefined,
): Milestones {
  if (lines === undefined) return milestones;
  const own = new Set(all.filter(({ id }) => lines.has(id)).flatMap(({ from, to }) => [from, to]));
  return {
    ...milestones,
    stops: milestones.stops.filter(({ id }) => own.has(id)),
    events: milestones.events.filter(({ stop }) => own.has(stop)),
    signatures: milestones.signatures.filter(({ stop }) => own.has(stop)),
  };
}

/** Whether an unmet part of a requirement concerns one of the lines, or no line in particular. */
export function gapAbout(
  { parts }: GapResult,
  lines: ReadonlySet<string>,
  otherStops: ReadonlySet<string> = new Set(),
): boolean {
  const open = (parts ?? []).filter(({ outcome }) => ['missing', 'short', 'contradicted'].includes(outcome));
  const isAbout = ({ line, stop }: (typeof open)[number]) =>
    (line === undefined || lines.has(line)) && (stop === undefined || !otherStops.has(stop));
  return open.length === 0 || open.some(isAbout);
}
