import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { printCheckpoint, printFingerprint } from '../core/ledger/checkpoint.js';
import { sha256Of } from '../core/ledger/tree.js';
import { DossierError } from '../core/model/error.js';
import type { OriginalsBag } from '../core/model/manifest.js';
import type { RecordState } from '../core/model/state.js';
import type { Instant } from '../core/model/time.js';
import type { RecordView } from '../record/record-at.js';
import { planBag } from '../signing/bag/plan.js';
import { type BagFile, type PackedBag, packBag } from '../signing/bag/write-zip.js';
import { tool } from './tool.js';

export interface BagInput {
  /** The dossier of the bag, which is stored beside it under the same name. */
  dossier: string;
  ledger: Uint8Array;
  facts: string;
  builtAt: Instant;
  signal?: AbortSignal | undefined;
}

export type WrittenBag = OriginalsBag & { file: string };

/** A bag whose hash is known while it is still being written. */
export interface PendingBag {
  bag: WrittenBag;
  /** Settles when the bag is whole on the disk, still under a temporary name, or has been removed. */
  done: Promise<PackedBag>;
}

/** `2026-0714-A-….pdf` becomes `2026-0714-A-….bag.zip`. */
function bagFileFor(dossier: string): string {
  return join(dirname(dossier), `${basename(dossier).replace(/\.pdf$/i, '')}.bag.zip`);
}

/**
 * Begins the bag (BagIt, RFC 8493) of a record: ledger, checkpoint, facts and every original that is not withheld,
 * in the record's own layout. The dossier holds the bag's hash, which follows from the hashes of the record and is
 * known before the files are copied. Throws DossierError `record-damaged` when an original is missing; `done`
 * rejects with it when one was changed, or with `disk`.
 */
export async function beginBag(record: RecordView, input: BagInput): Promise<PendingBag> {
  const file = bagFileFor(input.dossier);
  const name = basename(file)
    .replace(/\.zip$/, '')
    .replace(/[^A-Za-z0-9._-]+/g, '-');
  const { head } = record;
  const order = {
    name: name.replace(/^[-.]+/, '') || 'bag',
    delivery: head.delivery,
    fingerprint: printFingerprint(head),
    builtAt: input.builtAt,
    tool: tool(),
    payload: [
      inMemory('checkpoint', Buffer.from(printCheckpoint(head), 'utf8')),
      inMemory('delivery.yaml', Buffer.from(input.facts, 'utf8')),
      inMemory('ledger.jsonl', input.ledger),
      ...(await originals(record)),
    ],
  };
  const { tagManifestSha256, payloadBytes, payloadFiles } = planBag(order, order.payload);
  const done = packBag(file, order, (count) => randomBytes(count), input.signal);
  // The caller awaits the result later; until then a rejection must not count as unhandled.
  done.catch(() => undefined);
  return { bag: { file, name: basename(file), tagManifestSha256, payloadBytes, payloadFiles }, done };
}

function inMemory(path: string, bytes: Uint8Array): BagFile {
  return { path, bytes: bytes.length, sha256: sha256Of(bytes), from: { is: 'memory', bytes } };
}

async function originals(record: RecordView): Promise<BagFile[]> {
  const files = new Map<string, BagFile>();
  for (const { sha256, bytes, what } of packed(record.state())) {
    const path = await record.originalPath(sha256);
    if (path === undefined)
      throw new DossierError('record-damaged', `the original of ${what} is missing`, {
        where: { file: record.folder },
        fix: 'Take the same file in once more: it is put back in its place.',
      });
    files.set(sha256, { path: `originals/${basename(path)}`, bytes, sha256, from: { is: 'file', path } });
  }
  return [...files.values()].sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Files that are in the ledger of a bag: what does not count is kept all the same, and ledgers of merged records. */
function packed({ evidence, notCounted, strikes, merges }: RecordState) {
  const struck = strikes.flatMap(({ entry }) => (entry.type === 'evidence-received' ? [entry.body] : []));
  return [...[...evidence, ...notCounted].filter(({ withheld }) => withheld === undefined), ...struck]
    .flatMap((one) =>
      'file' in one
        ? [{ sha256: one.file.sha256, bytes: one.file.bytes, what: `${one.evidence} (${one.file.name})` }]
        : [],
    )
    .concat(merges.map(({ body }) => ({ ...body.ledger, what: 'the ledger of a merged record' })));
}
