import { generateKeyPairSync, X509Certificate } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect } from 'vitest';
import { makeIdentity } from '../../src/signing/identity.js';
import { renewIdentity, useIdentity } from '../../src/signing/identity-change.js';
import { makeAnyCertificate } from '../core/verify/any-certificate.js';
import { ask, checkWith, openssl, scratch } from './programs.js';

/** PKCS#12 files as OpenSSL writes them: today's way (AES-256, PBKDF2) and the old one (RC2, triple DES). */
const disk = scratch();
afterAll(disk.end);
const now = new Date(Date.UTC(2026, 6, 17));

const KEYS = [
  ['EC P-256', () => generateKeyPairSync('ec', { namedCurve: 'P-256' })],
  ['EC P-384', () => generateKeyPairSync('ec', { namedCurve: 'P-384' })],
  ['RSA 2048', () => generateKeyPairSync('rsa', { modulusLength: 2048 })],
  ['RSA 4096', () => generateKeyPairSync('rsa', { modulusLength: 4096 })],
] as const;
const WAYS = [
  ['AES-256', []],
  ['RC2 and triple DES', ['-legacy']],
  [
    'triple DES alone',
    ['-legacy', '-certpbe', 'PBE-SHA1-3DES', '-keypbe', 'PBE-SHA1-3DES', '-macalg', 'sha1'],
  ],
  ['AES-128 with SHA-512', ['-certpbe', 'AES-128-CBC', '-keypbe', 'AES-128-CBC', '-macalg', 'sha512']],
] as const;

describe.each(KEYS)('PKCS#12 with a key of %s', (kind, make) => {
  const keys = make();
  const issuer = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const authority = makeAnyCertificate({ ...issuer, subject: 'Middle', authority: true });
  const leaf = makeAnyCertificate({
    ...keys,
    subject: 'Carrier',
    issuer: { name: 'Middle', key: issuer.privateKey },
  });
  const tag = kind.replace(' ', '-');
  const key = disk.put(`${tag}.key`, keys.privateKey.export({ type: 'pkcs8', format: 'pem' }));
  const certificate = disk.put(`${tag}.crt`, new X509Certificate(leaf).toString());
  const chain = disk.put(`${tag}.chain`, new X509Certificate(authority).toString());

  for (const [way, options] of WAYS)
    for (const passphrase of ['seven pallets north', 'Größe & 12 °C'])
      checkWith(openssl, `${way}, passphrase ${passphrase}`, async () => {
        const file = join(disk.folder, `${tag}-${way}-${passphrase.length}.p12`);
        const word = disk.put('word', passphrase);
        const made = ask(
          openssl,
          ...['pkcs12', '-export', '-inkey', key, '-in', certificate, '-certfile', chain, '-out', file],
          ...['-passout', `file:${word}`, ...options],
        );
        expect(made.status, made.out).toBe(0);
        const folder = join(mkdtempSync(join(disk.folder, 'own-')), 'identity');
        const { identity } = await useIdentity(folder, { files: [file], passphrase, now, replace: false });
        expect(identity.subject).toBe('CN=Carrier');
        expect(identity.key.equals(keys.privateKey)).toBe(true);
        expect(identity.chain).toHaveLength(1);
        const wrong = { files: [file], passphrase: 'six pallets south', now, replace: true };
        await expect(useIdentity(folder, wrong)).rejects.toThrow(/does not open/);
      });
});

describe('an identity of our own', () => {
  const passphrase = 'Größe & 12 °C';
  const random = (count: number) => new Uint8Array(count).fill(7);
  const word = disk.put('own-word', passphrase);
  const make = async () => {
    const folder = join(mkdtempSync(join(disk.folder, 'made-')), 'identity');
    return { folder, ...(await makeIdentity(folder, { name: 'Harrow Creek', passphrase, now, random })) };
  };

  checkWith(openssl, 'its key is opened by another program, sealed as is asked today', async () => {
    const { folder } = await make();
    const key = join(folder, 'identity.key.pem');
    const read = ask(openssl, 'pkey', '-in', key, '-passin', `file:${word}`, '-noout', '-text');
    expect(read.status, read.out).toBe(0);
    const asn1 = ask(openssl, 'asn1parse', '-in', key).out;
    expect(asn1).toMatch(/PBES2[\s\S]*PBKDF2[\s\S]*INTEGER +:0927C0[\s\S]*hmacWithSHA256[\s\S]*aes-256-cbc/);
  });

  checkWith(openssl, 'the statement on the new certificate is signed by the old key', async () => {
    const { folder } = await make();
    const later = new Date(Date.UTC(2026, 6, 18));
    const { oldCertificate, succession } = await renewIdentity(folder, { passphrase, now: later, random });
    const verify = (content: string) =>
      ask(
        openssl,
        ...[
          'cms',
          '-verify',
          '-binary',
          '-inform',
          'DER',
          '-in',
          succession.signatureFile,
          '-content',
          content,
        ],
        ...[
          '-CAfile',
          join(folder, oldCertificate),
          '-purpose',
          'any',
          '-attime',
          String(later.getTime() / 1000),
        ],
      );
    const good = verify(succession.statementFile);
    expect(good.status, good.out).toBe(0);
    expect(verify(disk.put('other.txt', 'another statement')).status).not.toBe(0);
  });
});
