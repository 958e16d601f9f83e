import { execFile } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { symlink, truncate, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { diskFileSystem } from '../../../src/record/disk/ports.js';
import { readSource } from '../../../src/record/disk/read-source.js';
import { temporaryFolder } from '../make.js';

const LIMIT = 5_000_000;
const folder = await temporaryFolder();
let made = 0;
const fresh = (name: string) => {
  made += 1;
  return join(folder, `${made}-${name}`);
};
async function fileOf(bytes: Uint8Array): Promise<string> {
  const path = fresh('source');
  await writeFile(path, bytes);
  return path;
}

/** The bytes of a source, piece by piece: each is used up before the next is asked for. */
async function bytesOf(path: string, most = LIMIT, signal?: AbortSignal): Promise<Buffer> {
  const pieces: Buffer[] = [];
  for await (const piece of readSource(path, { fs: diskFileSystem, most, signal }))
    pieces.push(Buffer.from(piece));
  return Buffer.concat(pieces);
}

describe('a source', () => {
  it.each([0, 1, 1024 ** 2 - 1, 1024 ** 2, 1024 ** 2 + 1, 3_500_000])(
    'is read with all of its %i bytes',
    async (size) => {
      const bytes = randomBytes(size);
      expect((await bytesOf(await fileOf(bytes))).equals(bytes)).toBe(true);
    },
  );

  it('is not mixed up with others that are read beside it', async () => {
    const all = Array.from({ length: 40 }, (_, i) => Buffer.alloc(200_000 + i, i));
    const read = await Promise.all(all.map(async (bytes) => bytesOf(await fileOf(bytes))));
    expect(read.map(sha256Of)).toEqual(all.map(sha256Of));
  });

  const refusals: [string, () => Promise<string>, RegExp][] = [
    ['a missing file', async () => fresh('none'), /it is not there/],
    ['a folder', async () => folder, /it is a folder/],
    [
      'a symbolic link, even to a good file',
      async () => {
        const link = fresh('link');
        await symlink(await fileOf(Buffer.from('x')), link);
        return link;
      },
      /symbolic link/,
    ],
    [
      'a pipe, without waiting for its other end',
      async () => {
        const pipe = fresh('pipe');
        await promisify(execFile)('mkfifo', [pipe]);
        return pipe;
      },
      /not a regular file/,
    ],
    [
      'a socket',
      async () => {
        const path = fresh('socket');
        const server = createServer().listen(path);
        await new Promise((done) => server.once('listening', done));
        server.unref();
        return path;
      },
      /not a regular file/,
    ],
    ['a device without end', async () => '/dev/zero', /not a regular file/],
    [
      'a file beyond the limit, before it is read',
      async () => {
        const path = await fileOf(Buffer.alloc(0));
        await truncate(path, LIMIT + 1);
        return path;
      },
      /5000001 bytes or more/,
    ],
  ];
  it.each(refusals)('is refused: %s', async (_, sourceOf, message) => {
    await expect(bytesOf(await sourceOf())).rejects.toThrow(message);
  });

  // The files of /proc (proc(5)) say that they are empty, and are not: as one that grows while it is read.
  it.runIf(existsSync('/proc/self/limits'))('is refused when it has more than it said', async () => {
    await expect(bytesOf('/proc/self/limits')).rejects.toThrow(/changed while it was being read/);
    await expect(bytesOf('/proc/self/limits', 100)).rejects.toThrow(/100 is the limit/);
  });

  it('is read no further when it is called off', async () => {
    const stop = new AbortController();
    const source = readSource(await fileOf(Buffer.alloc(3_000_000)), {
      fs: diskFileSystem,
      most: LIMIT,
      signal: stop.signal,
    });
    expect((await source.next()).done).toBe(false);
    stop.abort(new Error('enough'));
    await expect(source.next()).rejects.toThrow('enough');
  });
});
