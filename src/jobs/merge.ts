import { realpath } from 'node:fs/promises';
import { countedEntries } from '../core/ledger/counted-entries.js';
import { entryBytes, printRow } from '../core/ledger/ledger.js';
import type { MergeConflict } from '../core/ledger/merge/conflict.js';
import type { MergePlan } from '../core/ledger/merge/merge-plan.js';
import { planMerge } from '../core/ledger/merge/plan.js';
import { sha256Of } from '../core/ledger/tree.js';
import type { Entry, NewEntry } from '../core/model/entry.js';
import { DossierError, type Problem } from '../core/model/error.js';
import type { EvidenceId } from '../core/model/evidence.js';
import { type DeliveryRecord, openRecord } from '../record/store.js';
import { compareCameras } from './collect/review.js';
import { type OpenDelivery, portsWith, withDelivery } from './delivery.js';
import { doubtProblem, KnownKin } from './doubts.js';
import { factConflicts } from './merge/facts.js';
import { keepOriginals } from './merge/originals.js';
import { conflictProblem } from './merge/words.js';

/** Another record of the same delivery, to be merged into this one. */
export interface MergeInput extends OpenDelivery {
  /** The folder of the other record; it stays as it is. */
  other: string;
  /** Dry run: reports what would be taken; nothing is written. */
  dryRun?: boolean;
}

/** An entry that was taken over. */
export interface TakenOver {
  /** Its number here and in the other record. */
  entry: number;
  entryThere: number;
  type: Entry['type'];
  evidence?: EvidenceId;
  /** Of a file: its name. */
  file?: string;
  /** Who entered it first. */
  by: string;
}

/** What a merge took, what this record had already, and what is left to a person. */
export interface MergeReport {
  /** The entry that tells of the merge; none where this record lacked nothing. */
  merge?: number;
  other: { delivery: string; size: number; root: string };
  /** Entries with which both begin. */
  shared: number;
  taken: TakenOver[];
  held: number;
  /** Fingerprints, time stamps and dossiers of the other record: they stay in its ledger, which is kept. */
  statesThere: number;
  conflicts: MergeConflict[];
  /** The conflicts, and what of the entries taken lies far from its kin, in words. */
  problems: Problem[];
  notices: string[];
}

/**
 * Takes over from another record of the same delivery what this one lacks: files, readings, descriptions, claim notes,
 * corrections and strikes, each as an entry that names where it was. Where both say different things of the same
 * thing, this record's word stays and the two are named. Merging again adds nothing.
 * @throws DossierError 'bad-value' for a record of another delivery, 'record-missing' or 'record-damaged' for one that
 * is not there or not whole
 */
export async function merge(input: MergeInput): Promise<MergeReport> {
  await mustBeTwo(input);
  const other = await openRecord(input.other, portsWith(input.now), { write: false });
  try {
    return await withDelivery(input, input.dryRun !== true, async (record) => {
      mustBeOneDelivery(record, other, input.other);
      const ledger = Buffer.concat(other.entries.map((entry) => printRow(entryBytes(entry))));
      const plan = planMerge(record, {
        entries: other.entries,
        leaves: other.leaves,
        delivery: other.head.delivery,
        ledger: { bytes: ledger.length, sha256: sha256Of(ledger) },
      });
      const isNew = plan.taken.length > 0 || !plan.isKnown;
      const report = reportOf(plan, record, other, input);
      if (!isNew) return report;
      if (input.dryRun === true) return { ...report, merge: record.entries.length };
      await keepOriginals(plan, ledger, record, other);
      await record.append([
        mergeEntry(plan, input.by),
        ...plan.taken.map((one) => takenEntry(one, input.by)),
      ]);
      await compareCameras(record, input.by);
      return { ...report, merge: plan.merge.own.size };
    });
  } finally {
    await other.close();
  }
}

async function mustBeTwo({ folder, other }: MergeInput): Promise<void> {
  const real = (path: string) => realpath(path).catch(() => path);
  if ((await real(folder)) === (await real(other)))
    throw new DossierError('bad-usage', 'this is the same folder', {
      where: { file: other },
      fix: 'Name the other copy of the delivery: dossier merge OTHER -d THIS',
    });
}

function mustBeOneDelivery(own: DeliveryRecord, other: DeliveryRecord, folder: string): void {
  const [here, there] = [own.state().delivery.delivery, other.state().delivery.delivery];
  if (here === there) return;
  throw new DossierError('bad-value', `it is a record of delivery ${there}, and this one is of ${here}`, {
    where: { file: folder },
    fix: 'Records of different deliveries are not merged. If it is the same delivery, write the same number into delivery.yaml of both.',
  });
}

function reportOf(
  plan: MergePlan,
  record: DeliveryRecord,
  other: DeliveryRecord,
  { other: folder, now }: MergeInput,
): MergeReport {
  const { delivery } = record.state();
  const conflicts = [...factConflicts(record.entries, other.entries), ...plan.conflicts];
  const kin = new KnownKin(record.state(), now());
  const doubts = countedEntries(plan.result).entries.flatMap(({ entry }) => {
    if (entry.type !== 'reading-recorded' || entry.seq < record.entries.length) return [];
    const found = kin.doubts(entry.body, 'typed').map((doubt) => {
      const problem = doubtProblem(doubt, entry.body, delivery);
      return {
        ...problem,
        where: { field: entry.body.evidence },
        fix: `Both stay. If one is wrong: dossier correct or dossier strike ${entry.body.evidence}${'evidence' in doubt && doubt.evidence !== undefined ? ` or ${doubt.evidence}` : ''}.`,
      };
    });
    kin.add(entry.body);
    return found;
  });
  return {
    other: plan.merge.other,
    shared: plan.merge.shared,
    taken: plan.taken.map(({ entry, origin }) => ({
      entry: entry.seq,
      entryThere: origin.entry,
      type: entry.type,
      by: origin.by,
      ...('evidence' in entry.body && typeof entry.body.evidence === 'string'
        ? { evidence: entry.body.evidence }
        : {}),
      ...(entry.type === 'evidence-received' ? { file: entry.body.file.name } : {}),
    })),
    held: plan.held,
    statesThere: other.entries.filter(({ seq, type }) => seq >= plan.merge.shared && STATES.has(type)).length,
    conflicts,
    problems: [...conflicts.map((conflict) => conflictProblem(conflict, folder)), ...doubts],
    notices: [...record.notices, ...other.notices].map(({ message }) => message),
  };
}

const STATES: ReadonlySet<Entry['type']> = new Set([
  'fingerprint-published',
  'time-stamp-received',
  'dossier-built',
]);

function mergeEntry({ merge: body }: MergePlan, by: string): NewEntry {
  return { type: 'record-merged', by, body };
}

function takenEntry({ entry }: MergePlan['taken'][number], by: string): NewEntry {
  const { seq: _seq, at: _at, by: _by, ...taken } = entry;
  return { ...taken, by };
}
