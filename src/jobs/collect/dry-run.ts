import type { Delivery } from '../../core/model/delivery.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { EvidenceId, Flag, Sha256 } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { nextStep } from '../../core/ports/work.js';
import { hintFor, readCaptions } from '../../intake/captions.js';
import type { ContainerContents, ExaminedFile, LogOptions } from '../../intake/draft.js';
import { examineFile } from '../../intake/examine.js';
import { scanFiles } from '../../intake/file-scan.js';
import type { LogPreview } from '../../intake/unit-log/preview.js';
import type { CollectInput } from '../collect.js';
import { withDelivery } from '../delivery.js';
import { EvidenceByHash } from './evidence-by-hash.js';
import { type ExtractedFile, hashOf, ScratchFolder } from './extracted-files.js';
import { givenSources } from './given-files.js';
import { lateCaptions } from './late-captions.js';
import { readLogOptions } from './log-options.js';
import { allowedFiles, keptInsideProblem, type NestingDepth, oneLevelDeeper } from './nesting.js';
import { ReadingRows } from './reading-rows.js';
import { formatEventTime } from './report.js';
import { type Source, sourcesInside } from './sources.js';

/** How one file would be recorded. */
export interface DryRunItem {
  file: string;
  /** The e-mail or archive that it is in. */
  within?: string;
  /** The evidence that already holds these bytes. */
  heldAs?: EvidenceId;
  /** The file before it with the same bytes. */
  sameAs?: string;
  takenFor: string;
  /** The time in words, with zone and basis. */
  when: string;
  flags: Flag[];
  readings: number;
  /** How a unit log would be read, with its first rows. */
  log?: LogPreview;
}

export interface DryRunReport {
  items: DryRunItem[];
  notices: string[];
  problems: Problem[];
}

/**
 * Examines files as `collect` would, with the contents of e-mails and archives within the same limits, and records
 * nothing. Throws DossierError when the delivery can't be opened or there is no room to extract files.
 */
export async function dryRun(input: CollectInput): Promise<DryRunReport> {
  const options = await readLogOptions(input);
  return withDelivery(input, false, async (record) => {
    const found = await scanFiles(input.paths);
    const state = record.state();
    const captions = await readCaptions(found.files, { delivery: state.delivery, now: input.now() });
    const report: DryRunReport = {
      items: [],
      notices: [
        'Nothing is taken in.',
        ...found.skipped.map(({ name, why }) => `Would be left out: ${name}, ${why}.`),
      ],
      problems: [
        ...found.problems,
        ...captions.problems,
        ...lateCaptions(state, captions, [], input.by).problems,
      ],
    };
    const look = new DryRun(
      state.delivery,
      options,
      new EvidenceByHash(state),
      new ReadingRows(record, input),
      report,
      input.now(),
    );
    try {
      const sources = [
        ...found.files.map((file) => ({ found: file, hint: hintFor(captions, file) })),
        ...givenSources(input.given ?? []),
      ];
      for (const [i, source] of sources.entries()) {
        nextStep(input, { what: source.found.name, done: i + 1, total: sources.length });
        await look.at(source, undefined, undefined);
      }
    } finally {
      await look.end();
    }
    return report;
  });
}

/** Examines files one after the other, and the files in them. */
class DryRun {
  readonly #scratch = new ScratchFolder();
  /** Hashes of examined bytes, with the first name of each. */
  readonly #seen = new Map<Sha256, string>();

  constructor(
    readonly delivery: Delivery,
    readonly options: LogOptions,
    readonly byHash: EvidenceByHash,
    readonly rows: ReadingRows,
    readonly report: DryRunReport,
    readonly now: Date,
  ) {}

  async at(source: Source, within: string | undefined, outer: NestingDepth | undefined): Promise<void> {
    const { found, hint, inside } = source;
    try {
      const laid: ExtractedFile =
        inside === undefined
          ? { path: found.path, bytes: found.bytes, sha256: await hashOf(found.path) }
          : await this.#scratch.extract(inside);
      const { path, bytes, sha256 } = laid;
      const examined = await examineFile({
        path,
        name: found.name,
        file: { name: found.name, bytes, sha256 },
        delivery: this.delivery,
        hint,
        options: this.options,
      });
      this.#tell(found.name, within, sha256, examined);
      if (examined.inside !== undefined)
        await this.#inside(
          source,
          examined.inside,
          oneLevelDeeper(outer, examined.received.file.type === 'application/zip'),
        );
      if (inside !== undefined) await this.#scratch.drop(path);
    } catch (error) {
      if (!(error instanceof DossierError) || error.code === 'disk') throw error;
      this.report.problems.push({ ...error.toProblem(), where: { ...error.where, file: found.name } });
    }
  }

  async end(): Promise<void> {
    await this.#scratch.end();
  }

  #tell(file: string, within: string | undefined, sha256: Sha256, examined: ExaminedFile): void {
    const { received, readings, problems, takenFor, log } = examined;
    const heldAs = this.byHash.of(sha256);
    const sameAs = this.#seen.get(sha256);
    this.#seen.set(sha256, sameAs ?? file);
    const anew =
      received.kind === 'unit-log' && !this.byHash.isReadBy(sha256, received.mapping)
        ? this.byHash.log(sha256)?.evidence
        : undefined;
    const said = Object.keys(this.options).length > 0;
    this.report.items.push({
      file,
      ...omitUndefined({ within, heldAs, sameAs }),
      takenFor:
        anew === undefined || !said ? takenFor : `${takenFor}; it would be read anew, in place of ${anew}`,
      when: formatEventTime(received.time),
      flags: received.flags ?? [],
      readings: readings.length,
      ...omitUndefined({ log }),
    });
    this.report.problems.push(...problems, ...this.rows.choose(readings, file).problems);
  }

  async #inside({ found }: Source, inside: ContainerContents, depth: NestingDepth): Promise<void> {
    try {
      const { files, left } = allowedFiles(inside.files, depth);
      this.report.problems.push(...left.map((why) => keptInsideProblem(found, why)));
      this.report.notices.push(
        ...inside.skipped.map(({ name, why }) => `Would be left out: ${name}, ${why}.`),
      );
      const { sources, problems } = await sourcesInside(
        found,
        files,
        async (one) => (await this.#scratch.extract(one)).path,
        { delivery: this.delivery, now: this.now },
      );
      this.report.problems.push(...problems);
      for (const source of sources) await this.at(source, found.name, depth);
    } finally {
      inside.close();
    }
  }
}
