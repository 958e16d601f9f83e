import { readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { sha256Of } from '../core/ledger/tree.js';
import { isSameBytes, utf8Bytes } from '../core/model/bytes.js';
import { DossierError } from '../core/model/error.js';
import type { OriginalsStore } from '../core/ports/originals-store.js';
import { broken, type RuleResult, Rules, rejectionOf } from './rules.js';

const NAME = /^[0-9a-f]{64}(?:\.[a-z0-9]{1,8})?$/;
const MOST = 10_000_000;
const PIECE = 100_000;
const AT_ONCE = 8;

/**
 * Tries a store of originals against the contract of `OriginalsStore`: one for the trial alone, which is empty. What is
 * added stays there.
 * @param again opens the same store anew, as after a crash; without it that is not tried
 * Never rejects.
 */
export async function checkOriginalsStore(
  store: OriginalsStore,
  again?: () => Promise<OriginalsStore>,
): Promise<RuleResult[]> {
  const rules = new Rules();
  const keep = (bytes: Uint8Array, extension = '.bin') => store.add(reused(bytes), { extension, most: MOST });
  const requireKept = async (bytes: Uint8Array, from: OriginalsStore = store): Promise<string> => {
    const file = await from.file(sha256Of(bytes));
    if (file === undefined) return broken(`${bytes.length} bytes that were added are not there`);
    if (!isSameBytes(await readFile(file), bytes)) broken('the file has other bytes than were added');
    return file;
  };
  const samples = ['', 'one', 'x'.repeat(1_000_000)].map(utf8Bytes);

  await rules.try('What is added is kept byte for byte, under its hash', async () => {
    for (const bytes of samples) {
      const kept = await keep(bytes);
      if (kept.sha256 !== sha256Of(bytes) || kept.bytes !== bytes.length)
        broken(`of ${bytes.length} bytes it says ${kept.bytes} and ${kept.sha256}`);
      if (!kept.isNew) broken('it says that new bytes were kept before');
      await requireKept(bytes);
    }
  });
  await rules.try('A file is named by the hash, with a plain ending', async () => {
    for (const extension of ['.JPG', 'csv', '', '.a/../b', '.with spaces']) {
      const bytes = utf8Bytes(`named ${extension}`);
      await keep(bytes, extension);
      const name = basename(await requireKept(bytes));
      if (!NAME.test(name) || !name.startsWith(sha256Of(bytes))) broken(`it is named ${name}`);
    }
  });
  await rules.try('Equal bytes are one original', async () => {
    const bytes = utf8Bytes('equal');
    const [first, second] = [await keep(bytes, '.a'), await keep(bytes, '.b')];
    if (!first.isNew || second.isNew) broken('it does not say which of two was first');
    if (first.sha256 !== second.sha256) broken('they have two hashes');
  });
  await rules.try('Adding again mends a damaged one', async () => {
    const bytes = utf8Bytes('to be mended');
    await keep(bytes);
    await writeFile(await requireKept(bytes), 'damaged');
    await keep(bytes);
    await requireKept(bytes);
  });
  await rules.try('Several may be added at once', async () => {
    const all = Array.from({ length: AT_ONCE }, (_, i) => utf8Bytes(`${i}`.repeat(250_000)));
    await Promise.all(all.map((bytes) => keep(bytes)));
    for (const bytes of all) await requireKept(bytes);
  });
  await rules.try('A stream that fails leaves nothing, and its own error comes out', async () => {
    const why = new Error('failed by the trial');
    const failing = () => store.add(failingAfter(utf8Bytes('half'), why), { extension: '', most: MOST });
    if ((await rejectionOf(failing, 'though the stream failed')) !== why) broken('another error came out');
    if ((await store.file(sha256Of(utf8Bytes('half')))) !== undefined) broken('what came before is kept');
  });
  await rules.try('More bytes than may be are refused as file-too-large, and leave nothing', async () => {
    const bytes = utf8Bytes('too many');
    const adding = () => store.add(reused(bytes), { extension: '', most: bytes.length - 1 });
    const error = await rejectionOf(adding, 'though there were more bytes than may be');
    if (!(error instanceof DossierError) || error.code !== 'file-too-large')
      broken(`it rejected with something else: ${String(error)}`);
    if ((await store.file(sha256Of(bytes))) !== undefined) broken('they are kept');
    await store.add(reused(bytes), { extension: '', most: bytes.length });
  });
  await rules.try('There is no file of what was not added', async () => {
    if ((await store.file(sha256Of(utf8Bytes('never added')))) !== undefined) broken('there is one');
  });
  await rules.try('After flush, opening it anew finds everything', async () => {
    await store.flush();
    const reopened = await again?.();
    if (reopened !== undefined) for (const bytes of samples) await requireKept(bytes, reopened);
  });
  await rules.try(
    'What is removed is gone, and can be added again; removing what is not there is nothing',
    async () => {
      const bytes = utf8Bytes('removed');
      const { sha256 } = await keep(bytes);
      for (const _ of [1, 2]) await store.remove(sha256);
      if ((await store.file(sha256)) !== undefined) broken('it is still there');
      if (!(await keep(bytes)).isNew) broken('it says that the removed bytes are still kept');
      await requireKept(bytes);
    },
  );
  return rules.results;
}

/** The bytes in pieces that are one buffer, which is filled anew each time: a store must not hold on to it. */
async function* reused(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  const room = new Uint8Array(PIECE);
  for (let at = 0; at < bytes.length; at += PIECE) {
    const piece = bytes.subarray(at, at + PIECE);
    room.set(piece);
    yield room.subarray(0, piece.length);
    room.fill(0);
  }
}

async function* failingAfter(bytes: Uint8Array, why: Error): AsyncGenerator<Uint8Array> {
  yield bytes;
  throw why;
}
