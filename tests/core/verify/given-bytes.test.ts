import { createReadStream } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { verify } from '../../../src/jobs/verify.js';
import { bagFiles, type Scratch, scratch } from './files.js';
import { dossier, identity } from './forge.js';

let disk: Scratch;
let pdf: string;
let bag: string;
beforeAll(async () => {
  disk = await scratch();
  pdf = disk.path('dossier.pdf');
  await writeFile(pdf, await dossier());
  bag = await disk.zip('own.bag.zip', bagFiles());
});
afterAll(() => disk.end());

const reportOf = (input: Partial<Parameters<typeof verify>[0]>) =>
  verify({ paths: [], trust: [identity.certificateDer], ...input });

describe('what is handed over as bytes is verified as the files at paths are:', () => {
  it('a dossier and a bag together, as bytes', async () => {
    const given = [
      { name: pdf, bytes: await readFile(pdf) },
      { name: bag, bytes: await readFile(bag) },
    ];
    expect(await reportOf({ given })).toEqual(await reportOf({ paths: [pdf, bag] }));
  });

  it('as streams', async () => {
    const given = [
      { name: pdf, bytes: createReadStream(pdf, { highWaterMark: 1000 }) },
      { name: bag, bytes: createReadStream(bag) },
    ];
    expect(await reportOf({ given })).toEqual(await reportOf({ paths: [pdf, bag] }));
  });

  it('a changed one is broken, and one that is none too', async () => {
    const changed = Uint8Array.from(await readFile(pdf));
    changed[2000] = (changed[2000] ?? 0) ^ 1;
    for (const bytes of [changed, new Uint8Array(), Buffer.from('limp leaves')])
      expect(await reportOf({ given: [{ name: 'x.pdf', bytes }] })).toMatchObject({ verdict: 'broken' });
  });
});
