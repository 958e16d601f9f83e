import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { readCertificate } from '../../../src/core/verify/cms/certificate.js';
import { isTrusted } from '../../../src/core/verify/trust.js';
import { makeAnyCertificate } from './any-certificate.js';

const at = new Date(Date.UTC(2026, 6, 17));
const keys = () => generateKeyPairSync('ec', { namedCurve: 'P-256' });
const rootKeys = keys();
const middleKeys = keys();
const leafKeys = keys();
const byRoot = { name: 'Root', key: rootKeys.privateKey };
const byMiddle = { name: 'Middle', key: middleKeys.privateKey };
const made = (...wanted: Parameters<typeof makeAnyCertificate>) =>
  readCertificate(makeAnyCertificate(...wanted));

const root = made({ ...rootKeys, subject: 'Root', authority: true });
const middle = made({ ...middleKeys, subject: 'Middle', issuer: byRoot, authority: true });
const leaf = made({ ...leafKeys, subject: 'Carrier', issuer: byMiddle });
const direct = made({ ...leafKeys, subject: 'Carrier', issuer: byRoot });
const lookAlike = made({ ...keys(), subject: 'Root', authority: true });
const noAuthority = made({ ...middleKeys, subject: 'Middle', issuer: byRoot });
const rsaKeys = generateKeyPairSync('rsa', { modulusLength: 2048 });
const rsaRoot = made({ ...rsaKeys, subject: 'Root', authority: true });

describe('a signer is vouched for (RFC 5280 §6.1)', () => {
  it.each([
    ['when its own certificate is trusted', leaf, [], [leaf], at, true],
    ['when its issuer is trusted', direct, [], [root], at, true],
    ['through an authority that came along', leaf, [middle], [root], at, true],
    ['when the authority between is trusted itself', leaf, [], [middle], at, true],
    ['not when the authority between is missing', leaf, [], [root], at, false],
    ['not by nobody', leaf, [middle, root], [], at, false],
    ['not by an issuer that only has the name', direct, [], [lookAlike], at, false],
    ['not by an issuer of that name with another kind of key', direct, [], [rsaRoot], at, false],
    ['not through a certificate that may not issue others', leaf, [noAuthority], [root], at, false],
    ['not by itself', root, [root], [lookAlike], at, false],
    ['not by an authority that had run out', direct, [], [root], new Date(Date.UTC(2032, 0, 1)), false],
  ])('%s', async (_, signer, others, trusted, time, expected) => {
    expect(await isTrusted(signer, others, trusted, time)).toBe(expected);
  });
});

describe('key usage (RFC 5280 §4.2.1.3)', () => {
  it.each([
    [undefined, undefined],
    [0x80, { digitalSignature: true, nonRepudiation: false, certificateSigning: false }],
    [0x40, { digitalSignature: false, nonRepudiation: true, certificateSigning: false }],
    [0x06, { digitalSignature: false, nonRepudiation: false, certificateSigning: true }],
  ])('bits %s are read as %j', (usage, expected) => {
    const { keyUsage } = made({ ...leafKeys, ...omitUndefined({ usage }) });
    expect(keyUsage).toEqual(expected);
  });
});
