import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Delivery } from '../core/model/delivery.js';
import { plannedAt, STOP_WINDOW_HOURS } from '../core/model/delivery-flags.js';
import type { NewEntry } from '../core/model/entry.js';
import { DossierError, type Problem } from '../core/model/error.js';
import type { EvidenceId, ReadingBody } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { knownMilliseconds } from '../core/model/time.js';
import type { NoteContext } from '../intake/notes/note-context.js';
import { readNotes } from '../intake/notes.js';
import { decode } from '../intake/table/encoding.js';
import { unreadable } from '../record/disk/disk-error.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { doubtProblem, KnownKin, type Sure, timeGiven } from './doubts.js';
import { ofRow, type RecordedNoteLine } from './notes/line.js';
import { putNotesRight } from './notes/put-right.js';
import { requireRoom } from './outcome-room.js';
import { formatReading, parseReading } from './record-reading.js';
import { readingKey, recordedReadings } from './recorded-readings.js';

export type { RecordedNoteLine } from './notes/line.js';

/** A file of notes to be recorded. */
export interface NotesInput extends OpenDelivery {
  file: string;
  /** Dry run: reports how each line is understood; nothing is written. */
  dryRun: boolean;
  /** Context for lines until one of them changes it. */
  standing: NoteContext;
  /** Lines far from their kin are right all the same. */
  sure?: Sure;
}

/** What became of each line of the notes. */
export interface NotesReport {
  /** The file as evidence. */
  evidence?: EvidenceId;
  lines: RecordedNoteLine[];
  counts: { recorded: number; held: number; refused: number };
  problems: Problem[];
  notices: string[];
}

const MOST_BYTES = 1024 * 1024;

/**
 * Records the readings of a notes file, with the file as their source. A line that is not understood is a problem
 * with its row, and so is one far from its kin; the others are recorded, and those that correct or strike are obeyed.
 * A line recorded before from another copy adds nothing. Throws DossierError for an unreadable file.
 */
export async function recordNotes(input: NotesInput): Promise<NotesReport> {
  const text = await readText(input.file);
  const name = basename(input.file);
  return withDelivery(input, !input.dryRun, async (record) => {
    const state = record.state();
    const { delivery } = state;
    const kin = new KnownKin(state, input.now());
    const read = readNotes(text, name, delivery, input.standing);
    const report: NotesReport = {
      lines: [],
      counts: { recorded: 0, held: 0, refused: 0 },
      problems: [...read.problems],
      notices: record.notices.map((notice) => notice.message),
    };
    const held = recordedReadings(record);
    const fresh: { line: RecordedNoteLine; body: ReadingBody }[] = [];
    for (const note of read.lines) {
      const { row, kind, word, fields } = note;
      try {
        const body = parseReading({ kind, word, fields }, delivery, input.now());
        checkDay(body, fields.at, delivery);
        const before = held.get(readingKey(body));
        if (before === undefined)
          requireRoom(state, body, input.now(), { drafts: fresh.map((one) => one.body) });
        const doubts = before === undefined ? kin.doubts(body, timeGiven(fields.at), input.sure) : [];
        const line: RecordedNoteLine = {
          row,
          text: note.text,
          said: formatReading({ kind, word }, body),
          outcome:
            before !== undefined
              ? 'already-held'
              : doubts.length > 0
                ? 'doubted'
                : input.dryRun
                  ? 'understood'
                  : 'recorded',
          ...omitUndefined({ evidence: before, doubts: doubts.length > 0 ? doubts : undefined }),
        };
        report.lines.push(line);
        for (const doubt of doubts)
          report.problems.push(ofRow(doubtProblem(doubt, body, delivery), name, row));
        if (before !== undefined || doubts.length > 0) continue;
        fresh.push({ line, body });
        kin.add(body);
      } catch (error) {
        if (!(error instanceof DossierError) || error.code !== 'bad-value') throw error;
        report.problems.push(ofRow(error.toProblem(), name, row));
      }
    }
    const put = await putNotesRight(record, read.putRight, input, name);
    report.lines.push(...put.lines);
    report.problems.push(...put.problems);
    report.lines.sort((a, b) => a.row - b.row);
    report.problems.sort((a, b) => (a.where.row ?? 0) - (b.where.row ?? 0));
    const of = (outcome: RecordedNoteLine['outcome']) =>
      report.lines.filter((line) => line.outcome === outcome).length;
    report.counts = {
      recorded: of('recorded'),
      held: of('already-held'),
      refused: read.count - report.lines.length + of('doubted'),
    };
    if (!input.dryRun && of('recorded') > 0) await write(record, input, name, fresh, report);
    return report;
  });
}

async function write(
  record: DeliveryRecord,
  { file: path, by }: NotesInput,
  name: string,
  fresh: readonly { line: RecordedNoteLine; body: ReadingBody }[],
  report: NotesReport,
): Promise<void> {
  const { file } = await record.addOriginal(path);
  const evidence = record.nextEvidenceId();
  report.evidence = evidence;
  const entries: NewEntry[] = [
    {
      type: 'evidence-received',
      by,
      body: {
        kind: 'readings',
        evidence,
        file: { name, bytes: file.bytes, sha256: file.sha256, type: 'text/plain' },
        time: { is: 'none', why: 'every line has its own time' },
        flags: [],
        rows: fresh.length,
        rowsLeftOut: report.counts.refused,
      },
    },
  ];
  for (const { line, body } of fresh) {
    line.evidence = record.nextEvidenceId();
    entries.push({
      type: 'reading-recorded',
      by,
      body: { ...body, evidence: line.evidence, source: { is: 'row', evidence, row: line.row } },
    });
  }
  await record.append(entries);
}

/**
 * A time without a date is the last such time before now; one far from its stop's planned time was meant for
 * another day.
 */
function checkDay(body: ReadingBody, typed: string | string[] | undefined, delivery: Delivery): void {
  if (typeof typed !== 'string' || /\d{4}|\d[-/.]\d/.test(typed)) return;
  const stop = delivery.stops.find(({ id }) => id === body.place?.stop);
  const planned = stop === undefined ? undefined : plannedAt(stop);
  const at = knownMilliseconds(body.time);
  if (planned === undefined || at === undefined || stop === undefined) return;
  if (Math.abs(at - planned) <= STOP_WINDOW_HOURS * 3_600_000) return;
  throw new DossierError(
    'bad-value',
    `without a date this is ${new Date(at).toISOString().slice(0, 10)}, far from the planned time of ${stop.id}`,
    { where: {}, fix: 'write the day on a line above the notes, such as 2026-07-14, or give --date' },
  );
}

async function readText(path: string): Promise<string> {
  const refuse = (message: string, fix: string) =>
    new DossierError('unreadable-file', message, { where: { file: path }, fix });
  let size: number;
  try {
    const found = await stat(path);
    if (!found.isFile()) throw refuse('it is not a file', 'Name a text file with one note a line.');
    size = found.size;
    if (size > MOST_BYTES)
      throw refuse(`${size} bytes are no notes`, 'Name a text file with one note a line.');
    return decode(await readFile(path));
  } catch (cause) {
    if (cause instanceof DossierError) throw cause;
    throw unreadable(path, cause);
  }
}
