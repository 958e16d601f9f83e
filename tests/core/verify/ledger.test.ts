import { createHash, generateKeyPairSync } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printCheckpoint } from '../../../src/core/ledger/checkpoint.js';
import { signedStatementBytes } from '../../../src/core/ledger/statement.js';
import { treeHash } from '../../../src/core/ledger/tree.js';
import { evidence } from '../../../src/core/model/evidence.js';
import { signDetached } from '../../../src/signing/cms.js';
import { FakeTsa, type TsaTricks } from '../../signing/fake-tsa.js';
import { text } from '../../signing/sample.js';
import { SIGNED_AT, sampleIdentity } from '../../signing/sample-identity.js';
import { DELIVERY, type Files, recordFiles, type Scratch, scratch } from './files.js';
import { cms, type Shape } from './forge.js';
import { checkRecord, leaves, more } from './record-sample.js';

let disk: Scratch;
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());
const check = (files: Files, options = {}) => checkRecord(disk, files, options);

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
  const signedFor = async (record: string, change: object = {}, signer = person, shape?: Shape) => {
    const read = evidence.parse(said);
    if (read.kind !== 'statement') throw new Error('no statement');
    const digest = createHash('sha256').update(signedStatementBytes(record, read)).digest();
    const structure = shape === undefined ? await signDetached(digest, signer) : cms(digest, signer, shape);
    const signature = {
      cms: Buffer.from(structure).toString('base64'),
      certificateSha256: signer.certificateSha256,
    };
    return recordFiles(more({ type: 'reading-recorded', body: { ...said, signature, ...change } }));
  };
  const answer = async (files: Files, trusted: Uint8Array[] = []) =>
    (await check(files, { trusted })).checks.find(({ id }) => id === 'ledger.statements');

  it('is as they signed it', async () => {
    expect((await answer(await signedFor(DELIVERY), [person.certificateDer]))?.result).toBe('passed');
    expect(await answer(await signedFor(DELIVERY))).toMatchObject({
      result: 'notice',
      detail: expect.stringContaining('signed by CN=R. Vela, whom none of the certificates you trust'),
    });
  });

  it.each<[string, () => Promise<Files>, RegExp]>([
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
          {},
        ),
      /does not fit/,
    ],
    [
      'with something after it',
      () => signedFor(DELIVERY, {}, person, { after: text('x') }),
      /after the signature/,
    ],
  ])('%s is refused', async (_, make, words) => {
    const found = await answer(await make(), [person.certificateDer]);
    expect(found?.result).toBe('failed');
    expect(found?.detail).toMatch(words);
  });
});
