import { createHash, type Hash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { PassThrough, Readable, Transform } from 'node:stream';
import yazl from 'yazl';
import { DossierError } from '../../model/error.js';
import type { Instant } from '../../model/time.js';
import { type BagFacts, type BagPlan, type PayloadFile, planBag, zipDate } from './plan.js';

/** A payload file with its bytes: in memory, or on the disk and then read as they are written. */
export interface BagFile extends PayloadFile {
  from: { is: 'memory'; bytes: Uint8Array } | { is: 'file'; path: string };
}

export interface BagOrder extends BagFacts {
  payload: readonly BagFile[];
}

/**
 * Writes a bag as one zip file, one payload file after the other, never more than a chunk of them in memory; the
 * zip grows to its 64-bit form only when it must. The same content and date give the same bytes; nothing is packed,
 * so that every byte is a file's own or the only one it can be.
 * Each file is hashed on its way: one that is not what the manifest says stops it, and nothing stays behind.
 * @throws DossierError record-damaged naming the file; disk
 */
export async function writeBag(
  file: string,
  order: BagOrder,
  random: (n: number) => Uint8Array,
): Promise<BagPlan> {
  const plan = planBag(order, order.payload);
  const part = join(dirname(file), `.part-${Buffer.from(random(8)).toString('hex')}`);
  try {
    const handle = await open(part, 'wx', 0o644);
    try {
      for await (const chunk of zipStream(order, plan)) await handle.writeFile(chunk);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(part, file);
    await syncFolder(dirname(file));
    return plan;
  } catch (cause) {
    await rm(part, { force: true });
    if (cause instanceof DossierError) throw cause;
    throw new DossierError('disk', 'the bag of originals could not be written', {
      where: { file },
      fix: 'Check the disk and run the command again.',
      cause,
    });
  }
}

function zipStream({ name, payload, builtAt }: BagOrder, plan: BagPlan): Readable {
  const zip = new yazl.ZipFile();
  const out = new PassThrough();
  // What goes wrong while a file is added does not reach the output by itself.
  const fail = (error: Error) => out.destroy(error);
  zip.on('error', fail);
  zip.outputStream.pipe(out);
  const fixed = options(builtAt);
  for (const tag of plan.tags)
    zip.addBuffer(Buffer.from(tag.bytes), `${name}/${tag.name}`, { ...fixed, compress: false });
  for (const one of payload)
    zip.addReadStreamLazy(
      `${name}/data/${one.path}`,
      { ...fixed, compress: false, size: one.bytes },
      (give: (error: unknown, stream: NodeJS.ReadableStream) => void) => {
        give(null, bytesOf(one).on('error', fail));
      },
    );
  zip.end();
  return out;
}

function options(builtAt: Instant) {
  return { mtime: zipDate(builtAt), mode: 0o100644, forceDosTimestamp: true };
}

function bytesOf(file: BagFile): Readable {
  const raw =
    file.from.is === 'memory'
      ? Readable.from([Buffer.from(file.from.bytes)])
      : createReadStream(file.from.path);
  const checked = raw.pipe(hashing(file));
  raw.on('error', (error: Error) => checked.destroy(error));
  return checked;
}

/** Lets bytes through and fails at their end when they are not the ones that were listed. */
function hashing(file: BagFile): Transform {
  const hash: Hash = createHash('sha256');
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      done(null, chunk);
    },
    flush(done) {
      if (hash.digest('hex') === file.sha256) return done();
      done(
        new DossierError('record-damaged', `${file.path} was changed since it was recorded`, {
          where: { file: file.path },
          fix: 'Take the same file in once more: it is put back in its place.',
        }),
      );
    },
  });
}

async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
