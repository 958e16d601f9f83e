import { execFile } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, symlink, truncate, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { copyFile } from '../../../src/record/disk/copy-file.js';
import { diskFileSystem } from '../../../src/record/disk/ports.js';
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

const copy = (source: string, target: string, most: number) => copyFile(diskFileSystem, source, target, most);

describe('a copy', () => {
  it.each([0, 1, 1024 ** 2 - 1, 1024 ** 2, 1024 ** 2 + 1, 3_500_000])(
    'has all of %i bytes, and their hash',
    async (size) => {
      const bytes = randomBytes(size);
      const target = fresh('target');
      expect(await copy(await fileOf(bytes), target, LIMIT)).toEqual({
        is: 'copied',
        bytes: size,
        hash: sha256Of(bytes),
      });
      expect((await readFile(target)).equals(bytes)).toBe(true);
    },
  );

  it('many at once are not mixed up', async () => {
    const all = Array.from({ length: 40 }, (_, i) => Buffer.alloc(200_000 + i, i));
    const copied = await Promise.all(
      all.map(async (bytes) => copy(await fileOf(bytes), fresh('target'), LIMIT)),
    );
    expect(copied.map((one) => one.is === 'copied' && one.hash)).toEqual(all.map(sha256Of));
  });

  const refusals: [string, () => Promise<string>, object][] = [
    ['a missing file', async () => fresh('none'), { is: 'unreadable', code: 'ENOENT' }],
    ['a folder', async () => folder, { is: 'folder' }],
    [
      'a symbolic link, even to a good file',
      async () => {
        const link = fresh('link');
        await symlink(await fileOf(Buffer.from('x')), link);
        return link;
      },
      { is: 'unreadable', code: 'ELOOP' },
    ],
    [
      'a pipe, without waiting for its other end',
      async () => {
        const pipe = fresh('pipe');
        await promisify(execFile)('mkfifo', [pipe]);
        return pipe;
      },
      { is: 'not-a-file' },
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
      { is: 'unreadable', code: 'ENXIO' },
    ],
    ['a device without end', async () => '/dev/zero', { is: 'not-a-file' }],
    [
      'a file beyond the limit, before it is read',
      async () => {
        const path = await fileOf(Buffer.alloc(0));
        await truncate(path, LIMIT + 1);
        return path;
      },
      { is: 'too-large', bytes: LIMIT + 1 },
    ],
  ];
  it.each(refusals)('is refused of %s, and nothing is made', async (_, sourceOf, refusal) => {
    const target = fresh('target');
    expect(await copy(await sourceOf(), target, LIMIT)).toEqual(refusal);
    expect(existsSync(target)).toBe(false);
  });

  // The files of /proc (proc(5)) say that they are empty, and are not: as one that grows while it is read.
  it.runIf(existsSync('/proc/self/limits'))('tells of a file that has more than it said', async () => {
    expect(await copy('/proc/self/limits', fresh('target'), LIMIT)).toEqual({ is: 'changed' });
    expect(await copy('/proc/self/limits', fresh('target'), 100)).toMatchObject({ is: 'too-large' });
  });

  it("fails with the system's code when it can't be written", async () => {
    const source = await fileOf(Buffer.alloc(300_000));
    await expect(copy(source, join(folder, 'none', 'target'), LIMIT)).rejects.toMatchObject({
      code: 'ENOENT',
    });
    const there = await fileOf(Buffer.from('not to be lost'));
    await expect(copy(source, there, LIMIT)).rejects.toMatchObject({ code: 'EEXIST' });
    expect(String(await readFile(there))).toBe('not to be lost');
  });
});
