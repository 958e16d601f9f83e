import { thousandths } from '../../model/quantity.js';
import type { QuantityRow } from '../../model/results.js';
import type { ClaimEntry, ClaimEntryOf } from '../../model/state.js';
import { sortedSeqs } from './figures.js';

/** Entries that no later entry corrects, in the order of the record. */
export const currentEntries = (entries: readonly ClaimEntry[]): ClaimEntry[] =>
  entries.filter((one) => one.replacedBy === undefined).sort((a, b) => a.seq - b.seq);

type QuantityEntry = ClaimEntryOf<'quantity'>;
type State = QuantityEntry['state'];

/** A range in thousandths. */
export interface Thousandths {
  low: number;
  high: number;
  seqs: number[];
  /** Damaged goods may be among the rejected, which widens the range. */
  overlap?: boolean;
}

const written = (count: number) => String(count / 1000);

const STATES: readonly State[] = ['shipped', 'accepted', 'rejected', 'damaged', 'short'];

/** Quantities from one source in one state add up; quantities from several sources are accounts of the same goods. */
function counted(said: readonly QuantityEntry[]): Thousandths | undefined {
  const bySayer = new Map<string, number>();
  for (const one of said) bySayer.set(one.saidBy, (bySayer.get(one.saidBy) ?? 0) + thousandths(one.quantity));
  const counts = [...bySayer.values()];
  if (counts.length === 0) return undefined;
  return {
    low: Math.min(...counts),
    high: Math.max(...counts),
    seqs: sortedSeqs(said.map(({ seq }) => seq)),
  };
}

/**
 * Quantity of each line that was shipped, accepted, rejected, damaged or short, by source; one row for each line
 * and unit, in the order of first mention. Entries of one claim in any order.
 */
export function quantitiesOf(entries: readonly ClaimEntry[]): QuantityRow[] {
  const said = currentEntries(entries).filter((one): one is QuantityEntry => one.is === 'quantity');
  const keys = new Map(said.map((one) => [JSON.stringify([one.line, one.unit]), one]));
  return [...keys.values()].map(({ line, unit }) => {
    const of = (state: State) =>
      counted(said.filter((one) => one.line === line && one.unit === unit && one.state === state));
    const states = STATES.flatMap((state) => {
      const count = of(state);
      return count === undefined
        ? []
        : [{ state, low: written(count.low), high: written(count.high), seqs: count.seqs }];
    });
    return { line, unit, states, ...balance(of) };
  });
}

/** Shipped is accepted, rejected and short together; damaged goods are among the accepted or the rejected. */
function balance(of: (state: State) => Thousandths | undefined): { addsUp?: boolean } {
  const [shipped, accepted, rejected] = [of('shipped'), of('accepted'), of('rejected')];
  const short = of('short');
  if (shipped === undefined || (accepted === undefined && rejected === undefined)) return {};
  const low = (accepted?.low ?? 0) + (rejected?.low ?? 0) + (short?.low ?? 0);
  const high = (accepted?.high ?? 0) + (rejected?.high ?? 0) + (short?.high ?? 0);
  return { addsUp: low <= shipped.high && high >= shipped.low };
}

/**
 * Quantity of a line, or of all lines, in one unit that was rejected or damaged, and short if `short` is set.
 * Damaged goods may be among the rejected: at least the larger of the two, at most both, never more than was
 * shipped. Undefined when no entry states it.
 */
export function lostQuantity(
  entries: readonly ClaimEntry[],
  where: { line?: string | undefined; unit?: QuantityEntry['unit'] | undefined; short: boolean },
): Thousandths | undefined {
  const said = currentEntries(entries).filter(
    (one): one is QuantityEntry =>
      one.is === 'quantity' && (where.line === undefined || one.line === where.line),
  );
  const units = new Set(said.map((one) => one.unit));
  const [only] = units;
  const unit = where.unit ?? (units.size === 1 ? only : undefined);
  const lines = [...new Set(said.map((one) => one.line))];
  const parts = lines.flatMap((line) => {
    const of = (state: State) =>
      counted(said.filter((one) => one.line === line && one.unit === unit && one.state === state));
    const harmed = harmedOf(of('rejected'), of('damaged'), of('shipped'));
    const short = where.short ? of('short') : undefined;
    return [...(harmed === undefined ? [] : [harmed]), ...(short === undefined ? [] : [short])];
  });
  if (parts.length === 0) return undefined;
  return {
    low: parts.reduce((sum, part) => sum + part.low, 0),
    high: parts.reduce((sum, part) => sum + part.high, 0),
    seqs: sortedSeqs(parts.flatMap((part) => part.seqs)),
    overlap: parts.some((part) => part.overlap === true),
  };
}

function harmedOf(
  rejected: Thousandths | undefined,
  damaged: Thousandths | undefined,
  shipped: Thousandths | undefined,
): Thousandths | undefined {
  if (rejected === undefined || damaged === undefined) return rejected ?? damaged;
  const low = Math.max(rejected.low, damaged.low);
  const high = Math.min(rejected.high + damaged.high, shipped?.high ?? Number.POSITIVE_INFINITY);
  const seqs = sortedSeqs([...rejected.seqs, ...damaged.seqs]);
  return { low, high: Math.max(low, high), seqs, overlap: low < high };
}
