import type { NewEntry } from '../core/model/entry.js';
import { type LongWork, nextStep } from '../core/ports/work.js';
import { hintFor, readCaptions } from '../intake/captions.js';
import type { LogOptions } from '../intake/draft.js';
import { type FileScan, scanFiles } from '../intake/file-scan.js';
import type { DeliveryRecord } from '../record/store.js';
import { Batch } from './collect/batch.js';
import { EvidenceByHash } from './collect/evidence-by-hash.js';
import { type GivenFile, givenSources } from './collect/given-files.js';
import { lateCaptions } from './collect/late-captions.js';
import { readLogOptions, type TypedLogOptions } from './collect/log-options.js';
import type { CollectReport } from './collect/report.js';
import { reviewRecord } from './collect/review.js';
import { CollectRun } from './collect/run.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import type { Sure } from './doubts.js';
import { openQuestions } from './questions.js';

export type { GivenFile } from './collect/given-files.js';
export type { CollectedItem, CollectReport } from './collect/report.js';

export interface CollectInput extends OpenDelivery, LongWork, TypedLogOptions {
  /** Files, and folders with all that is in them. */
  paths: readonly string[];
  /** Files whose bytes are handed over, after those at the paths. */
  given?: readonly GivenFile[];
  /** Rows of readings tables that lie far from their kin are right all the same. */
  sure?: Sure;
}

/**
 * Records files and folders as evidence: the original first, then the evidence, the readings in it, and the files
 * in it, in the order of the scan. A bad file never stops the rest; it is a problem in the report. What the report
 * calls added is on the disk. Called off, it keeps the files that had their turn, and no original of others. Throws
 * DossierError when the delivery can't be opened or the disk fails.
 */
export async function collect(input: CollectInput): Promise<CollectReport> {
  const options = await readLogOptions(input);
  return withDelivery(input, true, async (record) =>
    takeIn(record, await scanFiles(input.paths), options, input),
  );
}

async function takeIn(
  record: DeliveryRecord,
  found: FileScan,
  options: LogOptions,
  input: CollectInput,
): Promise<CollectReport> {
  const captions = await readCaptions(found.files, {
    delivery: record.state().delivery,
    now: input.now(),
  });
  const report: CollectReport = {
    items: [],
    counts: { taken: 0, held: 0, readings: 0, refused: found.problems.length },
    notices: [
      ...record.notices.map((notice) => notice.message),
      ...found.skipped.map(({ name, why }) => `Left out: ${name}, ${why}.`),
    ],
    problems: [...found.problems, ...captions.problems],
    questions: [],
  };
  const batch = new Batch(record);
  const run = new CollectRun(record, options, input, new EvidenceByHash(record.state()), batch, report);
  let done = 0;
  const sources = [
    ...found.files.map((file) => ({ found: file, hint: hintFor(captions, file) })),
    ...givenSources(input.given ?? []),
  ];
  try {
    await run.files(sources, (file) => {
      done += 1;
      nextStep(input, { what: file.name, done, total: sources.length });
    });
  } catch (error) {
    if (input.signal?.aborted === true) await callOff(record, run, batch);
    throw error;
  }
  await batch.flush();
  const late = lateCaptions(record.state(), captions, run.heldCaptions, input.by);
  await record.append(late.entries);
  report.problems.push(...late.problems);
  if (late.entries.length > 0) report.notices.push(describedNotice(late.entries));
  await reviewRecord(record, input.by, report);
  const taken = new Set(report.items.flatMap((item) => item.evidence ?? []));
  report.questions = openQuestions(record.state(), taken);
  return report;
}

/** Files that had their turn stay; an original that no entry speaks of would lie there unnoticed. */
async function callOff(record: DeliveryRecord, run: CollectRun, batch: Batch): Promise<void> {
  await run.settle();
  await batch.flush();
  await record.takeBackUnnamed();
}

function describedNotice(entries: readonly NewEntry[]): string {
  const ids = entries.flatMap(({ body }) => ('evidence' in body ? [String(body.evidence)] : []));
  return `Captions that came later describe ${ids.join(', ')}.`;
}
