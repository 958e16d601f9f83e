import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { evidenceHistory, trailOf } from '../core/assess/trail/trail.js';
import { DossierError } from '../core/model/error.js';
import { evidenceId } from '../core/model/evidence.js';
import type { TrailRow } from '../core/model/results/trail.js';
import type { RecordState } from '../core/model/state.js';
import { type Zone, zone as zoneSchema } from '../core/model/time.js';
import { inZone } from '../core/model/zoned-time.js';
import type { Clock } from '../core/ports/clock.js';
import { writeDurably } from '../record/disk/durable.js';
import { csvOf } from './csv.js';
import { type OpenDelivery, portsWith, withDelivery } from './delivery.js';
import { lastOf } from './typed/evidence-named.js';
import { placeToWrite } from './typed/place-to-write.js';

/** Which entries are asked for. */
export interface TrailInput extends OpenDelivery {
  /** Evidence whose history is requested, such as e7; the whole record by default. */
  of?: string;
  /** Zone for the times of entry; that of the first loading stop by default. */
  zone?: string;
}

/** Entries of the ledger as a table. */
export interface TrailReport {
  /** Of the delivery. */
  folder: string;
  rows: TrailRow[];
  state: RecordState;
  of?: string;
  zone: Zone;
}

/**
 * The audit trail of a delivery, or the history of one item of its evidence. Opening the record checks it. Throws
 * DossierError `bad-value` for unknown evidence, and whatever opening the record throws.
 */
export async function trail(input: TrailInput): Promise<TrailReport> {
  return withDelivery(input, false, async (record) => {
    const state = record.state();
    const zone = zoneOf(input.zone, state);
    const rows = trailOf(record.entries);
    const { folder } = input;
    if (input.of === undefined) return { folder, rows, state, zone };
    const id = evidenceId.safeParse(input.of.toLowerCase());
    const life = id.success ? evidenceHistory(rows, id.data) : [];
    if (!id.success || life.length === 0)
      throw new DossierError('bad-value', `there is no evidence ${input.of}`, {
        where: { field: '--of' },
        fix:
          lastOf(state) === 0
            ? 'Nothing was taken in yet.'
            : `Evidence is numbered e1 to e${lastOf(state)}; dossier trail shows which is what.`,
      });
    return { folder, rows: life, state, zone, of: id.data };
  });
}

function zoneOf(said: string | undefined, { delivery }: RecordState): Zone {
  if (said === undefined) return delivery.stops.find(({ does }) => does === 'load')?.zone ?? ('UTC' as Zone);
  const read = zoneSchema.safeParse(said);
  if (read.success) return read.data;
  throw new DossierError('bad-value', read.error.issues[0]?.message ?? 'not a time zone', {
    where: { field: '--zone' },
  });
}

/**
 * One row per entry: number, UTC and local time of entry, who, type, evidence, claim, time of what it reports with
 * its basis, file with hash, source, contents and changes. Text that a spreadsheet would run as a formula gets a
 * leading apostrophe (CWE-1236).
 */
export function trailCsv({ rows, zone }: Pick<TrailReport, 'rows' | 'zone'>): string {
  const header = [
    ...['entry', 'entered_utc', 'entered_local', 'zone', 'by', 'type', 'evidence', 'claim'],
    ...['time_utc', 'time_zone', 'time_basis', 'time_uncertainty_seconds', 'time_note'],
    ...['file', 'file_bytes', 'file_sha256', 'from_evidence', 'from_row', 'from_name'],
    ...['says', 'changed', 'corrects', 'strikes', 'covers_entries', 'days_late'],
    ...['merge_entry', 'other_entry', 'other_entered_utc', 'other_by'],
  ];
  const lines = rows.map((row) => {
    const { time, file, from } = row;
    const known = time?.is === 'known' ? time : undefined;
    return [
      row.seq,
      row.at,
      inZone(row.at, zone).toISO({ suppressMilliseconds: true }) ?? '',
      zone,
      row.by,
      row.type,
      row.evidence.join(' '),
      row.claim ?? '',
      known?.instant ?? '',
      known?.zone ?? '',
      known?.basis ?? '',
      known?.uncertaintySeconds ?? '',
      time === undefined || time.is === 'known' ? '' : time.why,
      file?.name ?? '',
      file?.bytes ?? '',
      file?.sha256 ?? '',
      from?.evidence ?? '',
      from?.row ?? '',
      from?.entry ?? '',
      row.fields.map(({ field, value }) => `${field}: ${value}`).join('; '),
      row.changes
        .map(({ field, before, after }) => `${field}: ${before ?? '(nothing)'} -> ${after ?? '(nothing)'}`)
        .join('; '),
      row.corrects ?? '',
      row.strikes ?? '',
      row.covers ?? '',
      row.daysLate ?? '',
      row.origin?.merge ?? '',
      row.origin?.entry ?? '',
      row.origin?.at ?? '',
      row.origin?.by ?? '',
    ];
  });
  return csvOf(header, lines);
}

/**
 * Writes the trail as a PDF, whole or not at all, in the language and page size of the delivery. Throws
 * DossierError `typesetting`, `bad-template` or `disk`.
 */
export async function writeTrailPdf(
  report: TrailReport,
  to: string,
  now: Clock,
): Promise<{ file: string; pages: number }> {
  const { composeTrail } = await import('../compose/trail/compose.js');
  const { pdf, pages } = await composeTrail({ ...report, printedAt: now().getTime() });
  const file = await placeToWrite(to, report.folder, '--pdf');
  await mkdir(dirname(file), { recursive: true });
  await writeDurably(portsWith(now), file, pdf);
  return { file, pages };
}
