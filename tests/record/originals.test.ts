import { execFile } from 'node:child_process';
import { appendFile, mkdir, readFile, symlink, truncate, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { basename, join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256Of } from '../../src/core/ledger/tree.js';
import { diskFileSystem, type FileSystem } from '../../src/record/disk/ports.js';
import { createRecord, type DeliveryRecord, openRecord } from '../../src/record/store.js';
import { documentOf, someFacts } from '../core/ledger/drafts.js';
import { checkRecord } from './check-record.js';
import { portsOf, temporaryFolder } from './make.js';

let outside: string;
let folder: string;
let record: DeliveryRecord;
beforeEach(async () => {
  outside = await temporaryFolder();
  folder = join(outside, 'delivery');
  record = await createRecord(folder, portsOf(), someFacts());
});
afterEach(() => record.close());
const stored = () => diskFileSystem.list(join(folder, 'originals'));

async function fileOf(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(outside, name);
  await writeFile(path, content);
  return path;
}

describe('taking a file in', () => {
  it('keeps its bytes under their hash and its ending', async () => {
    const bytes = Buffer.from('Temperature 36 °F\r\n');
    const { file, isNew } = await record.addOriginal(await fileOf('Bill of Lading.PDF', bytes));
    expect(isNew).toBe(true);
    expect(file).toEqual({
      bytes: bytes.length,
      sha256: sha256Of(bytes),
      path: join(folder, 'originals', `${sha256Of(bytes)}.pdf`),
    });
    expect(await readFile(file.path)).toEqual(bytes);
    expect(await record.originalPath(file.sha256)).toBe(file.path);
    expect(Buffer.from(await record.readOriginal(file.sha256))).toEqual(bytes);
  });

  it('copies files of several pieces whole', async () => {
    const bytes = Buffer.alloc(2_500_000, 'abc');
    const { file } = await record.addOriginal(await fileOf('log.csv', bytes));
    expect(file).toMatchObject({ bytes: bytes.length, sha256: sha256Of(bytes) });
    expect((await readFile(file.path)).equals(bytes)).toBe(true);
  });

  it('takes an empty file too', async () => {
    const { file } = await record.addOriginal(await fileOf('empty.txt', ''));
    expect(file).toMatchObject({ bytes: 0, sha256: sha256Of(new Uint8Array()) });
  });

  it.each([
    ['photo.JPG', '.jpg'],
    ['photo', ''],
    ['.hidden', ''],
    ['photo.', ''],
    ['photo.j pg', ''],
    ['photo.jpégs', ''],
    ['photo.ninechars', ''],
    ['a.tar.gz', '.gz'],
  ])('names the original of %s with the ending "%s"', async (name, ending) => {
    const { file } = await record.addOriginal(await fileOf(name, 'x'));
    expect(basename(file.path)).toBe(`${sha256Of(Buffer.from('x'))}${ending}`);
  });

  it('knows the same bytes again: one original, whatever the name', async () => {
    const first = await record.addOriginal(await fileOf('a.jpg', 'same'));
    const second = await record.addOriginal(await fileOf('b.jpeg', 'same'));
    const third = await record.addOriginalBytes(Buffer.from('same'), '.txt');
    expect([first.isNew, second.isNew, third.isNew]).toEqual([true, false, false]);
    expect(new Set([first.file.path, second.file.path, third.file.path]).size).toBe(1);
    await record.append([documentOf('e1', first.file)]);
    await record.close();
    const again = await openRecord(folder, portsOf(), { write: true });
    expect((await again.addOriginal(join(outside, 'b.jpeg'))).isNew).toBe(false);
    await again.close();
    expect(await stored()).toHaveLength(1);
    await checkRecord(folder, diskFileSystem);
  });

  it('puts a damaged original right when the same file comes again', async () => {
    const path = await fileOf('a.jpg', 'good bytes');
    const { file } = await record.addOriginal(path);
    await writeFile(file.path, 'bad bytes!');
    await expect(record.readOriginal(file.sha256)).rejects.toMatchObject({
      code: 'record-damaged',
      where: { file: file.path },
    });
    await record.addOriginal(path);
    expect(Buffer.from(await record.readOriginal(file.sha256)).toString()).toBe('good bytes');
  });

  it('says which original is missing', async () => {
    const hash = sha256Of(Buffer.from('never seen'));
    expect(await record.originalPath(hash)).toBeUndefined();
    await expect(record.readOriginal(hash)).rejects.toThrow(/is missing/);
  });
});

describe('what is no plain file', () => {
  afterEach(async () => {
    expect(await stored()).toEqual([]);
  });
  const refused = (path: string, message: RegExp) =>
    expect(record.addOriginal(path)).rejects.toMatchObject({
      code: 'unreadable-file',
      message: expect.stringMatching(message),
      where: { file: path },
    });

  it('is refused: a missing file', () => refused(join(outside, 'none.jpg'), /not there/));

  it('is refused: a folder', async () => {
    await mkdir(join(outside, 'photos'));
    await refused(join(outside, 'photos'), /folder/);
  });

  it('is refused: a symbolic link, even to a good file', async () => {
    await symlink(await fileOf('a.jpg', 'x'), join(outside, 'link.jpg'));
    await refused(join(outside, 'link.jpg'), /symbolic link/);
  });

  it('is refused: a pipe, without waiting for its other end', async () => {
    const pipe = join(outside, 'pipe');
    await promisify(execFile)('mkfifo', [pipe]);
    await refused(pipe, /not a regular file/);
  });

  it('is refused: a socket', async () => {
    const path = join(outside, 'socket');
    const server = createServer().listen(path);
    await new Promise((done) => server.once('listening', done));
    await refused(path, /not a regular file/);
    await new Promise((done) => server.close(done));
  });

  it('is refused: a device without end', () => refused('/dev/zero', /not a regular file/));

  it('is refused before it is read when it is too large, sparse or not', async () => {
    const path = await fileOf('huge.bin', '');
    await truncate(path, 3 * 1024 ** 3);
    await expect(record.addOriginal(path)).rejects.toMatchObject({
      code: 'file-too-large',
      where: { file: path },
    });
    await expect(
      record.addOriginal(await fileOf('small.bin', '12345'), { largest: 4 }),
    ).rejects.toMatchObject({
      code: 'file-too-large',
    });
  });
});

describe('a file that changes while it is read', () => {
  /** The disk, with something done to the source after each piece that is read of it. */
  async function whileReading(action: (path: string) => Promise<void>): Promise<void> {
    await record.close();
    const path = await fileOf('growing.csv', 'first line\n');
    const fs: FileSystem = {
      ...diskFileSystem,
      async open(opened, mode) {
        const file = await diskFileSystem.open(opened, mode);
        if (opened !== path) return file;
        return {
          ...file,
          async read(length) {
            const bytes = await file.read(length);
            if (bytes.length > 0) await action(path);
            return bytes;
          },
        };
      },
    };
    const ports = portsOf({ fs });
    record = await openRecord(folder, ports, { write: true });
    await expect(record.addOriginal(path, { largest: 100 })).rejects.toMatchObject({
      code: expect.stringMatching(/unreadable-file|file-too-large/),
    });
    expect(await stored()).toEqual([]);
  }

  it('is refused when it has grown', () => {
    let once = true;
    return whileReading(async (path) => {
      if (once) await appendFile(path, 'more\n');
      once = false;
    });
  });

  it('is refused when it was written over at the same length', () =>
    whileReading((path) => writeFile(path, 'other line\n')));

  it('is cut off at the size limit when it never ends', () =>
    whileReading((path) => appendFile(path, 'more and more\n')));
});
