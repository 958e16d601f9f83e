import {
  createHash,
  createPrivateKey,
  generateKeyPairSync,
  type KeyObject,
  X509Certificate,
} from 'node:crypto';
import { mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import forge from 'node-forge';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { toInstant } from '../../src/core/model/time.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { CERTIFICATE_FILE, KEY_FILE, loadIdentity, makeIdentity } from '../../src/signing/identity.js';
import { renewIdentity, useIdentity } from '../../src/signing/identity-change.js';
import { showIdentity } from '../../src/signing/show-identity.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import { makeAnyCertificate } from '../core/verify/any-certificate.js';
import { failed } from '../core/verify/forge.js';
import { samplePdf } from './sample.js';
import { countingBytes, SIGNED_AT } from './sample-identity.js';

const passphrase = 'seven pallets north';
const now = SIGNED_AT;
let top: string;
let folder: string;
beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), 'identity-'));
  folder = join(top, 'own');
});
afterEach(() => rm(top, { recursive: true, force: true }));

const put = async (name: string, content: string | Uint8Array) => {
  await writeFile(join(top, name), content);
  return join(top, name);
};
const pem = (der: Uint8Array) => new X509Certificate(der).toString();
const use = (files: string[], more: { passphrase?: string; replace?: boolean; now?: Date } = {}) =>
  useIdentity(folder, { files, passphrase, now, replace: false, ...more });

/** A root, an authority below it, and a carrier's certificate from that. */
function issued(keys: { publicKey: KeyObject; privateKey: KeyObject }, usage?: number) {
  const root = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const middle = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  return {
    root: makeAnyCertificate({ ...root, subject: 'Root', authority: true }),
    middle: makeAnyCertificate({
      ...middle,
      subject: 'Middle',
      issuer: { name: 'Root', key: root.privateKey },
      authority: true,
    }),
    leaf: makeAnyCertificate({
      ...keys,
      subject: 'Carrier',
      issuer: { name: 'Middle', key: middle.privateKey },
      ...omitUndefined({ usage }),
    }),
  };
}

function pkcs12(
  key: KeyObject,
  certificates: Uint8Array[],
  algorithm: '3des' | 'aes256',
  word = passphrase,
): Buffer {
  const asn1 = forge.pkcs12.toPkcs12Asn1(
    forge.pki.privateKeyFromPem(key.export({ type: 'pkcs1', format: 'pem' }).toString()),
    certificates.map((der) => forge.pki.certificateFromPem(pem(der))),
    word,
    { algorithm },
  );
  return Buffer.from(forge.asn1.toDer(asn1).getBytes(), 'latin1');
}

describe('a given identity', () => {
  const rsa = generateKeyPairSync('rsa', { modulusLength: 2048 });
  const ec = generateKeyPairSync('ec', { namedCurve: 'P-384' });

  it.each(['3des', 'aes256'] as const)('as PKCS#12 with %s', async (algorithm) => {
    // The library that writes the file reads certificates of RSA keys alone, so that all of the chain has them.
    const leaf = makeAnyCertificate({ ...rsa, subject: 'Carrier' });
    await use([await put('own.p12', pkcs12(rsa.privateKey, [leaf], algorithm))]);
    const { identity } = await loadIdentity(folder, passphrase, now);
    expect(identity.subject).toBe('CN=Carrier');
    expect(identity.certificateSha256).toBe(createHash('sha256').update(leaf).digest('hex'));
    expect(identity.key.equals(rsa.privateKey)).toBe(true);
  });

  it('as PEM with its chain, in any order: the chain goes into the signature and is bound by it', async () => {
    const { root, middle, leaf } = issued(ec);
    const key = ec.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString();
    await use([await put('key.pem', key), await put('chain.pem', pem(middle) + pem(leaf))]);
    const { identity } = await loadIdentity(folder, passphrase, now);
    expect(identity.chain?.map((der) => new X509Certificate(der).subject)).toEqual(['CN=Middle']);
    const signed = await signPdf(await samplePdf(), identity, {
      at: toInstant(SIGNED_AT.getTime()),
      random: countingBytes(),
    });
    const found = await verifyDossier(signed, { trusted: [root] });
    expect(failed(found)).toEqual([]);
    expect(found.verdict).toBe('intact');
    // A byte of the authority's own signature, which nothing but the binding covers.
    const text = Buffer.from(signed).toString('latin1');
    const hex = Buffer.from(middle).toString('hex');
    const at = text.indexOf(hex) + hex.length - 1;
    const changed = Uint8Array.from(signed);
    changed[at] = text[at] === '0' ? 0x31 : 0x30;
    expect(failed(await verifyDossier(changed, { trusted: [root] }))).toEqual(['signature.certificate']);
  });

  it('whose key was encrypted is encrypted again', async () => {
    const leaf = makeAnyCertificate({ ...ec, subject: 'Carrier' });
    const key = ec.privateKey
      .export({ type: 'pkcs8', format: 'pem', cipher: 'aes-256-cbc', passphrase })
      .toString();
    await use([await put('all.pem', key + pem(leaf))]);
    const stored = await readFile(join(folder, KEY_FILE), 'utf8');
    expect(() => createPrivateKey(stored)).toThrow();
    expect((await loadIdentity(folder, passphrase, now)).identity.key.equals(ec.privateKey)).toBe(true);
  });

  const plain = (key: KeyObject) => key.export({ type: 'pkcs8', format: 'pem' }).toString();
  it.each<[string, () => Promise<string[]>, object, RegExp]>([
    [
      'with another passphrase',
      async () => [
        await put('x.p12', pkcs12(rsa.privateKey, [makeAnyCertificate(rsa)], 'aes256', 'other words')),
      ],
      {},
      /passphrase does not open this PKCS#12/,
    ],
    ['that is no PKCS#12', async () => [await put('x.p12', 'hello')], {}, /does not open/],
    ['without a key', async () => [await put('c.pem', pem(makeAnyCertificate(ec)))], {}, /no private key/],
    [
      'without a certificate',
      async () => [await put('k.pem', plain(ec.privateKey))],
      {},
      /not a certificate/,
    ],
    [
      'of two that do not go together',
      async () => [await put('x.pem', plain(ec.privateKey) + pem(makeAnyCertificate(rsa)))],
      {},
      /does not belong/,
    ],
    [
      'for other uses',
      async () => [
        await put('x.pem', plain(ec.privateKey) + pem(makeAnyCertificate({ ...ec, usage: 0x06 }))),
      ],
      {},
      /other uses than signing/,
    ],
    [
      'that ran out',
      async () => [await put('x.pem', plain(ec.privateKey) + pem(makeAnyCertificate(ec)))],
      { now: new Date(Date.UTC(2032, 0, 1)) },
      /ran out on 2031-01-01/,
    ],
    [
      'not yet valid',
      async () => [await put('x.pem', plain(ec.privateKey) + pem(makeAnyCertificate(ec)))],
      { now: new Date(Date.UTC(2025, 0, 1)) },
      /valid only from 2026-01-01/,
    ],
    [
      'with a key that is too short',
      async () => {
        const weak = generateKeyPairSync('rsa', { modulusLength: 1024 });
        return [await put('x.pem', plain(weak.privateKey) + pem(makeAnyCertificate(weak)))];
      },
      {},
      /not used for signing/,
    ],
    ['that is not there', async () => [join(top, 'nowhere.p12')], {}, /cannot be read/],
  ])('%s is refused and leaves nothing behind', async (_, files, more, words) => {
    const used = use(await files(), more);
    await expect(used).rejects.toMatchObject({ code: 'identity' });
    await expect(used).rejects.toThrow(words);
    await expect(readdir(folder)).rejects.toThrow();
  });

  it('does not take the place of another unasked, and then keeps the old certificate', async () => {
    const made = await makeIdentity(folder, { name: 'Old', passphrase, now, random: countingBytes() });
    const files = [
      await put('x.pem', plain(ec.privateKey) + pem(makeAnyCertificate({ ...ec, subject: 'New' }))),
    ];
    await expect(use(files)).rejects.toThrow(/already/);
    const { oldCertificate = '' } = await use(files, { replace: true });
    expect((await loadIdentity(folder, passphrase, now)).identity.subject).toBe('CN=New');
    const kept = new X509Certificate(await readFile(join(folder, oldCertificate)));
    expect(createHash('sha256').update(kept.raw).digest('hex')).toBe(made.certificateSha256);
  });
});

describe('renewing', () => {
  const random = countingBytes();
  const later = new Date(Date.UTC(2032, 0, 1));

  it('makes a new key of the same name, also after the old one ran out', async () => {
    const old = await makeIdentity(folder, { name: 'Núñez, Harrow & Co', passphrase, now, random });
    const { identity, oldCertificate, succession } = await renewIdentity(folder, {
      passphrase,
      now: later,
      random,
    });
    expect(identity.subject).toBe(old.subject);
    expect(identity.key.equals(old.key)).toBe(false);
    expect((await loadIdentity(folder, passphrase, later)).identity.certificateSha256).toBe(
      identity.certificateSha256,
    );
    const stated = Object.values(succession).map((file) => basename(file));
    expect((await readdir(folder)).sort()).toEqual(
      [CERTIFICATE_FILE, KEY_FILE, oldCertificate, ...stated].sort(),
    );
    expect((await showIdentity(folder)).validFrom).toBe('2032-01-01T00:00:00.000Z');
  });

  it('wants the passphrase', async () => {
    await makeIdentity(folder, { name: 'A', passphrase, now, random });
    await expect(renewIdentity(folder, { passphrase: 'other words', now, random })).rejects.toThrow(
      /does not open/,
    );
  });

  it('is not for a certificate that an authority issued', async () => {
    const keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const { leaf } = issued(keys);
    const key = keys.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString();
    await use([await put('x.pem', key + pem(leaf))]);
    await expect(renewIdentity(folder, { passphrase, now, random })).rejects.toThrow(
      /issued by an authority/,
    );
  });

  it('that was cut off between its two steps is finished by the next use', async () => {
    await makeIdentity(folder, { name: 'A', passphrase, now, random });
    const before = await readFile(join(folder, CERTIFICATE_FILE));
    const { identity } = await renewIdentity(folder, { passphrase, now, random });
    await rename(join(folder, CERTIFICATE_FILE), join(folder, 'identity.next.crt.pem'));
    await writeFile(join(folder, CERTIFICATE_FILE), before);
    const { identity: found } = await loadIdentity(folder, passphrase, now);
    expect(found.certificateSha256).toBe(identity.certificateSha256);
    expect(await readdir(folder)).not.toContain('identity.next.crt.pem');
  });
});
