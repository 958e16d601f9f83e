import { randomBytes } from 'node:crypto';
import { mkdir, readdir, rename, rm, rmdir } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { sha256Of } from '../../core/ledger/tree.js';
import type { ClaimNoteOf } from '../../core/model/claim.js';
import { DossierError } from '../../core/model/error.js';
import type { Labels } from '../../core/words/labels.js';
import { ORIGINALS } from '../../record/commit.js';
import { writeDurably } from '../../record/disk/durable.js';
import type { Ports } from '../../record/disk/ports.js';

/** One file of a package, as the record keeps it. */
export type PackedFile = ClaimNoteOf<'answered'>['files'][number];

/** A folder that is filled under a temporary name and exists whole or not at all. */
export interface Staging {
  /** Path of a file in it while it is being filled. */
  at: (name: string) => string;
  write: (name: string, what: PackedFile['what'], bytes: Uint8Array) => Promise<PackedFile>;
  /** Gives the folder its name; a later failure must remove it again. */
  finish: () => Promise<void>;
  remove: () => Promise<void>;
}

/**
 * Starts a folder beside its final path. Throws DossierError `bad-usage` when something exists there, or when it
 * would be among the originals of the delivery, which are evidence only.
 */
export async function stageFolder(out: string, delivery: string, ports: Ports): Promise<Staging> {
  const target = resolve(out);
  if (`${target}${sep}`.startsWith(`${resolve(delivery, ORIGINALS)}${sep}`)) throw refuse(out);
  const there = await readdir(target).catch((cause: NodeJS.ErrnoException) => {
    if (cause.code === 'ENOENT') return undefined;
    throw refuse(out, cause);
  });
  if (there !== undefined && there.length > 0) throw refuse(out);
  await mkdir(dirname(target), { recursive: true });
  const folder = join(dirname(target), `.${basename(target)}-${randomBytes(6).toString('hex')}`);
  await mkdir(folder);
  let finished = false;
  return {
    at: (name) => join(folder, name),
    write: async (name, what, bytes) => {
      await writeDurably(ports, join(folder, name), bytes);
      return { name, what, bytes: bytes.length, sha256: sha256Of(bytes) };
    },
    finish: async () => {
      if (there !== undefined) await rmdir(target);
      await rename(folder, target);
      finished = true;
      await ports.fs.syncFolder(dirname(target));
    },
    remove: () => rm(finished ? target : folder, { recursive: true, force: true }),
  };
}

const refuse = (out: string, cause?: unknown) =>
  new DossierError(
    'bad-usage',
    'the answer needs a folder that is new or empty, and not among the originals',
    {
      where: { file: out, field: '--out' },
      fix: 'Name another folder, such as one with the day in its name.',
      cause,
    },
  );

/** The contents of the folder in words, followed by lines that `sha256sum --check` reads. */
export function enclosuresText(files: readonly PackedFile[], labels: Labels): string {
  return [
    ...files.map(
      ({ name, what, bytes }) => `# ${name}: ${labels(`what.${what}`)}, ${bytes} ${labels('letter.bytes')}`,
    ),
    ...files.map(({ name, sha256 }) => `${sha256}  ${name}`),
    '',
  ].join('\n');
}
