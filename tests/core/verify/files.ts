import { createWriteStream } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import yazl from 'yazl';
import { printCheckpoint } from '../../../src/core/ledger/checkpoint.js';
import { leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import type { CheckedItem, VerificationReport } from '../../../src/core/model/verification.js';
import type { VerifyOptions } from '../../../src/core/verify/options.js';
import { verifyAll } from '../../../src/core/verify/verify-all.js';
import { itemAt } from '../../../src/platform/node/container/open-item.js';
import { type PayloadFile, planBag } from '../../../src/signing/bag/plan.js';
import { asLines, BUILT_AT, FACTS_YAML, ledgerEntries, PAPER, PHOTO } from '../../signing/sample.js';

/** Checks what stands at paths, all together. */
export function verifyPaths(
  paths: readonly string[],
  options: VerifyOptions = {},
): Promise<VerificationReport> {
  return verifyAll(paths.map(itemAt), options);
}

/** Files by their path below a folder. */
export type Files = Map<string, Uint8Array>;

export const DELIVERY = '2026-0714-A';

/** The record of the sample, as a delivery folder holds it. */
export function recordFiles(entries: readonly Uint8Array[] = ledgerEntries()): Files {
  const leaves = entries.map(leafHash);
  const head = { delivery: DELIVERY, size: leaves.length, root: treeHash(leaves) };
  return new Map([
    ['checkpoint', Buffer.from(printCheckpoint(head))],
    ['delivery.yaml', FACTS_YAML],
    ['ledger.jsonl', asLines(entries)],
    [`originals/${sha256Of(PHOTO)}.jpg`, PHOTO],
    [`originals/${sha256Of(PAPER)}.txt`, PAPER],
  ]);
}

/** The same record as the files of a bag. `payload` may differ from the record. */
export function bagFiles(payload: Files = recordFiles()): Files {
  const listed: PayloadFile[] = [...payload].map(([path, bytes]) => ({
    path,
    bytes: bytes.length,
    sha256: sha256Of(bytes),
  }));
  const plan = planBag(
    {
      name: 'bag',
      delivery: DELIVERY,
      fingerprint: 'x',
      builtAt: BUILT_AT,
      tool: { name: 'load-dossier', version: '0.0.0' },
    },
    listed,
  );
  return new Map([
    ...plan.tags.map(({ name, bytes }): [string, Uint8Array] => [name, bytes]),
    ...[...payload].map(([path, bytes]): [string, Uint8Array] => [`data/${path}`, bytes]),
  ]);
}

/** Lists tag files anew after a test has changed one of them. */
export function retagged(files: Files): Files {
  const tags = [...files].filter(([name]) => !name.startsWith('data/') && name !== 'tagmanifest-sha256.txt');
  const lines = tags.map(([name, bytes]) => `${sha256Of(bytes)}  ${name}\n`);
  return new Map([...files, ['tagmanifest-sha256.txt', Buffer.from(lines.join(''))]]);
}

export interface Scratch {
  folder: string;
  path: (name: string) => string;
  write: (name: string, files: Files) => Promise<string>;
  zip: (name: string, files: Files) => Promise<string>;
  end: () => Promise<void>;
}

export async function scratch(): Promise<Scratch> {
  const folder = await mkdtemp(join(tmpdir(), 'verify-'));
  const path = (name: string) => join(folder, name);
  return {
    folder,
    path,
    async write(name, files) {
      for (const [file, bytes] of files) {
        await mkdir(dirname(join(folder, name, file)), { recursive: true });
        await writeFile(join(folder, name, file), bytes);
      }
      return path(name);
    },
    async zip(name, files) {
      const zip = new yazl.ZipFile();
      for (const [file, bytes] of files) zip.addBuffer(Buffer.from(bytes), `bag/${file}`);
      zip.end();
      await pipeline(zip.outputStream, createWriteStream(path(name)));
      return path(name);
    },
    end: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Replaces text of the same length in a file, such as a name inside a zip. */
export async function patch(file: string, old: string, by: string): Promise<void> {
  const bytes = await readFile(file);
  if (old.length !== by.length || bytes.indexOf(old, 0, 'latin1') < 0) throw new Error(`no ${old} to patch`);
  for (let at = bytes.indexOf(old, 0, 'latin1'); at >= 0; at = bytes.indexOf(old, at + 1, 'latin1'))
    bytes.write(by, at, 'latin1');
  await writeFile(file, bytes);
}

export function only({ subjects }: VerificationReport): CheckedItem {
  const [subject] = subjects;
  if (subject === undefined) throw new Error('nothing was checked');
  return subject;
}

export function failedOf({ checks }: Pick<CheckedItem, 'checks'>): string[] {
  return checks.filter(({ result }) => result === 'failed').map(({ id }) => id);
}
