import { carrierTemplates } from '../compose/templates.js';
import { DossierError } from '../core/model/error.js';
import type { TimeStampClient } from '../core/ports/time-stamps.js';
import type { LongWork } from '../core/ports/work.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { beginImages } from './dossier/images.js';
import { readSize, type Sizing } from './dossier/size.js';
import { OWN_DOSSIER, readCopy } from './redaction/read.js';
import { NO_REDACTION, redact, redactedState, unredactedState } from './redaction/redact.js';
import type { SignedBy } from './signer.js';

/** What a dossier is built from, and how. */
export interface BuildOptions extends OpenDelivery, LongWork {
  /** File to write; the delivery's own dossiers folder when left out. */
  out: string | undefined;
  /** `Letter` or `A4`; what delivery.yaml says when left out. */
  paper: string | undefined;
  /** Time-stamp server that confirms the signature, such as `httpTimeStamps({ url })`. */
  timeStamps?: TimeStampClient;
  /** Write the bag of originals in any case; else only when they do not all fit into the dossier. */
  bag?: boolean;
  /** Who it is for, by a name in copies.yaml; the carrier's own dossier if not given. */
  for?: string;
  /** What the file may take, such as `20MB`. */
  maxSize?: string;
  /** Folder with templates of the carrier's own. */
  templates?: string;
}

export type BuildInput = BuildOptions & SignedBy;

export interface BuildReport {
  file: string;
  bytes: number;
  pages: number;
  sha256: string;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
  /** The bag of originals beside the dossier. */
  bag?: { file: string; tagManifestSha256: string; payloadBytes: number; payloadFiles: number };
  /** The time that the server confirms. */
  stampedTime?: string;
  /** How pictures and originals were made to keep to the size. */
  sizing: Sizing;
  /** Of a copy for outsiders: for whom, and how much it leaves out. */
  copy?: { name: string; title: string; evidenceLeftOut: number; entriesLeftOut: number };
  notices: string[];
}

/**
 * Renders, seals, checks and keeps one dossier; the record notes that it was built.
 * @throws DossierError when the record, the signer, the disk or the typesetting fails; the signal's reason when it is
 *   called off, and then neither dossier nor bag is kept and nothing enters the record
 */
export async function build(input: BuildInput): Promise<BuildReport> {
  return withDelivery(input, true, async (record, factsText) => {
    const mostBytes = readSize(input.maxSize);
    const templates = await carrierTemplates(input.templates);
    const copy = await readCopy(templates.fileOf('copies.yaml'), input.for ?? OWN_DOSSIER);
    if (copy !== undefined && input.bag === true)
      throw new DossierError('bad-usage', 'a bag holds the whole record, so that no copy has one', {
        where: { field: '--bag' },
        fix: 'Leave out --bag, or --for.',
      });
    const whole = record.state();
    const out = copy === undefined ? NO_REDACTION : redact(record.entries, whole, copy);
    const { evidence } = copy === undefined ? unredactedState(whole) : redactedState(whole, out, copy);
    // Pictures take longest and other threads: begun at once, they hide what it takes to load and compute the rest.
    const stop = new AbortController();
    const signal = input.signal === undefined ? stop.signal : AbortSignal.any([stop.signal, input.signal]);
    const begun = beginImages(evidence, (hash) => record.readOriginal(hash), mostBytes, signal);
    try {
      const { finish } = await import('./dossier/finish.js');
      return await finish(record, { factsText, mostBytes, copy, out, templates, ...begun }, input);
    } catch (error) {
      stop.abort();
      await begun.images.catch(() => undefined);
      throw error;
    }
  });
}
