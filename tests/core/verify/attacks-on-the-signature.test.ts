import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { verifyDossier } from '../../../src/core/verify/verify-dossier.js';
import { signDetached } from '../../../src/signing/cms.js';
import { signWith } from '../../../src/signing/identity-material.js';
import { digestOf, insertSignature } from '../../../src/signing/sign-pdf.js';
import { text } from '../../signing/sample.js';
import { sampleIdentity } from '../../signing/sample-identity.js';
import { makeAnyCertificate } from './any-certificate.js';
import { cms, der, failed, identity, OIDS, prepared, type Shape, signAs, stranger } from './forge.js';

const trusted = [identity.certificateDer, stranger.certificateDer];
const verdictOn = async (shape: Shape, signer = identity) =>
  verifyDossier(signAs(await prepared(), shape, signer), { trusted });

describe('the structure of the signature (RFC 5652, RFC 5035)', () => {
  it('as it should be, made by hand, is accepted', async () => {
    expect((await verdictOn({})).verdict).toBe('intact');
  });

  it.each<[string, Shape, string[]]>([
    ['the other value of the signature that verifies, n − s', { highS: true }, ['signature.form']],
    ['MD5', { digestName: 'md5' }, ['signature.algorithms']],
    ['SHA-1', { digestName: 'sha1' }, ['signature.algorithms']],
    ['SHA-1 inside the signature alone', { signatureOid: OIDS.ecdsaSha1 }, ['signature.algorithms']],
    ['two digests that disagree', { signatureOid: OIDS.ecdsaSha384 }, ['signature.algorithms']],
    ['no signer', { signers: 0 }, ['signature.structure']],
    ['two signers', { signers: 2 }, ['signature.structure']],
    ['no signed attributes', { withoutSignedAttributes: true }, ['signature.structure']],
    ['no content type', { leaveOut: 'content-type' }, ['signature.structure']],
    ['no message digest', { leaveOut: 'message-digest' }, ['signature.structure']],
    ['no signing certificate', { leaveOut: 'signing-certificate' }, ['signature.structure']],
    ['another content type', { contentType: OIDS.tstInfo }, ['signature.structure']],
    [
      'a signing time',
      { add: der(0x30, OIDS.signingTime, der(0x31, der(0x17, text('260717090500Z')))) },
      ['signature.structure'],
    ],
    [
      'an attribute twice',
      { add: der(0x30, OIDS.contentType, der(0x31, OIDS.tstInfo)) },
      ['signature.structure'],
    ],
    [
      'an attribute with two values',
      { contentType: Buffer.concat([OIDS.data, OIDS.data]) },
      ['signature.structure'],
    ],
    ['attributes out of order', { unsorted: true }, ['signature.structure']],
    ['content of its own', { content: text('something else') }, ['signature.structure']],
    [
      'unknown unsigned attributes',
      { unsigned: der(0x30, OIDS.signingTime, der(0x31, der(0x05))) },
      ['signature.structure'],
    ],
    ['bytes after it', { after: text('x') }, ['signature.padding']],
    ['a binding to another certificate', { boundTo: stranger.certificateDer }, ['signature.certificate']],
    [
      'another certificate in place of the own',
      { certificate: stranger.certificateDer, boundTo: identity.certificateDer },
      ['signature.certificate', 'signature.value'],
    ],
    [
      'the certificate of someone trusted, bound but without its key',
      { certificate: stranger.certificateDer },
      ['signature.value'],
    ],
  ])('%s is refused', async (_, shape, ids) => {
    const found = await verdictOn(shape);
    expect(failed(found)).toEqual(ids);
    expect(found.verdict).toBe('broken');
  });

  it('a signature over another file is refused', async () => {
    const one = await prepared();
    const found = await verifyDossier(insertSignature(one, cms(Buffer.alloc(32, 7), identity)), { trusted });
    expect(failed(found)).toEqual(['signature.digest']);
  });

  it('a time stamp that is none is refused', async () => {
    const found = await verdictOn({ unsigned: der(0x30, OIDS.timeStamp, der(0x31, der(0x30))) });
    expect(failed(found)).toEqual(['signature.form', 'signature.time-stamp']);
  });

  it.each([
    [
      'a length longer than needed',
      (b: Uint8Array) => Buffer.concat([b.subarray(0, 1), Buffer.from([0x83, 0x00]), b.subarray(2)]),
    ],
    [
      'an indefinite length',
      (b: Uint8Array) =>
        Buffer.concat([b.subarray(0, 1), Buffer.from([0x80]), b.subarray(4), Buffer.from([0, 0])]),
    ],
    ['another tag', (b: Uint8Array) => Buffer.concat([Buffer.from([0x31]), b.subarray(1)])],
    ['nothing', () => Buffer.alloc(0)],
    ['half of it', (b: Uint8Array) => b.subarray(0, b.length / 2)],
  ])('BER in place of DER: %s', async (_, change) => {
    const one = await prepared();
    const found = await verifyDossier(insertSignature(one, change(cms(digestOf(one), identity))), {
      trusted,
    });
    expect(failed(found)).toContain('signature.structure');
    expect(failed(found)).not.toContain('check.finished');
  });
});

describe('keys that are too weak', () => {
  it.each([
    ['RSA 1024', () => generateKeyPairSync('rsa', { modulusLength: 1024 })],
    ['secp256k1', () => generateKeyPairSync('ec', { namedCurve: 'secp256k1' })],
    ['Ed25519, which PAdES readers seldom know', () => generateKeyPairSync('ed25519')],
  ])('%s', async (_, keys) => {
    const weak = makeAnyCertificate(keys());
    const one = await prepared();
    const structure = cms(digestOf(one), { ...identity, certificateDer: weak });
    const found = await verifyDossier(insertSignature(one, structure), { trusted: [weak] });
    expect(failed(found)).toContain('signature.algorithms');
    expect(failed(found)).not.toContain('check.finished');
  });
});

describe('who vouches for the signer', () => {
  it('a look-alike of a trusted certificate is not trusted', async () => {
    const found = await verifyDossier(signAs(await prepared(), {}, stranger), {
      trusted: [identity.certificateDer],
    });
    expect(found.verdict).toBe('intact-signer-not-vouched-for');
    expect(found.signer?.name).toBe('CN=Harrow Creek Transport');
  });

  it('a certificate that ran out before the signing time is refused, trusted or not', async () => {
    const old = sampleIdentity({
      notBefore: new Date(Date.UTC(2020, 0, 1)),
      notAfter: new Date(Date.UTC(2025, 0, 1)),
    });
    const found = await verifyDossier(signAs(await prepared(), {}, old), { trusted: [old.certificateDer] });
    expect(failed(found)).toEqual(['certificate.validity']);
  });

  it.each([
    [0x80, 'intact', []],
    [0x40, 'intact', []],
    [0x06, 'broken', ['certificate.usage']],
  ])('key usage bits %s give %s', async (usage, verdict, ids) => {
    const keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const certificateDer = makeAnyCertificate({ ...keys, usage });
    const one = await prepared();
    const structure = cms(digestOf(one), { ...identity, certificateDer, key: keys.privateKey });
    const found = await verifyDossier(insertSignature(one, structure), { trusted: [certificateDer] });
    expect(found.verdict).toBe(verdict);
    expect(failed(found)).toEqual(ids);
  });

  it.each([
    ['for documents (RFC 9336)', ['2b06010505070324'], []],
    ['for e-mail among others', ['2b06010505070302', '2b06010505070304'], []],
    ['for any use', ['551d2500'], []],
    ['for web servers', ['2b06010505070301'], ['certificate.usage']],
    ['for web servers and their visitors', ['2b06010505070301', '2b06010505070302'], ['certificate.usage']],
    ['for time stamps', ['2b06010505070308'], ['certificate.usage']],
  ])('a certificate %s, from whoever the reader trusts', async (_, uses, ids) => {
    const keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const certificateDer = makeAnyCertificate({ ...keys, usage: 0x80, uses });
    const one = await prepared();
    const structure = cms(digestOf(one), { ...identity, certificateDer, key: keys.privateKey });
    const found = await verifyDossier(insertSignature(one, structure), { trusted: [certificateDer] });
    expect(failed(found)).toEqual(ids);
  });

  it('a certificate from a trusted authority is vouched for', async () => {
    const authority = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const keys = generateKeyPairSync('rsa', { modulusLength: 2048 });
    const issuer = { name: 'Root', key: authority.privateKey };
    const root = makeAnyCertificate({ ...authority, subject: 'Root', authority: true });
    const certificateDer = makeAnyCertificate({ ...keys, subject: 'Carrier', issuer });
    const one = await prepared();
    const structure = await signDetached(digestOf(one), {
      certificateDer,
      sign: signWith(keys.privateKey),
    });
    const found = await verifyDossier(insertSignature(one, structure), { trusted: [root] });
    expect(failed(found)).toEqual([]);
    expect(found.verdict).toBe('intact');
  });
});
