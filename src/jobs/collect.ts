import { type Captions, hintFor, readCaptions } from '../intake/captions.js';
import type { LogOptions } from '../intake/draft.js';
import { type Examined, examineFile } from '../intake/examine.js';
import { type FoundFile, walk } from '../intake/walk.js';
import type { Delivery } from '../model/delivery.js';
import type { NewEntry } from '../model/entry.js';
import { DossierError, type Problem } from '../model/error.js';
import type { EvidenceId, Flag, Sha256 } from '../model/evidence.js';
import { parseTemperature } from '../model/temperature.js';
import { type EventTime, inZone, zone as zoneSchema } from '../model/time.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';

export interface CollectInput extends OpenDelivery {
  paths: readonly string[];
  logZone: string | undefined;
  logUnit: string | undefined;
  progress: (done: number, total: number, name: string) => void;
}

/** What became of one file. */
export interface CollectedItem {
  file: string;
  outcome: 'taken-in' | 'already-held' | 'refused';
  evidence?: EvidenceId;
  takenFor: string;
  time?: EventTime;
  /** The time in words, with zone and basis. */
  when: string;
  flags: Flag[];
  readings: number;
}

export interface CollectReport {
  items: CollectedItem[];
  counts: { taken: number; held: number; readings: number; refused: number };
  notices: string[];
  problems: Problem[];
}

/** Files that are examined side by side: two keep two cores busy. */
const AT_ONCE = 2;

/**
 * Takes files and folders in: original first, then what it was taken for, then the readings in it, in the
 * order of the walk. One bad file never stops the rest; it is a problem in the report.
 * Throws DossierError when the delivery can't be opened or the disk fails.
 */
export async function collect(input: CollectInput): Promise<CollectReport> {
  const options = logOptions(input);
  return withDelivery(input, true, async (record) => {
    const found = await walk(input.paths);
    const captions = await readCaptions(found.files);
    const report: CollectReport = {
      items: [],
      counts: { taken: 0, held: 0, readings: 0, refused: found.problems.length },
      notices: [
        ...record.notices.map((notice) => notice.message),
        ...found.skipped.map(({ name, why }) => `Left out: ${name}, ${why}.`),
      ],
      problems: [...found.problems, ...captions.problems],
    };
    const holders = new Map(
      record.state().evidence.flatMap((item) => ('file' in item ? [[item.file.sha256, item.evidence]] : [])),
    );
    const { delivery } = record.state();
    // Logs that could not be read before for want of a zone are read when the zone is given.
    const zoneless = zonelessLogs(record);
    let done = 0;
    await inOrder(
      found.files,
      async (file) => examineOne(record, delivery, file, captions, options, zoneless),
      async (file, result) => {
        done += 1;
        input.progress(done, found.files.length, file.name);
        await keep(record, file, result, input.by, holders, report);
      },
    );
    return report;
  });
}

type Result =
  | { is: 'held'; sha256: Sha256 }
  | { is: 'refused'; problem: Problem }
  | { is: 'examined'; examined: Examined };

async function examineOne(
  record: DeliveryRecord,
  delivery: Delivery,
  found: FoundFile,
  captions: Captions,
  options: LogOptions,
  zoneless: ReadonlyMap<Sha256, EvidenceId>,
): Promise<Result> {
  try {
    const { file, isNew } = await record.addOriginal(found.path);
    const waiting = options.logZone !== undefined && zoneless.has(file.sha256);
    if (!isNew && !waiting) return { is: 'held', sha256: file.sha256 };
    const examined = await examineFile({
      path: file.path,
      name: found.name,
      file: { name: found.name, bytes: file.bytes, sha256: file.sha256 },
      delivery,
      hint: hintFor(captions, found),
      options,
    });
    return { is: 'examined', examined };
  } catch (error) {
    if (!(error instanceof DossierError) || error.code === 'disk') throw error;
    return { is: 'refused', problem: error.toProblem() };
  }
}

async function keep(
  record: DeliveryRecord,
  found: FoundFile,
  result: Result,
  by: string,
  holders: Map<Sha256, EvidenceId>,
  report: CollectReport,
): Promise<void> {
  const bare = { file: found.name, when: '', flags: [], readings: 0 };
  switch (result.is) {
    case 'held': {
      const evidence = holders.get(result.sha256);
      report.counts.held += 1;
      report.items.push({
        ...bare,
        outcome: 'already-held',
        takenFor: `the same bytes as ${evidence ?? 'a file above'}; nothing added`,
        ...(evidence === undefined ? {} : { evidence }),
      });
      return;
    }
    case 'refused':
      report.counts.refused += 1;
      report.problems.push(result.problem);
      report.items.push({ ...bare, outcome: 'refused', takenFor: 'not taken in, see below' });
      return;
    case 'examined': {
      const { received, readings, problems, takenFor } = result.examined;
      const evidence = record.nextEvidenceId();
      const before = holders.get(received.file.sha256);
      const entries: NewEntry[] = [
        { type: 'evidence-received', by, body: { ...received, evidence } },
        ...(before === undefined ? [] : [readAgain(before, evidence, by)]),
        ...readings.map(
          ({ row, reading }): NewEntry => ({
            type: 'reading-recorded',
            by,
            body: { ...reading, evidence: record.nextEvidenceId(), source: { is: 'row', evidence, row } },
          }),
        ),
      ];
      await record.append(entries);
      holders.set(received.file.sha256, evidence);
      report.counts.taken += 1;
      report.counts.readings += readings.length;
      report.problems.push(...problems);
      report.items.push({
        file: found.name,
        outcome: 'taken-in',
        evidence,
        takenFor,
        time: received.time,
        when: whenInWords(received.time),
        flags: received.flags ?? [],
        readings: readings.length,
      });
      return;
    }
  }
}

/** Documents that are logs without a known zone, by the hash of their file. */
function zonelessLogs(record: DeliveryRecord): ReadonlyMap<Sha256, EvidenceId> {
  const found = new Map<Sha256, EvidenceId>();
  for (const item of record.state().evidence) {
    if (item.kind === 'unit-log') found.delete(item.file.sha256);
    if (item.kind === 'document' && item.flags.some((flag) => flag.is === 'time-zone-unknown'))
      found.set(item.file.sha256, item.evidence);
  }
  return found;
}

function readAgain(before: EvidenceId, evidence: EvidenceId, by: string): NewEntry {
  return {
    type: 'evidence-described',
    by,
    body: {
      evidence: before,
      caption: `The same file is read as a unit log in ${evidence}.`,
      why: 'its zone was given',
    },
  };
}

/** Runs `work` a few at a time and hands each result on in the order of the list. */
async function inOrder<T, R>(
  list: readonly T[],
  work: (item: T) => Promise<R>,
  then: (item: T, result: R) => Promise<void>,
): Promise<void> {
  const running: Promise<R>[] = [];
  const start = (i: number) => {
    const item = list[i];
    if (item === undefined) return;
    const promise = work(item);
    // Awaited below in its turn; this only keeps an early failure from counting as unhandled.
    promise.catch(() => undefined);
    running[i] = promise;
  };
  for (let i = 0; i < AT_ONCE; i += 1) start(i);
  for (const [i, item] of list.entries()) {
    const result = await running[i];
    start(i + AT_ONCE);
    if (result !== undefined) await then(item, result);
  }
}

function whenInWords(time: EventTime): string {
  switch (time.is) {
    case 'known': {
      const local = inZone(time.instant, time.zone).setLocale('en-US');
      return `${local.toFormat('d LLL HH:mm')} ${local.offsetNameShort ?? local.toFormat('ZZ')} (${time.basis})`;
    }
    case 'local':
      return `${time.local.replace('T', ' ')} (zone unknown)`;
    case 'none':
      return '';
  }
}

function logOptions({ logZone, logUnit }: CollectInput): LogOptions {
  const options: LogOptions = {};
  if (logZone !== undefined) {
    const read = zoneSchema.safeParse(logZone);
    if (!read.success)
      throw new DossierError('bad-usage', read.error.issues[0]?.message ?? 'not a time zone', {
        where: { field: '--log-zone' },
      });
    options.logZone = read.data;
  }
  if (logUnit !== undefined) {
    const read = parseTemperature(`0${logUnit}`);
    if (read === undefined)
      throw new DossierError('bad-usage', `"${logUnit}" is not a unit of temperature`, {
        where: { field: '--log-unit' },
        fix: 'Use F or C.',
      });
    options.logUnit = read.unit;
  }
  return options;
}
