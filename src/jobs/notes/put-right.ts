import { countedEntries } from '../../core/ledger/counted-entries.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Clock } from '../../core/ports/clock.js';
import type { PutRightNote } from '../../intake/notes/put-right.js';
import type { DeliveryRecord } from '../../record/store.js';
import { correctOn } from '../correct.js';
import type { Sure } from '../doubts.js';
import { strikeOn } from '../strike.js';
import { entryNamed } from '../typed/entry-named.js';
import { ofRow, type RecordedNoteLine } from './line.js';

/** Who takes the notes in, when, and whether what lies far from its kin is right. */
export interface NotesSurroundings {
  by: string;
  now: Clock;
  sure?: Sure;
  dryRun: boolean;
}

/**
 * Corrects and strikes what lines of a notes file say. A line that was obeyed before adds nothing; one that can't be
 * obeyed is a problem with its row. The reason of each names file and row.
 */
export async function putNotesRight(
  record: DeliveryRecord,
  notes: readonly PutRightNote[],
  input: NotesSurroundings,
  file: string,
): Promise<{ lines: RecordedNoteLine[]; problems: Problem[] }> {
  const lines: RecordedNoteLine[] = [];
  const problems: Problem[] = [];
  for (const note of notes) {
    const { row, text } = note;
    const say = (line: Omit<RecordedNoteLine, 'row' | 'text'>) => lines.push({ row, text, ...line });
    try {
      if (input.dryRun) {
        const names = note.is === 'strike' ? note.targets : [note.target];
        for (const one of names) entryNamed(one, record.entries);
        say({ said: text, outcome: 'understood' });
      } else if (note.is === 'strike') say(await struck(record, note, input.by, reason(note, file)));
      else problems.push(...(await corrected(record, note, input, file, say)));
    } catch (error) {
      if (!(error instanceof DossierError) || error.code !== 'bad-value') throw error;
      problems.push(ofRow(error.toProblem(), file, row));
    }
  }
  return { lines, problems };
}

const reason = ({ why, row }: PutRightNote, file: string) => `${why} (${file}, row ${row})`;

async function struck(
  record: DeliveryRecord,
  { targets }: Extract<PutRightNote, { is: 'strike' }>,
  enteredBy: string,
  why: string,
): Promise<Omit<RecordedNoteLine, 'row' | 'text'>> {
  const counted = new Set(countedEntries(record.entries).entries.map(({ entry }) => entry.seq));
  const open = targets.filter((target) => counted.has(entryNamed(target, record.entries).seq));
  if (open.length === 0) return { said: `${targets.join(', ')} struck`, outcome: 'already-held' };
  const done = await strikeOn(record, { targets: open, why, enteredBy });
  return { said: `${done.struck.map(({ what }) => what).join(', ')} struck`, outcome: 'recorded' };
}

async function corrected(
  record: DeliveryRecord,
  note: Extract<PutRightNote, { is: 'correct' }>,
  { by: enteredBy, now, sure }: NotesSurroundings,
  file: string,
  say: (line: Omit<RecordedNoteLine, 'row' | 'text'>) => void,
): Promise<Problem[]> {
  const { target, word, at, row } = note;
  const fields = omitUndefined({ at });
  const why = reason(note, file);
  const result = await correctOn(record, {
    target,
    word,
    fields,
    why,
    enteredBy,
    now,
    ...omitUndefined({ sure }),
  });
  switch (result.is) {
    case 'corrected':
      say({
        said: `${result.after}, in place of ${result.before}`,
        outcome: 'recorded',
        evidence: result.evidence,
      });
      return [];
    case 'unchanged':
      say({ said: result.said, outcome: 'already-held', evidence: result.evidence });
      return [];
    case 'doubted':
      say({ said: result.said, outcome: 'doubted', doubts: result.doubts });
      return result.problems.map((problem) => ofRow(problem, file, row));
  }
}
