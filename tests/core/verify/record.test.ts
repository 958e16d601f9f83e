import { writeFile } from 'node:fs/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printCheckpoint } from '../../../src/core/ledger/checkpoint.js';
import { sha256Of, treeHash } from '../../../src/core/ledger/tree.js';
import { cases } from '../../properties.js';
import { asLines, PHOTO, text } from '../../signing/sample.js';
import { DELIVERY, type Files, failedOf, recordFiles, type Scratch, scratch, verifyPaths } from './files.js';
import { dossier } from './forge.js';
import { checkRecord, edited, fresh, leaves, more, own, published } from './record-sample.js';

let disk: Scratch;
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());
const put = (files: Files) => disk.write(fresh('record'), files);
const check = (files: Files, options = {}) => checkRecord(disk, files, options);

describe('a sound record', () => {
  it('is intact, and not signed by itself', async () => {
    const subject = await check(recordFiles());
    expect(failedOf(subject)).toEqual([]);
    expect(subject).toMatchObject({ is: 'record', verdict: 'intact-signer-not-vouched-for' });
    expect(subject.fingerprint).toEqual({ delivery: DELIVERY, size: 4, root: treeHash(leaves) });
  });

  it('with earlier states that are in its tree', async () => {
    const entries = published(4, treeHash(leaves));
    expect(failedOf(await check(recordFiles(entries)))).toEqual([]);
  });

  it('says what it cannot know: a write under way, other files, facts not yet entered', async () => {
    const files = recordFiles(published(4, treeHash(leaves)));
    files.set('checkpoint', recordFiles().get('checkpoint') ?? text(''));
    files.set(`originals/${sha256Of(text('x'))}`, text('x'));
    files.set('delivery.yaml', text('delivery: new\n'));
    files.set('dossiers/notes.pdf', text('x'));
    const notices = (await check(files)).checks
      .filter(({ result }) => result === 'notice')
      .map(({ id }) => id);
    expect(notices).toEqual(['record.checkpoint', 'originals.others', 'dossiers.known', 'delivery.same']);
  });

  it('names a folder among the originals, with what is in it or empty, and no other folder', async () => {
    const files = recordFiles().set('originals/more/a.jpg', text('x')).set('mine/b.jpg', text('x'));
    const others = (await check(files)).checks.find(({ id }) => id === 'originals.others');
    expect(others).toMatchObject({
      result: 'notice',
      detail: 'originals/more/ is a folder, and originals stand in none',
    });
  });
});

describe('a record that was tampered with', () => {
  const [facts = text(''), photo = text(''), paper = text(''), pulp = text('')] = own;
  const original = `originals/${sha256Of(PHOTO)}.jpg`;
  const built = (sha: string) =>
    more({
      type: 'dossier-built',
      body: { file: 'a.pdf', sha256: sha, bytes: 1, size: 4, root: treeHash(leaves) },
    });
  it.each<[string, () => Files, string[]]>([
    [
      'an entry edited (RFC 9162 §2.1)',
      () => recordFiles().set('ledger.jsonl', asLines([facts, photo, paper, edited(pulp, '35.2', '33.2')])),
      ['record.checkpoint'],
    ],
    [
      'entries truncated',
      () => recordFiles().set('ledger.jsonl', asLines([facts, photo])),
      ['record.checkpoint'],
    ],
    [
      'entries reordered',
      () => recordFiles().set('ledger.jsonl', asLines([facts, paper, photo, pulp])),
      ['ledger.readable'],
    ],
    [
      'an entry spliced in from another record',
      () =>
        recordFiles().set(
          'ledger.jsonl',
          asLines([facts, photo, paper, edited(pulp, 'M. Ortega', 'S. Other')]),
        ),
      ['record.checkpoint'],
    ],
    [
      'evidence brought in twice',
      () => recordFiles([...own, edited(pulp, '"seq":3', '"seq":4')]),
      ['ledger.readable'],
    ],
    [
      'an entry left out as in a copy',
      () =>
        recordFiles().set('ledger.jsonl', asLines([facts, photo, paper, text(`{"leaf":"${leaves[3]}"}`)])),
      ['ledger.readable'],
    ],
    [
      'a first entry that is no facts',
      () => recordFiles([edited(photo, '"seq":1', '"seq":0')]),
      ['ledger.readable'],
    ],
    [
      'a second root for the same size (C2SP tlog-checkpoint)',
      () =>
        recordFiles().set(
          'checkpoint',
          text(printCheckpoint({ delivery: DELIVERY, size: 4, root: sha256Of(text('x')) })),
        ),
      ['record.checkpoint'],
    ],
    [
      'the checkpoint of another delivery',
      () =>
        recordFiles().set(
          'checkpoint',
          text(printCheckpoint({ delivery: 'other', size: 4, root: treeHash(leaves) })),
        ),
      ['record.checkpoint'],
    ],
    [
      'a checkpoint with a space more',
      () =>
        recordFiles().set(
          'checkpoint',
          text(`${printCheckpoint({ delivery: DELIVERY, size: 4, root: treeHash(leaves) })} `),
        ),
      ['record.files'],
    ],
    [
      'a fingerprint that no longer fits: rewritten after it was sent',
      () => recordFiles(published(4, sha256Of(text('x')))),
      ['ledger.earlier-states'],
    ],
    [
      'a fingerprint of a size that was not reached',
      () => recordFiles(published(5, treeHash(leaves))),
      ['ledger.earlier-states'],
    ],
    [
      'an original changed',
      () => recordFiles().set(original, text('y'.repeat(PHOTO.length))),
      ['originals.present'],
    ],
    ['an original cut off', () => recordFiles().set(original, PHOTO.subarray(1)), ['originals.present']],
    [
      'an original missing',
      () => {
        const files = recordFiles();
        files.delete(original);
        return files;
      },
      ['originals.present'],
    ],
    [
      'a dossier changed after it was built',
      () => recordFiles(built(sha256Of(text('right')))).set('dossiers/a.pdf', text('wrong')),
      ['dossiers.known'],
    ],
    [
      'no ledger',
      () => {
        const files = recordFiles();
        files.delete('ledger.jsonl');
        return files;
      },
      ['record.files'],
    ],
  ])('%s', async (_, make, ids) => {
    const subject = await check(make());
    expect(failedOf(subject)).toEqual(ids);
    expect(subject.verdict).toBe('broken');
  });

  it('an entry edited and the tree made anew is only caught by what left the house: a fingerprint', async () => {
    const forged = recordFiles([facts, photo, paper, edited(pulp, '35.2', '33.2')]);
    expect(failedOf(await check(forged))).toEqual([]);
    const fingerprint = { delivery: DELIVERY, size: 4, root: treeHash(leaves) };
    expect(failedOf(await check(forged, { fingerprint }))).toEqual(['fingerprint.matches']);
  });

  it('or by a signed dossier', async () => {
    await writeFile(disk.path('signed.pdf'), await dossier());
    const forged = await put(recordFiles([facts, photo, paper, edited(pulp, '35.2', '33.2')]));
    const report = await verifyPaths([disk.path('signed.pdf'), forged]);
    expect(report.verdict).toBe('broken');
    expect(failedOf({ checks: report.together })).toEqual(['together.states']);
    expect(report.together[0]?.detail).toContain('differ from entry 3 on');
  });

  it('a withheld original may be away', async () => {
    const files = recordFiles(more({ type: 'evidence-withheld', body: { evidence: 'e1', why: 'private' } }));
    files.delete(original);
    const subject = await check(files);
    expect(failedOf(subject)).toEqual([]);
    expect(subject.checks.find(({ id }) => id === 'originals.present')?.detail).toContain('1 are withheld');
  });

  it('a clock that was moved back is noted', async () => {
    const entries = more({
      type: 'evidence-withheld',
      body: { evidence: 'e1', why: 'x' },
      at: '2026-07-01T00:00:00.000Z',
    });
    const subject = await check(recordFiles(entries));
    expect(subject.checks.find(({ id }) => id === 'ledger.times')).toMatchObject({
      result: 'notice',
      detail: expect.stringContaining('entry 4 was made at 2026-07-01'),
    });
  });

  it('any changed byte of ledger, checkpoint and originals is found', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 255 }), async (which, where, by) => {
        const files = recordFiles();
        const names = [...files.keys()].filter((name) => name !== 'delivery.yaml');
        const name = names[which % names.length] ?? '';
        const bytes = Uint8Array.from(files.get(name) ?? []);
        const i = where % bytes.length;
        bytes[i] = (bytes[i] ?? 0) ^ by;
        expect((await check(files.set(name, bytes))).verdict).toBe('broken');
      }),
      { numRuns: cases(60) },
    ));
});
