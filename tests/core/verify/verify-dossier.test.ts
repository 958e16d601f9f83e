import { describe, expect, it } from 'vitest';
import { treeHash } from '../../../src/core/ledger/tree.js';
import { CHECKS_BY_SUBJECT } from '../../../src/core/verify/checks.js';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { sampleParts, samplePdf, text } from '../../signing/sample.js';
import { SIGNED_AT } from '../../signing/sample-identity.js';
import { dossier, failed, identity, stranger } from './forge.js';

describe('a sound dossier', () => {
  it('is intact for who trusts the signer, and every check says what it found', async () => {
    const found = await verifyDossier(await dossier(), { trusted: [identity.certificateDer], at: SIGNED_AT });
    expect(failed(found)).toEqual([]);
    expect(found.verdict).toBe('intact');
    expect(found.signer).toEqual({
      name: 'CN=Harrow Creek Transport',
      certificateSha256: identity.certificateSha256,
      claimedTime: '2026-07-17T09:05:00.000Z',
    });
    const { record } = sampleParts().manifest;
    expect(found.fingerprint).toEqual({ delivery: '2026-0714-A', size: 4, root: record.root });
    const open = found.checks.filter(({ result }) => result === 'not-checked').map(({ id }) => id);
    expect(open).toEqual([
      'signature.time-stamp',
      'time-stamp.trusted',
      'ledger.time-stamps',
      'ledger.statements',
      'plates.alike',
      'fingerprint.matches',
    ]);
    expect(found.checks.every(({ detail, what }) => detail !== '' && what !== '')).toBe(true);
  });

  it.each([
    ['nobody is trusted', []],
    ['somebody else of the same name is trusted', [stranger.certificateDer]],
    ['what is trusted is not a certificate', [text('hello'), new Uint8Array()]],
  ])('is intact with a signer not vouched for when %s', async (_, trusted) => {
    const found = await verifyDossier(await dossier(), { trusted });
    expect(found.verdict).toBe('intact-signer-not-vouched-for');
    expect(failed(found)).toEqual([]);
  });
});

describe('a fingerprint that was sent earlier', () => {
  const { leaves, root } = sampleParts().manifest.record;
  const delivery = '2026-0714-A';
  it.each([
    ['of the whole record', { delivery, size: 4, root }, 'passed'],
    ['of its beginning', { delivery, size: 2, root: treeHash(leaves.slice(0, 2)) }, 'passed'],
    ['with another hash', { delivery, size: 4, root: treeHash(leaves.slice(0, 2)) }, 'failed'],
    ['of another delivery', { delivery: '2026-0714-B', size: 4, root }, 'failed'],
    ['of a longer record: this one was rolled back', { delivery, size: 5, root }, 'failed'],
    ['of nothing', { delivery, size: 0, root }, 'failed'],
  ])('%s: %j is %s', async (_, fingerprint, result) => {
    const found = await verifyDossier(await dossier(), { fingerprint });
    expect(found.checks.find(({ id }) => id === 'fingerprint.matches')?.result).toBe(result);
    expect(found.verdict === 'broken').toBe(result === 'failed');
  });
});

describe('what is no dossier is broken, and the words say why', () => {
  const png = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
  it.each<[string, () => Promise<Uint8Array> | Uint8Array, string, RegExp]>([
    ['an empty file', () => new Uint8Array(), 'pdf.header', /empty/],
    ['a picture', () => png, 'pdf.header', /not a PDF/],
    [
      'a PDF after other bytes',
      async () => Buffer.concat([text('\n'), await dossier()]),
      'pdf.header',
      /before it/,
    ],
    ['the word alone', () => text('%PDF-1.7'), 'pdf.structure', /does not end/],
    ['an unsigned PDF with packed objects', () => samplePdf(), 'pdf.structure', /no cross-reference table/],
  ])('%s', async (_, make, id, words) => {
    const found = await verifyDossier(await make());
    expect(found.verdict).toBe('broken');
    const check = found.checks.find((one) => one.result === 'failed');
    expect(check?.id).toBe(id);
    expect(check?.detail).toMatch(words);
    expect(found.checks.map((one) => one.id)).toEqual(CHECKS_BY_SUBJECT.dossier);
  });

  it('an unsigned PDF in one piece', async () => {
    const { PDFDocument } = await import('#pdf-lib');
    const plain = await (await PDFDocument.load(await samplePdf())).save({ useObjectStreams: false });
    expect(failed(await verifyDossier(plain))).toEqual(['signature.present']);
  });
});
