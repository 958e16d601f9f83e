import { execFileSync } from 'node:child_process';
import { mkdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scanFiles } from '../../src/intake/file-scan.js';
import { emptyFolder, put } from './a-delivery.js';

describe('walk', () => {
  it('finds files in order, says what it skips, follows no link and refuses pipes', async () => {
    const folder = await emptyFolder();
    await mkdir(join(folder, 'photos'));
    await put(folder, 'b.txt', 'b');
    await put(folder, 'a.txt', 'a');
    await put(folder, '.hidden', 'x');
    await put(folder, 'Thumbs.db', 'x');
    await put(join(folder, 'photos'), 'c.jpg', 'ccc');
    await symlink(folder, join(folder, 'loop'));
    execFileSync('mkfifo', [join(folder, 'pipe')]);

    const found = await scanFiles([folder]);
    expect(found.files.map((f) => [f.name, f.bytes])).toEqual([
      ['a.txt', 1],
      ['b.txt', 1],
      ['photos/c.jpg', 3],
    ]);
    expect(found.skipped.map((s) => s.name)).toEqual(['.hidden', 'Thumbs.db']);
    expect(found.problems.map((p) => p.message)).toEqual([
      'a symbolic link; links are not followed',
      'not a regular file (a pipe, socket or device)',
    ]);
  });

  it('takes a file by its own name, once, and names what is not there', async () => {
    const folder = await emptyFolder();
    const { path } = await put(folder, 'a.txt', 'a');
    const found = await scanFiles([path, path, join(folder, 'none'), '/dev/null']);
    expect(found.files).toEqual([{ path, name: 'a.txt', bytes: 1 }]);
    expect(found.problems.map((p) => p.where.file)).toEqual([join(folder, 'none'), '/dev/null']);
  });

  it('stops at the limit and says so', async () => {
    const folder = await emptyFolder();
    for (const name of ['a', 'b', 'c', 'd']) await put(folder, name, name);
    const found = await scanFiles([folder], 2);
    expect(found.files).toHaveLength(2);
    expect(found.problems).toHaveLength(1);
    expect(found.problems[0]?.code).toBe('file-too-large');
  });
});
