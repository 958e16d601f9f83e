import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printCheckpoint } from '../../../src/core/ledger/checkpoint.js';
import { leafHash, sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import type { VerificationReport } from '../../../src/core/model/verification.js';
import { ledgerEntries, PAPER, sampleParts, text } from '../../signing/sample.js';
import {
  bagFiles,
  DELIVERY,
  type Files,
  failedOf,
  only,
  recordFiles,
  type Scratch,
  scratch,
  verifyPaths,
} from './files.js';
import { dossier, identity } from './forge.js';
import { fresh, leaves, own, published } from './record-sample.js';

let disk: Scratch;
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());
const put = (files: Files) => disk.write(fresh('record'), files);

describe('several things together', () => {
  const trusted = [identity.certificateDer];
  const withBag = async (tagManifestSha256: string) => {
    const parts = sampleParts();
    const bag = { name: 'bag.zip', tagManifestSha256, payloadBytes: 1, payloadFiles: 1 };
    const manifest = JSON.parse(JSON.stringify({ ...parts.manifest, bag }));
    const path = disk.path(`${fresh('together')}.pdf`);
    await writeFile(path, await dossier({ ...parts, manifest }));
    return path;
  };
  const tagHash = (files: Files) => sha256Of(files.get('tagmanifest-sha256.txt') ?? text(''));
  const resultOf = (report: VerificationReport, id: string) =>
    report.together.find((one) => one.id === id)?.result;

  it('dossier, bag and record of one delivery', async () => {
    const zip = await disk.zip('together.zip', bagFiles());
    const record = await put(recordFiles(published(4, treeHash(leaves))));
    const report = await verifyPaths([await withBag(tagHash(bagFiles())), zip, record], { trusted });
    expect(report.together.map(({ result }) => result)).toEqual([
      'passed',
      'passed',
      'passed',
      'not-checked',
    ]);
    expect(report.verdict).toBe('intact');
    expect(report.together[0]?.detail).toContain(`the newest is ${record}`);
  });

  it('another bag than the dossier names', async () => {
    const zip = await disk.zip('another.zip', bagFiles(recordFiles().set('originals/zz', text('more'))));
    const report = await verifyPaths([await withBag(tagHash(bagFiles())), zip], { trusted });
    expect(resultOf(report, 'together.bag')).toBe('failed');
    expect(report.verdict).toBe('broken');
  });

  it('an original that the dossier leaves out and nobody has whole', async () => {
    const files = recordFiles();
    files.set(`originals/${sha256Of(PAPER)}.txt`, text('other'));
    const report = await verifyPaths([await withBag('0'.repeat(64)), await put(files)], { trusted });
    expect(resultOf(report, 'together.originals')).toBe('failed');
  });

  it('the record of another delivery', async () => {
    const other = ledgerEntries().map((entry) =>
      text(Buffer.from(entry).toString().replaceAll(DELIVERY, '2026-0714-B')),
    );
    const files = recordFiles(other).set(
      'checkpoint',
      text(printCheckpoint({ delivery: '2026-0714-B', size: 4, root: treeHash(other.map(leafHash)) })),
    );
    const report = await verifyPaths([await withBag('0'.repeat(64)), await put(files)], { trusted });
    expect(resultOf(report, 'together.states')).toBe('failed');
  });

  it('a fingerprint newer than the dossier is no fault when the record holds both', async () => {
    const entries = published(4, treeHash(leaves));
    const fingerprint = { delivery: DELIVERY, size: 5, root: treeHash(entries.map(leafHash)) };
    const path = await withBag('0'.repeat(64));
    const alone = await verifyPaths([path], { trusted, fingerprint });
    expect(failedOf(only(alone))).toEqual(['fingerprint.matches']);
    expect(only(alone).checks.find(({ id }) => id === 'fingerprint.matches')?.detail).toContain(
      'newer than this dossier: it counts 5 entries, and 4 are here',
    );
    const both = await verifyPaths([path, await put(recordFiles(entries))], { trusted, fingerprint });
    expect(both.verdict).toBe('intact');
  });

  it('a record rolled back to before the dossier is seen beside it, and by its own checkpoint copy', async () => {
    const entries = published(4, treeHash(leaves));
    const newer = await put(recordFiles(entries));
    const older = await put(recordFiles(own.slice(0, 2)));
    const report = await verifyPaths([older, newer]);
    expect(resultOf(report, 'together.states')).toBe('passed');
    const fingerprint = { delivery: DELIVERY, size: 5, root: treeHash(entries.map(leafHash)) };
    expect(failedOf(only(await verifyPaths([older], { fingerprint })))).toEqual(['fingerprint.matches']);
  });

  it('a folder that is neither record nor bag', async () => {
    const path = await disk.write(
      'neither',
      new Map([
        ['x', text('x')],
        ['y', text('y')],
      ]),
    );
    const report = await verifyPaths([path]);
    expect(only(report)).toMatchObject({ is: 'unknown', verdict: 'broken' });
  });

  it('rejects only for what is not there', async () => {
    await expect(verifyPaths([join(disk.folder, 'nowhere')])).rejects.toMatchObject({ code: 'ENOENT' });
    expect((await readFile(disk.path('together.zip'))).length).toBeGreaterThan(0);
  });
});
