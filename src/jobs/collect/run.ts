import { extname, join } from 'node:path';
import { type Captions, hintFor, placeOf, readCaptions } from '../../intake/captions.js';
import type { Hint, Inside, InsideFile, LogOptions } from '../../intake/draft.js';
import { type Examined, examineFile } from '../../intake/examine.js';
import type { FoundFile } from '../../intake/walk.js';
import type { Delivery } from '../../model/delivery.js';
import type { NewEntry } from '../../model/entry.js';
import { DossierError, type Problem } from '../../model/error.js';
import type { EvidenceId, Sha256, Within } from '../../model/evidence.js';
import type { DeliveryRecord } from '../../record/store.js';
import type { Batch } from './batch.js';
import type { Holders } from './holders.js';
import { inOrder } from './in-order.js';
import { type CollectedItem, type CollectReport, whenInWords } from './report.js';

/** E-mails and archives within each other, and archives among them: what people forward lies well within. */
const MOST_CONTAINERS = 3;
const MOST_ARCHIVES = 2;
/** All that may come out of one file, however it is nested. */
const MOST_INSIDE = { files: 5_000, bytes: 4 * 1024 ** 3 };

/** A file on the disk, or one in an e-mail or archive. */
interface Source {
  found: FoundFile;
  hint: Hint;
  inside?: InsideFile;
}

/** What a file came in, and what may still come out of the same outermost file. */
interface Around {
  within: EvidenceId;
  containers: number;
  archives: number;
  left: { files: number; bytes: number };
}

type Result =
  | { is: 'held'; sha256: Sha256; inside?: Inside | undefined; archive: boolean; problems?: Problem[] }
  | { is: 'refused'; error: DossierError }
  | { is: 'examined'; examined: Examined };

/** One run of `collect`: takes files in, in order, and files that came in them. */
export class CollectRun {
  readonly #record: DeliveryRecord;
  readonly #delivery: Delivery;
  readonly #options: LogOptions;
  readonly #by: string;
  readonly #holders: Holders;
  readonly #batch: Batch;
  readonly #report: CollectReport;

  constructor(
    record: DeliveryRecord,
    options: LogOptions,
    by: string,
    holders: Holders,
    batch: Batch,
    report: CollectReport,
  ) {
    this.#record = record;
    this.#delivery = record.state().delivery;
    this.#options = options;
    this.#by = by;
    this.#holders = holders;
    this.#batch = batch;
    this.#report = report;
  }

  /** Takes in what was found. `onEach` is told of each in turn. */
  async files(
    found: readonly FoundFile[],
    captions: Captions,
    onEach: (file: FoundFile) => void,
  ): Promise<void> {
    const sources = found.map((file) => ({ found: file, hint: hintFor(captions, file) }));
    await this.#take(sources, undefined, onEach);
  }

  async #take(
    sources: readonly Source[],
    around: Around | undefined,
    onEach: (file: FoundFile) => void,
  ): Promise<void> {
    await inOrder(
      sources,
      (source) => this.#examine(source),
      async (source, result) => {
        onEach(source.found);
        await this.#keep(source, result, around);
      },
    );
  }

  async #examine({ found, hint, inside }: Source): Promise<Result> {
    try {
      const { file, isNew } =
        inside === undefined
          ? await this.#record.addOriginal(found.path)
          : await this.#record.addOriginalStream(inside.read(), extname(inside.entry), inside.bytes);
      const { sha256 } = file;
      const again = Object.keys(this.#options).length > 0 && this.#holders.isUnreadTable(sha256);
      const container = this.#holders.isContainer(sha256);
      if (!isNew && !again && !container) return { is: 'held', sha256, archive: false };
      const examined = await examineFile({
        path: file.path,
        name: found.name,
        file: { name: found.name, bytes: file.bytes, sha256 },
        delivery: this.#delivery,
        hint,
        options: this.#options,
      });
      // A run that was cut off may have kept the archive and not all that is in it.
      if (!isNew && container)
        return { is: 'held', sha256, inside: examined.inside, archive: isArchive(examined) };
      // What was said may still not be enough to read it.
      if (!isNew && examined.received.kind !== 'unit-log')
        return { is: 'held', sha256, archive: false, problems: examined.problems };
      return { is: 'examined', examined };
    } catch (error) {
      if (!(error instanceof DossierError) || error.code === 'disk') throw error;
      return { is: 'refused', error };
    }
  }

  async #keep(source: Source, result: Result, around: Around | undefined): Promise<void> {
    const { found } = source;
    const bare = {
      file: found.name,
      when: '',
      flags: [],
      readings: 0,
      ...(around === undefined ? {} : { within: around.within }),
    };
    const { counts, items, problems } = this.#report;
    switch (result.is) {
      case 'held': {
        const evidence = this.#holders.of(result.sha256);
        counts.held += 1;
        problems.push(...(result.problems ?? []));
        items.push({
          ...bare,
          outcome: 'already-held',
          takenFor: `the same bytes as ${evidence ?? 'a file above'}; nothing added`,
          ...(evidence === undefined ? {} : { evidence }),
        });
        if (result.inside !== undefined && evidence !== undefined)
          await this.#inside(source, result.inside, evidence, result.archive, around);
        return;
      }
      case 'refused':
        counts.refused += 1;
        problems.push(result.error.toProblem());
        items.push({ ...bare, outcome: 'refused', takenFor: 'not taken in, see below' });
        return;
      case 'examined': {
        const evidence = await this.#enter(source, result.examined, around, bare);
        if (result.examined.inside !== undefined)
          await this.#inside(source, result.examined.inside, evidence, isArchive(result.examined), around);
      }
    }
  }

  async #enter(
    { found, inside }: Source,
    examined: Examined,
    around: Around | undefined,
    bare: Pick<CollectedItem, 'file' | 'when' | 'flags' | 'readings' | 'within'>,
  ): Promise<EvidenceId> {
    const { received, readings, problems, takenFor } = examined;
    const evidence = this.#record.nextEvidenceId();
    const before = this.#holders.of(received.file.sha256);
    const within: Within | undefined =
      around === undefined || inside === undefined
        ? undefined
        : { evidence: around.within, entry: inside.entry.slice(0, 1000) };
    const by = this.#by;
    const entries: NewEntry[] = [
      {
        type: 'evidence-received',
        by,
        body: { ...received, evidence, ...(within === undefined ? {} : { within }) },
      },
      ...(before === undefined ? [] : [readAgain(before, evidence, by)]),
      ...readings.map(
        ({ row, reading }): NewEntry => ({
          type: 'reading-recorded',
          by,
          body: { ...reading, evidence: this.#record.nextEvidenceId(), source: { is: 'row', evidence, row } },
        }),
      ),
    ];
    const { counts, items } = this.#report;
    const item: CollectedItem = {
      ...bare,
      outcome: 'taken-in',
      evidence,
      takenFor,
      time: received.time,
      when: whenInWords(received.time),
      flags: received.flags ?? [],
      readings: readings.length,
    };
    counts.taken += 1;
    counts.readings += readings.length;
    this.#report.problems.push(...problems);
    items.push(item);
    this.#holders.add(received.file.sha256, evidence, received.file.type);
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

  /** Takes in the files of an e-mail or archive, as far as nesting and size allow. */
  async #inside(
    { found }: Source,
    inside: Inside,
    evidence: EvidenceId,
    archive: boolean,
    outer: Around | undefined,
  ): Promise<void> {
    try {
      const around: Around = {
        within: evidence,
        containers: (outer?.containers ?? 0) + 1,
        archives: (outer?.archives ?? 0) + (archive ? 1 : 0),
        left: outer?.left ?? { ...MOST_INSIDE },
      };
      if (around.containers > MOST_CONTAINERS || around.archives > MOST_ARCHIVES) {
        if (inside.files.length > 0)
          this.#leftInside(found, `its ${inside.files.length} files are nested too deep`);
        return;
      }
      this.#report.notices.push(...inside.skipped.map(({ name, why }) => `Left out: ${name}, ${why}.`));
      const allowed = inside.files.filter(({ bytes }) => {
        if (around.left.files < 1 || around.left.bytes < bytes) return false;
        around.left.files -= 1;
        around.left.bytes -= bytes;
        return true;
      });
      const more = inside.files.length - allowed.length;
      if (more > 0) this.#leftInside(found, `${more} of its files are more than one file may bring`);
      await this.#take(await this.#sourcesIn(found, allowed), around, () => undefined);
    } finally {
      inside.close();
    }
  }

  #leftInside(found: FoundFile, why: string): void {
    this.#report.problems.push({
      code: 'file-too-large',
      message: `${why}; they stay in it`,
      where: { file: found.name },
      fix: 'unpack it yourself and collect what belongs to this delivery',
    });
  }

  /** The files with what a captions.csv among them says: that is taken in first, so that it can be read. */
  async #sourcesIn(container: FoundFile, files: readonly InsideFile[]): Promise<Source[]> {
    const all: { found: FoundFile; inside: InsideFile }[] = [];
    for (const inside of files) {
      const at = join(placeOf(container), inside.entry);
      const path = /(?:^|\/)captions\.csv$/i.test(inside.entry) ? await this.#storedPath(inside) : undefined;
      all.push({
        found: {
          path: path ?? '',
          at,
          name: `${container.name}/${inside.entry}`,
          bytes: inside.bytes,
        },
        inside,
      });
    }
    const captions = await readCaptions(
      all.map(({ found }) => found).filter((f) => f.path !== '' || !isCaptions(f)),
    );
    this.#report.problems.push(...captions.problems);
    return all.map(({ found, inside }) => ({
      found,
      inside,
      hint: {
        ...(inside.caption === undefined ? {} : { caption: inside.caption }),
        ...hintFor(captions, found),
      },
    }));
  }

  async #storedPath(inside: InsideFile): Promise<string | undefined> {
    try {
      return (await this.#record.addOriginalStream(inside.read(), '.csv', inside.bytes)).file.path;
    } catch (error) {
      // It is named when it is taken in in its turn.
      if (error instanceof DossierError && error.code !== 'disk') return undefined;
      throw error;
    }
  }
}

function isCaptions(file: FoundFile): boolean {
  return /captions\.csv$/i.test(placeOf(file));
}

function isArchive({ received }: Examined): boolean {
  return received.file.type === 'application/zip';
}

function readAgain(before: EvidenceId, evidence: EvidenceId, by: string): NewEntry {
  return {
    type: 'evidence-described',
    by,
    body: {
      evidence: before,
      caption: `The same file is read as a unit log in ${evidence}.`,
      why: 'what it lacked was said',
    },
  };
}
