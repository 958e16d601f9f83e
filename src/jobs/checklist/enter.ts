import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { boxesOf } from '../../compose/checklist/box.js';
import { checklistLabels } from '../../compose/checklist/compose.js';
import { checklistParts } from '../../compose/checklist/parts.js';
import { boxLabel, choicesOf } from '../../compose/checklist/words.js';
import { countedEntries } from '../../core/ledger/counted-entries.js';
import type { Language } from '../../core/model/delivery.js';
import type { Entry, EntryOf, NewEntry } from '../../core/model/entry.js';
import type { Problem } from '../../core/model/error.js';
import type { EvidenceId, Source } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Doubt } from '../../core/model/results/doubts.js';
import { decode } from '../../intake/table/encoding.js';
import type { DeliveryRecord } from '../../record/store.js';
import { type OpenDelivery, withDelivery } from '../delivery.js';
import { doubtProblem, KnownKin } from '../doubts.js';
import { formatReading } from '../record-reading.js';
import { readingKey, recordedReadings } from '../recorded-readings.js';
import { loadRuleSet } from '../rule-set.js';
import { checkBox } from './check-box.js';
import { type ChecklistAnswers, readAnswers } from './file.js';
import { readChecklist } from './read-checklist.js';
import { type ChecklistReading, checklistReadings } from './readings.js';

/** Media type of a typed checklist. */
const TYPED = 'text/plain';
/** What a form says of its own time: by this it is known from other tables. */
const OWN_TIMES = 'every box has its own time';

/** One box as a prompt on a terminal. */
export interface ChecklistQuestion {
  number: number;
  words: string;
  /** The part of the form that it stands in, and its stop. */
  part: string;
  /** The rest of its part says nothing without it. */
  opens?: true;
}

/** A filled-in form: its file, or its answers. */
export interface EnterChecklistInput extends OpenDelivery {
  /** The typed checklist as a file, which becomes evidence; or answers given on a terminal. */
  from: { file: string } | { answers: ChecklistAnswers };
  /** Dry run: reports how the answers are understood; nothing is written. */
  dryRun?: boolean;
  /** Answers far from their kin are right all the same: all of them, or those of the boxes named. */
  sure?: boolean | ReadonlySet<number>;
  /** Why an answer is another one than a form said before, which it then corrects. */
  why?: string | undefined;
}

/** What became of a filled-in form. */
export interface ChecklistReport {
  /** The file as evidence. */
  evidence?: EvidenceId;
  /** The evidence recorded from this very file before; nothing is added then. */
  heldAs?: EvidenceId;
  /** `held` marks a reading recorded before, in the evidence named; `doubts` one that was not recorded for them. */
  readings: {
    boxes: number[];
    said: string;
    evidence?: EvidenceId;
    held?: boolean;
    doubts?: Doubt[];
    /** The entry of an earlier form that it puts right. */
    corrects?: number;
  }[];
  problems: Problem[];
}

/** The boxes of a delivery's form as prompts in one language, in the order of their numbers. */
export async function checklistQuestions(
  open: OpenDelivery,
  language?: Language,
): Promise<ChecklistQuestion[]> {
  return withDelivery(open, false, async (record) => {
    const { delivery } = record.state();
    const labels = await checklistLabels(language ?? delivery.show.language);
    const parts = await partsOf(record);
    return parts.flatMap((part) =>
      boxesOf([part]).map(({ number, question }) => {
        const choices = choicesOf(question, labels);
        const line =
          'line' in question ? [question.line] : question.is === 'unit-check' ? [String(question.count)] : [];
        const where = [labels(`part.${part.is}`), ...(part.stop === undefined ? [] : [part.stop]), ...line];
        return {
          number,
          part: [part.is, part.stop ?? ''].join(' ').trim(),
          ...(question.is === 'inspection' && question.part === 'lot' ? { opens: true as const } : {}),
          words: `${where.join(', ')}: ${boxLabel(question, labels)}${choices === undefined ? '' : ` (${choices})`}`,
        };
      }),
    );
  });
}

/** Tells what is wrong with one answer as it is typed, given those before it; undefined when nothing is. */
export type BoxCheck = (number: number, text: string, answers: ChecklistAnswers) => Problem | undefined;

/** The check of single answers for the form of a delivery. */
export async function checklistCheck(open: OpenDelivery): Promise<BoxCheck> {
  return withDelivery(open, false, async (record) => {
    const { delivery } = record.state();
    const parts = await partsOf(record);
    const boxes = new Map(boxesOf(parts).map((box) => [box.number, box]));
    return (number, text, answers) => {
      const box = boxes.get(number);
      return box === undefined ? undefined : checkBox(box, text, answers, parts, delivery, open.now());
    };
  });
}

/**
 * Records a filled form as readings: none where an answer can't be understood, else all but those far from their kin,
 * which are problems of their box. Readings recorded before, from this file or another copy, are not added again.
 * Throws DossierError for an unreadable file, or numbers that the form does not have.
 */
export async function enterChecklist(input: EnterChecklistInput): Promise<ChecklistReport> {
  const { from, dryRun = false } = input;
  const file = 'file' in from ? await readChecklist(from.file) : undefined;
  return withDelivery(input, !dryRun, async (record) => {
    const state = record.state();
    const { delivery } = state;
    const parts = await partsOf(record);
    const count = boxesOf(parts).length;
    const answers =
      'file' in from
        ? readAnswers(decode(file ?? new Uint8Array()), count, basename(from.file))
        : from.answers;
    const { readings, problems } = checklistReadings(parts, answers, delivery, input.now(), state);
    const heldAs = file === undefined ? undefined : recordedFrom(record, file);
    const kin = new KnownKin(state, input.now());
    const held = heldReadings(record, heldAs);
    const answered = answeredBoxes(record);
    const report: ChecklistReport = {
      problems,
      ...omitUndefined({ heldAs }),
      readings: readings.map((one) => {
        const { boxes, kind, word, reading } = one;
        const said = formatReading({ kind, word }, reading);
        const evidence = held(one);
        if (evidence !== undefined) return { boxes, said, evidence, held: true };
        const earlier = answered(one);
        if (earlier !== undefined && input.why !== undefined)
          return { boxes, said, evidence: earlier.body.evidence, corrects: earlier.seq };
        if (earlier !== undefined && !isSure(one, input.sure)) {
          const field = `box ${boxes[0]}`;
          problems.push(answeredBefore(earlier.body.evidence, field));
          return { boxes, said, doubts: [] };
        }
        const doubts = kin.doubts(reading, 'typed', isSure(one, input.sure));
        if (doubts.length === 0) {
          kin.add(reading);
          return { boxes, said };
        }
        for (const doubt of doubts)
          problems.push({
            ...doubtProblem(doubt, reading, delivery),
            where: { field: `box ${boxes[0]}` },
          });
        return { boxes, said, doubts };
      }),
    };
    const misunderstood = problems.some(({ code }) => code !== 'doubtful');
    const isNew = report.readings.some((one) => one.held !== true && one.doubts === undefined);
    if (dryRun || misunderstood || !isNew) return report;
    await write(record, input, readings, report);
    return report;
  });
}

function isSure({ boxes }: ChecklistReading, sure: EnterChecklistInput['sure']): boolean {
  return typeof sure === 'boolean' || sure === undefined ? sure === true : boxes.some((box) => sure.has(box));
}

/** The evidence in which a reading was recorded before: from the same box of the same file, or with the same content. */
function heldReadings(
  record: DeliveryRecord,
  heldAs: EvidenceId | undefined,
): (one: ChecklistReading) => EvidenceId | undefined {
  const byContent = recordedReadings(record);
  const byBox = new Map<number, EvidenceId>();
  for (const { type, body } of record.entries)
    if (type === 'reading-recorded' && body.source.is === 'row' && body.source.evidence === heldAs)
      byBox.set(body.source.row, body.evidence);
  return ({ boxes: [box], reading }) =>
    (box === undefined ? undefined : byBox.get(box)) ?? byContent.get(readingKey(reading));
}

/** The reading that an earlier form had in the same box, of the same kind, which counts and says something else. */
function answeredBoxes(
  record: DeliveryRecord,
): (one: ChecklistReading) => EntryOf<'reading-recorded'> | undefined {
  const counted = countedEntries(record.entries).entries.map(({ entry }) => entry);
  const forms = new Set(counted.flatMap((entry) => (isForm(entry) ? [entry.body.evidence] : [])));
  return ({ boxes: [box], kind }) =>
    counted.find(
      (entry): entry is EntryOf<'reading-recorded'> =>
        entry.type === 'reading-recorded' &&
        entry.body.kind === kind &&
        entry.body.source.is === 'row' &&
        entry.body.source.row === box &&
        forms.has(entry.body.source.evidence),
    );
}

function isForm(entry: Entry): entry is EntryOf<'evidence-received'> {
  return (
    entry.type === 'evidence-received' &&
    entry.body.kind === 'readings' &&
    entry.body.time.is === 'none' &&
    entry.body.time.why === OWN_TIMES
  );
}

function answeredBefore(evidence: EvidenceId, field: string): Problem {
  return {
    code: 'doubtful',
    message: `an earlier form answers this box otherwise (${evidence})`,
    where: { field },
    fix: 'To put that right: --why TEXT. If both hold: --sure.',
  };
}

/** The evidence of the same bytes from an earlier command of this kind. */
function recordedFrom(record: DeliveryRecord, file: Uint8Array): EvidenceId | undefined {
  const sha256 = createHash('sha256').update(file).digest('hex');
  return record
    .state()
    .evidence.find(
      (item) => item.kind === 'readings' && item.file.sha256 === sha256 && item.file.type === TYPED,
    )?.evidence;
}

async function partsOf(record: DeliveryRecord) {
  const { delivery } = record.state();
  const { ruleSet } = await loadRuleSet(delivery.rules, record.folder);
  return checklistParts(delivery, ruleSet);
}

/** In a typed checklist the row of a reading is the number of its first box. */
async function write(
  record: DeliveryRecord,
  { from, by, why }: EnterChecklistInput,
  readings: readonly ChecklistReading[],
  report: ChecklistReport,
): Promise<void> {
  const entries: NewEntry[] = [];
  if (report.heldAs !== undefined) report.evidence = report.heldAs;
  else if ('file' in from) {
    const { file } = await record.addOriginal(from.file);
    report.evidence = record.nextEvidenceId();
    entries.push({
      type: 'evidence-received',
      by,
      body: {
        kind: 'readings',
        evidence: report.evidence,
        file: { name: basename(from.file), bytes: file.bytes, sha256: file.sha256, type: TYPED },
        time: { is: 'none', why: OWN_TIMES },
        flags: [],
        rows: report.readings.filter(({ held, doubts }) => held !== true && doubts === undefined).length,
        rowsLeftOut: report.readings.filter(({ doubts }) => doubts !== undefined).length,
      },
    });
  }
  readings.forEach(({ reading, boxes }, i) => {
    const told = report.readings[i];
    if (told === undefined || told.held === true || told.doubts !== undefined) return;
    if (told.corrects !== undefined && told.evidence !== undefined) {
      const earlier = record.entries[told.corrects];
      if (earlier?.type !== 'reading-recorded') throw new Error(`entry ${told.corrects} is no reading`);
      const body = { ...reading, evidence: told.evidence, source: earlier.body.source };
      const becomes = { type: 'reading-recorded' as const, body };
      entries.push({ type: 'entry-corrected', by, body: { entry: told.corrects, becomes, why: why ?? '' } });
      return;
    }
    const evidence = record.nextEvidenceId();
    told.evidence = evidence;
    const [row] = boxes;
    const source: Source =
      report.evidence === undefined || row === undefined
        ? { is: 'typed' }
        : { is: 'row', evidence: report.evidence, row };
    entries.push({ type: 'reading-recorded', by, body: { ...reading, evidence, source } });
  });
  await record.append(entries);
}
