import { afterAll, beforeAll, describe, expect } from 'vitest';
import { bagFiles, failedOf, only, type Scratch, scratch, verifyPaths } from '../core/verify/files.js';
import { ask, checkWith, python } from './programs.js';

let disk: Scratch;
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());

describe('a bag', () => {
  checkWith(python, 'packed again is sound', async () => {
    const folder = await disk.write('unpacked', new Map([...bagFiles()].map(([n, b]) => [`bag/${n}`, b])));
    const path = disk.path('python.zip');
    expect(ask(python, '-m', 'zipfile', '-c', path, `${folder}/bag`).status).toBe(0);
    const subject = only(await verifyPaths([path]));
    expect(failedOf(subject)).toEqual([]);
  });
});
