import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { hintFor, readCaptions } from '../../intake/captions.js';
import { examineFile } from '../../intake/examine.js';
import type { LogPreview } from '../../intake/unit-log/preview.js';
import { type FoundFile, walk } from '../../intake/walk.js';
import { DossierError, type Problem } from '../../model/error.js';
import { type EvidenceId, type Flag, sha256 as sha256Schema } from '../../model/evidence.js';
import type { CollectInput } from '../collect.js';
import { withDelivery } from '../delivery.js';
import { Holders } from './holders.js';
import { readLogOptions } from './log-options.js';
import { whenInWords } from './report.js';

/** What would become of one file. */
export interface LookedAt {
  file: string;
  /** The evidence that holds these bytes already. */
  heldAs?: EvidenceId;
  takenFor: string;
  /** The time in words, with zone and basis. */
  when: string;
  flags: Flag[];
  readings: number;
  /** How a unit log would be read, with its first rows. */
  log?: LogPreview;
}

export interface DryRunReport {
  items: LookedAt[];
  notices: string[];
  problems: Problem[];
}

/**
 * Looks at files as `collect` would, and takes nothing in: no original is kept and no evidence enters the record.
 * What is inside e-mails and archives is not looked at. Throws DossierError when the delivery can't be opened.
 */
export async function dryRun(input: CollectInput): Promise<DryRunReport> {
  const options = await readLogOptions(input);
  return withDelivery(input, false, async (record) => {
    const found = await walk(input.paths);
    const captions = await readCaptions(found.files);
    const report: DryRunReport = {
      items: [],
      notices: [
        'Nothing is taken in.',
        ...found.skipped.map(({ name, why }) => `Would be left out: ${name}, ${why}.`),
      ],
      problems: [...found.problems, ...captions.problems],
    };
    const state = record.state();
    const holders = new Holders(state);
    for (const [i, file] of found.files.entries()) {
      input.progress(i + 1, found.files.length, file.name);
      try {
        const sha256 = sha256Schema.parse(await hashOf(file.path));
        const { received, readings, problems, takenFor, log, inside } = await examineFile({
          path: file.path,
          name: file.name,
          file: { name: file.name, bytes: file.bytes, sha256 },
          delivery: state.delivery,
          hint: hintFor(captions, file),
          options,
        });
        inside?.close();
        const heldAs = holders.of(sha256);
        report.items.push({
          file: file.name,
          ...(heldAs === undefined ? {} : { heldAs }),
          takenFor,
          when: whenInWords(received.time),
          flags: received.flags ?? [],
          readings: readings.length,
          ...(log === undefined ? {} : { log }),
        });
        report.problems.push(...problems);
      } catch (error) {
        if (!(error instanceof DossierError)) throw error;
        report.problems.push({ ...error.toProblem(), where: { ...error.where, file: file.name } });
      }
    }
    return report;
  });
}

async function hashOf(path: FoundFile['path']): Promise<string> {
  const hash = createHash('sha256');
  try {
    for await (const chunk of createReadStream(path)) hash.update(chunk as Buffer);
  } catch (cause) {
    throw new DossierError('unreadable-file', 'the file cannot be read', { where: { file: path }, cause });
  }
  return hash.digest('hex');
}
