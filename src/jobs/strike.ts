import { countedEntries } from '../core/ledger/counted-entries.js';
import { dependentsOf } from '../core/ledger/dependents.js';
import type { Entry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { entryNamed } from './typed/entry-named.js';

/** What does not count any more, and why. */
export interface StrikeInput {
  folder: string;
  /** What does not count: evidence by its id (e12), or entries by number (#41). */
  targets: readonly string[];
  why: string;
  /** Strikes what rests on them as well: the rows of a table, the files of an archive. */
  withDependents?: boolean | undefined;
  enteredBy: string;
  now: OpenDelivery['now'];
}

/** A struck entry, and the entry that strikes it, by their numbers. */
export interface StruckEntry {
  entry: number;
  strike: number;
  /** The evidence that it brought in, or the kind of entry. */
  what: string;
}

/** The entries that were struck. */
export interface StrikeReport {
  struck: StruckEntry[];
}

/**
 * Says of earlier entries that they do not count. They stay readable in the record, with the reason.
 * @throws DossierError 'bad-value' when one is not there, was struck already, or carries others that count
 */
export async function strike(input: StrikeInput): Promise<StrikeReport> {
  const open = { folder: input.folder, by: input.enteredBy, now: input.now };
  return withDelivery(open, true, async (record) => strikeOn(record, input));
}

/** What `strike` does, on a record that is open for writing. */
export async function strikeOn(
  record: DeliveryRecord,
  input: Omit<StrikeInput, 'folder' | 'now'>,
): Promise<StrikeReport> {
  const { entries } = record;
  const named = input.targets.map((target) => entryNamed(target, entries));
  const wanted = new Set(named.map(({ seq }) => seq));
  const order: Entry[] = [];
  for (const entry of named) inOrder(entry, entries, order, wanted, input.withDependents === true);
  const added = await record.append(
    order.map(({ seq }) => ({
      type: 'entry-struck' as const,
      by: input.enteredBy,
      body: { entry: seq, why: input.why },
    })),
  );
  return {
    struck: order.map((entry, i) => ({
      entry: entry.seq,
      strike: added[i]?.seq ?? -1,
      what: nameOf(entry),
    })),
  };
}

/** Puts what rests on an entry before the entry itself. */
function inOrder(
  entry: Entry,
  entries: readonly Entry[],
  order: Entry[],
  wanted: ReadonlySet<number>,
  withDependents: boolean,
): void {
  if (order.includes(entry)) return;
  const resting = dependentsOf(entry, entries);
  const missing = resting.filter(({ seq }) => !wanted.has(seq));
  if (missing.length > 0 && !withDependents)
    throw new DossierError(
      'bad-value',
      `${nameOf(entry)} carries others: ${missing.map(nameOf).join(', ')}`,
      {
        fix: 'Strike these as well with --with-dependents, or correct the one that is wrong.',
      },
    );
  for (const one of resting) inOrder(one, entries, order, wanted, withDependents);
  order.push(entry);
}

function nameOf(entry: Entry): string {
  return entry.type === 'evidence-received' || entry.type === 'reading-recorded'
    ? entry.body.evidence
    : `#${entry.seq} (${entry.type})`;
}

/** What counts all the same, and why. */
export interface AdmitInput {
  folder: string;
  /** Evidence that the tool judged to belong elsewhere, by its id. */
  target: string;
  why: string;
  enteredBy: string;
  now: OpenDelivery['now'];
}

/**
 * Says that evidence counts although the tool judged it to be of another trailer, delivery or time.
 * @throws DossierError 'bad-value' when there is no such evidence, or when it counts already
 */
export async function admit(input: AdmitInput): Promise<{ entry: number; evidence: string }> {
  const open = { folder: input.folder, by: input.enteredBy, now: input.now };
  return withDelivery(open, true, async (record) => {
    const { seq } = entryNamed(input.target, record.entries);
    const item = record.state().notCounted.find((one) => one.seq === seq);
    if (item === undefined) {
      const counts = countedEntries(record.entries).entries.some(({ entry }) => entry.seq === seq);
      throw new DossierError(
        'bad-value',
        counts ? `${input.target} counts already` : `${input.target} was struck`,
        { fix: counts ? 'Nothing needs to be done.' : 'Strike the strike by its number in: dossier trail' },
      );
    }
    const [added] = await record.append([
      {
        type: 'evidence-admitted',
        by: input.enteredBy,
        body: { evidence: item.evidence, why: input.why },
      },
    ]);
    return { entry: added?.seq ?? -1, evidence: item.evidence };
  });
}
