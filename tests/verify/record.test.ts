import { createHash, generateKeyPairSync } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evidence } from '../../src/model/evidence.js';
import type { VerificationReport } from '../../src/model/verification.js';
import { canonicalBytes } from '../../src/record/canonical.js';
import { printCheckpoint } from '../../src/record/checkpoint.js';
import { signedStatementBytes } from '../../src/record/statement.js';
import { leafHash, sha256Of, treeHash } from '../../src/record/tree.js';
import { signDetached } from '../../src/seal/cms.js';
import { verifyAll } from '../../src/verify/verify-all.js';
import { FakeTsa, type TsaTricks } from '../seal/fake-tsa.js';
import { asLines, ledgerEntries, PAPER, PHOTO, sampleParts, text } from '../seal/sample.js';
import { SIGNED_AT, sampleIdentity } from '../seal/sample-identity.js';
import {
  bagFiles,
  DELIVERY,
  type Files,
  failedOf,
  only,
  recordFiles,
  type Scratch,
  scratch,
} from './files.js';
import { cms, dossier, identity, type Shape } from './forge.js';

let disk: Scratch;
let count = 0;
const next = () => {
  count += 1;
  return count;
};
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());
const put = (files: Files) => disk.write(`record-${next()}`, files);
const check = async (files: Files, options = {}) => only(await verifyAll([await put(files)], options));

const own = ledgerEntries();
const leaves = own.map(leafHash);
const at = '2026-07-17T09:05:00.000Z';
const more = (entry: object, entries: readonly Uint8Array[] = own) => [
  ...entries,
  canonicalBytes({ at, by: 'M. Ortega', seq: entries.length, ...entry }),
];
const edited = (entry: Uint8Array | undefined, old: string, by: string) => {
  const words = Buffer.from(entry ?? '').toString('utf8');
  expect(words).toContain(old);
  return text(words.replace(old, by));
};
const published = (size: number, root: string) =>
  more({ type: 'fingerprint-published', body: { size, root, to: 'R. Vela', how: 'text' } });

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
    const report = await verifyAll([disk.path('signed.pdf'), forged]);
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
      { numRuns: 60 },
    ));
});

describe('time stamps in the ledger', () => {
  const stamped = (over: string, tricks: TsaTricks = {}) => {
    const tsa = new FakeTsa({ at: SIGNED_AT, ...tricks });
    const token = Buffer.from(tsa.token(text(over))).toString('base64');
    const body = { size: 4, root: treeHash(leaves), token, from: 'Time office' };
    return { tsa, files: recordFiles(more({ type: 'time-stamp-received', body })) };
  };
  const right = printCheckpoint({ delivery: DELIVERY, size: 4, root: treeHash(leaves) });
  const resultOf = async (files: Files, trusted: Uint8Array[] = []) =>
    (await check(files, { trusted })).checks.find(({ id }) => id === 'ledger.time-stamps')?.result;

  it('is over the checkpoint of the state that it names', async () => {
    const { files, tsa } = stamped(right);
    expect(await resultOf(files, [tsa.certificate])).toBe('passed');
    expect(await resultOf(files)).toBe('notice');
  });

  it.each<[string, string, TsaTricks]>([
    ['over another state', right.replace('\n4\n', '\n3\n'), {}],
    ['of another delivery', right.replace(DELIVERY, '2026-0714-B'), {}],
    ['forged', right, { forged: true }],
    ['from another time than it was entered', right, { at: new Date(Date.UTC(2026, 9, 1)) }],
  ])('one %s is refused', async (_, over, tricks) => {
    expect(await resultOf(stamped(over, tricks).files)).toBe('failed');
  });

  it('one that is no time stamp is refused', async () => {
    const body = { size: 4, root: treeHash(leaves), token: 'AAAA', from: 'x' };
    expect(await resultOf(recordFiles(more({ type: 'time-stamp-received', body })))).toBe('failed');
  });
});

describe('a statement that its person signed', () => {
  const person = sampleIdentity({ name: 'R. Vela' });
  const said = {
    kind: 'statement',
    evidence: 'e9',
    time: { is: 'none', why: 'x' },
    source: { is: 'typed' },
    by: 'R. Vela',
    text: 'I was on the dock from 04:05 to 06:20.',
  };
  const signedFor = (record: string, change: object = {}, signer = person, shape?: Shape) => {
    const read = evidence.parse(said);
    if (read.kind !== 'statement') throw new Error('no statement');
    const digest = createHash('sha256').update(signedStatementBytes(record, read)).digest();
    const structure = shape === undefined ? signDetached(digest, signer) : cms(digest, signer, shape);
    const signature = {
      cms: Buffer.from(structure).toString('base64'),
      certificateSha256: signer.certificateSha256,
    };
    return recordFiles(more({ type: 'reading-recorded', body: { ...said, signature, ...change } }));
  };
  const answer = async (files: Files, trusted: Uint8Array[] = []) =>
    (await check(files, { trusted })).checks.find(({ id }) => id === 'ledger.statements');

  it('is as they signed it', async () => {
    expect((await answer(signedFor(DELIVERY), [person.certificateDer]))?.result).toBe('passed');
    expect(await answer(signedFor(DELIVERY))).toMatchObject({
      result: 'notice',
      detail: expect.stringContaining('signed by CN=R. Vela, whom none of the certificates you trust'),
    });
  });

  it.each<[string, () => Files, RegExp]>([
    ['with other words', () => signedFor(DELIVERY, { text: 'I was not there.' }), /changed afterwards/],
    ['under another name', () => signedFor(DELIVERY, { by: 'S. Other' }), /changed afterwards/],
    ['taken over from another record', () => signedFor('2026-0714-B'), /changed afterwards/],
    ['with another evidence number', () => signedFor(DELIVERY, { evidence: 'e8' }), /changed afterwards/],
    ['by SHA-1', () => signedFor(DELIVERY, {}, person, { digestName: 'sha1' }), /too weak/],
    [
      'by a certificate that had run out',
      () => signedFor(DELIVERY, {}, sampleIdentity({ notAfter: new Date(Date.UTC(2026, 1, 1)) })),
      /not valid at/,
    ],
    [
      'by a key that is too weak',
      () =>
        signedFor(
          DELIVERY,
          {},
          { ...person, key: generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey },
        ),
      /does not fit/,
    ],
    [
      'with something after it',
      () => signedFor(DELIVERY, {}, person, { after: text('x') }),
      /after the signature/,
    ],
  ])('%s is refused', async (_, make, words) => {
    const found = await answer(make(), [person.certificateDer]);
    expect(found?.result).toBe('failed');
    expect(found?.detail).toMatch(words);
  });
});

describe('several things together', () => {
  const trusted = [identity.certificateDer];
  const withBag = async (tagManifestSha256: string) => {
    const parts = sampleParts();
    const bag = { name: 'bag.zip', tagManifestSha256, payloadBytes: 1, payloadFiles: 1 };
    const manifest = JSON.parse(JSON.stringify({ ...parts.manifest, bag }));
    const path = disk.path(`together-${next()}.pdf`);
    await writeFile(path, await dossier({ ...parts, manifest }));
    return path;
  };
  const tagHash = (files: Files) => sha256Of(files.get('tagmanifest-sha256.txt') ?? text(''));
  const resultOf = (report: VerificationReport, id: string) =>
    report.together.find((one) => one.id === id)?.result;

  it('dossier, bag and record of one delivery', async () => {
    const zip = await disk.zip('together.zip', bagFiles());
    const record = await put(recordFiles(published(4, treeHash(leaves))));
    const report = await verifyAll([await withBag(tagHash(bagFiles())), zip, record], { trusted });
    expect(report.together.map(({ result }) => result)).toEqual(['passed', 'passed', 'passed']);
    expect(report.verdict).toBe('intact');
    expect(report.together[0]?.detail).toContain(`the newest is ${record}`);
  });

  it('another bag than the dossier names', async () => {
    const zip = await disk.zip('another.zip', bagFiles(recordFiles().set('originals/zz', text('more'))));
    const report = await verifyAll([await withBag(tagHash(bagFiles())), zip], { trusted });
    expect(resultOf(report, 'together.bag')).toBe('failed');
    expect(report.verdict).toBe('broken');
  });

  it('an original that the dossier leaves out and nobody has whole', async () => {
    const files = recordFiles();
    files.set(`originals/${sha256Of(PAPER)}.txt`, text('other'));
    const report = await verifyAll([await withBag('0'.repeat(64)), await put(files)], { trusted });
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
    const report = await verifyAll([await withBag('0'.repeat(64)), await put(files)], { trusted });
    expect(resultOf(report, 'together.states')).toBe('failed');
  });

  it('a fingerprint newer than the dossier is no fault when the record holds both', async () => {
    const entries = published(4, treeHash(leaves));
    const fingerprint = { delivery: DELIVERY, size: 5, root: treeHash(entries.map(leafHash)) };
    const path = await withBag('0'.repeat(64));
    const alone = await verifyAll([path], { trusted, fingerprint });
    expect(failedOf(only(alone))).toEqual(['fingerprint.matches']);
    expect(only(alone).checks.find(({ id }) => id === 'fingerprint.matches')?.detail).toContain(
      'newer than this dossier: it counts 5 entries, and 4 are here',
    );
    const both = await verifyAll([path, await put(recordFiles(entries))], { trusted, fingerprint });
    expect(both.verdict).toBe('intact');
  });

  it('a record rolled back to before the dossier is seen beside it, and by its own checkpoint copy', async () => {
    const entries = published(4, treeHash(leaves));
    const newer = await put(recordFiles(entries));
    const older = await put(recordFiles(own.slice(0, 2)));
    const report = await verifyAll([older, newer]);
    expect(resultOf(report, 'together.states')).toBe('passed');
    const fingerprint = { delivery: DELIVERY, size: 5, root: treeHash(entries.map(leafHash)) };
    expect(failedOf(only(await verifyAll([older], { fingerprint })))).toEqual(['fingerprint.matches']);
  });

  it('a folder that is neither record nor bag', async () => {
    const path = await disk.write(
      'neither',
      new Map([
        ['x', text('x')],
        ['y', text('y')],
      ]),
    );
    const report = await verifyAll([path]);
    expect(only(report)).toMatchObject({ is: 'unknown', verdict: 'broken' });
  });

  it('rejects only for what is not there', async () => {
    await expect(verifyAll([join(disk.folder, 'nowhere')])).rejects.toMatchObject({ code: 'ENOENT' });
    expect((await readFile(disk.path('together.zip'))).length).toBeGreaterThan(0);
  });
});
