import { extname } from 'node:path';
import type { Delivery } from '../../core/model/delivery.js';
import type { NewEntry } from '../../core/model/entry.js';
import { DossierError } from '../../core/model/error.js';
import type { EvidenceId, Sha256 } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Clock } from '../../core/ports/clock.js';
import type { ContainerContents, LogOptions } from '../../intake/draft.js';
import { type ExaminedFile, examineFile } from '../../intake/examine.js';
import type { FoundFile } from '../../intake/file-scan.js';
import type { DeliveryRecord } from '../../record/store.js';
import type { Batch } from './batch.js';
import type { EvidenceByHash } from './evidence-by-hash.js';
import type { FileResult } from './file-result.js';
import type { HeldCaption } from './late-captions.js';
import {
  allowedFiles,
  containerRef,
  isArchive,
  keptInsideProblem,
  type NestingContext,
  oneLevelDeeper,
} from './nesting.js';
import { ReadingRows, type TakingIn, withoutDoubted } from './reading-rows.js';
import { reimportEntries } from './reimport.js';
import { type CollectedItem, type CollectReport, formatEventTime, formatTaken } from './report.js';
import { type Source, sourcesInside } from './sources.js';
import { WorkAhead } from './work-ahead.js';

/** Files examined side by side, so that some are ready while others wait; what takes much memory has limits of its own. */
const AT_ONCE = 12;

/** One run of `collect`: records files in order, and the files in them. */
export class CollectRun {
  readonly #record: DeliveryRecord;
  readonly #delivery: Delivery;
  readonly #options: LogOptions;
  readonly #by: string;
  readonly #now: Clock;
  /** Captions of files that the record held already. */
  readonly heldCaptions: HeldCaption[] = [];
  readonly #sure: boolean;
  readonly #rows: ReadingRows;
  readonly #holders: EvidenceByHash;
  readonly #batch: Batch;
  readonly #report: CollectReport;
  /** Hashes taken up by this run, so that the second of two equal files is a duplicate whichever comes first. */
  readonly #taken = new Set<Sha256>();
  readonly #signal: AbortSignal | undefined;
  readonly #ahead = new WorkAhead(AT_ONCE);
  readonly #same: { item: CollectedItem; sha256: Sha256; readSo: boolean }[] = [];

  constructor(
    record: DeliveryRecord,
    options: LogOptions,
    input: TakingIn,
    byHash: EvidenceByHash,
    batch: Batch,
    report: CollectReport,
  ) {
    this.#record = record;
    this.#delivery = record.state().delivery;
    this.#options = options;
    this.#by = input.by;
    this.#signal = input.signal;
    this.#now = input.now;
    this.#sure = input.sure !== undefined;
    this.#rows = new ReadingRows(record, input);
    this.#holders = byHash;
    this.#batch = batch;
    this.#report = report;
  }

  /** Records files. `onEach` is called for each in turn. */
  async files(sources: readonly Source[], onEach: (file: FoundFile) => void): Promise<void> {
    await this.#take(sources, undefined, onEach);
    // The evidence with the same bytes is known only after both had their turn.
    for (const { item, sha256, readSo } of this.#same.splice(0)) {
      const evidence = this.#holders.of(sha256);
      const struck = this.#holders.isStruck(sha256) ? ', which was struck' : '';
      const held = `the same bytes as ${evidence ?? 'a file that was refused'}${struck}`;
      item.takenFor = `${held}${readSo ? ', read in this way already' : ''}; nothing added`;
      if (evidence !== undefined) item.evidence = evidence;
    }
  }

  /** Waits for the files that are still being examined: nothing is added to the record after it. */
  async settle(): Promise<void> {
    await this.#ahead.settle();
  }

  async #take(
    sources: readonly Source[],
    around: NestingContext | undefined,
    onEach: (file: FoundFile) => void,
  ): Promise<void> {
    const examined = this.#ahead.results(sources, (source) => this.#examine(source));
    for await (const { thing: source, result } of examined) {
      onEach(source.found);
      await this.#keep(source, result, around);
    }
  }

  async #examine({ found, hint, inside }: Source): Promise<FileResult> {
    try {
      this.#signal?.throwIfAborted();
      const { file } =
        inside === undefined
          ? await this.#record.addOriginal(found.path, { signal: this.#signal })
          : await this.#record.addOriginalStream(inside.read(), extname(inside.entry), inside.bytes);
      const { sha256 } = file;
      const container = this.#holders.isContainer(sha256);
      const inThisRun = this.#taken.has(sha256);
      const isNew = this.#holders.of(sha256) === undefined && !inThisRun;
      // Log options may make another reading of a file that the record holds.
      const again = !inThisRun && Object.keys(this.#options).length > 0 && this.#holders.mayBeRead(sha256);
      const table = !this.#sure || inThisRun ? undefined : this.#holders.readingsTable(sha256);
      this.#taken.add(sha256);
      if (!isNew && !again && !container && table === undefined)
        return { is: 'held', sha256, archive: false };
      const examined = await examineFile({
        path: file.path,
        name: found.name,
        file: { name: found.name, bytes: file.bytes, sha256 },
        delivery: this.#delivery,
        hint,
        options: this.#options,
      });
      // A run that was cut off may have recorded the archive and not all files in it.
      if (!isNew && container)
        return { is: 'held', sha256, inside: examined.inside, archive: isArchive(examined) };
      if (table !== undefined) return { is: 'table', evidence: table, examined };
      // The options may still not suffice to read it.
      const readNow = examined.received.kind === 'unit-log' || examined.readings.length > 0;
      if (!isNew && !readNow) return { is: 'held', sha256, archive: false, problems: examined.problems };
      if (examined.received.kind === 'unit-log' && this.#holders.isReadBy(sha256, examined.received.mapping))
        return { is: 'held', sha256, archive: false, readSo: true };
      return { is: 'examined', examined };
    } catch (error) {
      if (!(error instanceof DossierError) || error.code === 'disk') throw error;
      return { is: 'refused', error };
    }
  }

  async #keep(source: Source, result: FileResult, around: NestingContext | undefined): Promise<void> {
    const { found } = source;
    const bare = {
      file: found.name,
      when: '',
      flags: [],
      readings: 0,
      ...omitUndefined({ within: around?.within }),
    };
    const { counts, items, problems } = this.#report;
    switch (result.is) {
      case 'held': {
        const evidence = this.#holders.of(result.sha256);
        counts.held += 1;
        this.heldCaptions.push({ sha256: result.sha256, name: found.name, hint: source.hint });
        problems.push(...(result.problems ?? []));
        const item: CollectedItem = { ...bare, outcome: 'already-held', takenFor: '' };
        items.push(item);
        this.#same.push({ item, sha256: result.sha256, readSo: result.readSo ?? false });
        if (result.inside !== undefined && evidence !== undefined)
          await this.#inside(source, result.inside, evidence, result.archive, around);
        return;
      }
      case 'refused':
        counts.refused += 1;
        problems.push(result.error.toProblem());
        items.push({ ...bare, outcome: 'refused', takenFor: 'not taken in, see below' });
        return;
      case 'table':
        return this.#rowsOf(source, result.evidence, result.examined, bare);
      case 'examined': {
        const evidence = await this.#enter(source, result.examined, around, bare);
        if (result.examined.inside !== undefined)
          await this.#inside(source, result.examined.inside, evidence, isArchive(result.examined), around);
      }
    }
  }

  async #enter(
    { found, inside }: Source,
    examined: ExaminedFile,
    around: NestingContext | undefined,
    bare: Pick<CollectedItem, 'file' | 'when' | 'flags' | 'readings' | 'within'>,
  ): Promise<EvidenceId> {
    const { received } = examined;
    const { readings, repeated, doubted, problems } = this.#rows.choose(examined.readings, found.name);
    const { sha256 } = received.file;
    const before = this.#holders.of(sha256);
    const replaces = received.kind === 'unit-log' ? this.#holders.log(sha256)?.evidence : undefined;
    const evidence = this.#record.nextEvidenceId();
    const within = containerRef(around, inside);
    const by = this.#by;
    const entries: NewEntry[] = [
      {
        type: 'evidence-received',
        by,
        body: {
          ...withoutDoubted(received, doubted),
          evidence,
          ...omitUndefined({ within, replaces }),
        },
      },
      ...(before === undefined
        ? []
        : reimportEntries(this.#holders, before, { evidence, received, replaces, by })),
      ...this.#rows.entries(readings, evidence),
    ];
    const { counts, items } = this.#report;
    const item: CollectedItem = {
      ...bare,
      outcome: 'taken-in',
      evidence,
      takenFor: formatTaken(examined.takenFor, repeated, doubted, replaces),
      time: received.time,
      when: formatEventTime(received.time),
      flags: received.flags ?? [],
      readings: readings.length,
    };
    counts.taken += 1;
    counts.readings += readings.length;
    this.#report.problems.push(...examined.problems, ...problems);
    items.push(item);
    this.#holders.add({ ...received, evidence });
    await this.#batch.add({
      entries,
      refused: (problem) => {
        counts.taken -= 1;
        counts.readings -= readings.length;
        counts.refused += 1;
        item.outcome = 'refused';
        item.takenFor = 'not taken in, see below';
        delete item.evidence;
        this.#report.problems.push({ ...problem, where: { ...problem.where, file: found.name } });
      },
    });
    return evidence;
  }

  /** Records the rows of a table that was taken in before without them. */
  async #rowsOf(
    { found }: Source,
    evidence: EvidenceId,
    examined: ExaminedFile,
    bare: Pick<CollectedItem, 'file' | 'when' | 'flags' | 'readings' | 'within'>,
  ): Promise<void> {
    const { readings, problems } = this.#rows.chooseMissing(evidence, examined.readings, found.name);
    this.#report.problems.push(...problems);
    const { counts, items } = this.#report;
    counts.held += 1;
    counts.readings += readings.length;
    const added = readings.length === 0 ? 'nothing added' : `${readings.length} rows of it added`;
    const item: CollectedItem = {
      ...bare,
      outcome: 'already-held',
      evidence,
      readings: readings.length,
      takenFor: `the same bytes as ${evidence}; ${added}`,
    };
    items.push(item);
    await this.#batch.add({
      entries: this.#rows.entries(readings, evidence),
      refused: (problem) => {
        counts.readings -= readings.length;
        item.readings = 0;
        this.#report.problems.push({ ...problem, where: { ...problem.where, file: found.name } });
      },
    });
  }

  /** Records the files of an e-mail or archive, within the limits of nesting and size. */
  async #inside(
    { found }: Source,
    inside: ContainerContents,
    evidence: EvidenceId,
    archive: boolean,
    outer: NestingContext | undefined,
  ): Promise<void> {
    try {
      const around = { within: evidence, ...oneLevelDeeper(outer, archive) };
      const { files, left } = allowedFiles(inside.files, around);
      this.#report.problems.push(...left.map((why) => keptInsideProblem(found, why)));
      this.#report.notices.push(...inside.skipped.map(({ name, why }) => `Left out: ${name}, ${why}.`));
      const { sources, problems } = await sourcesInside(
        found,
        files,
        async (one) =>
          (await this.#record.addOriginalStream(one.read(), extname(one.entry), one.bytes)).file.path,
        { delivery: this.#delivery, now: this.#now() },
      );
      this.#report.problems.push(...problems);
      await this.#take(sources, around, () => undefined);
    } finally {
      inside.close();
    }
  }
}
