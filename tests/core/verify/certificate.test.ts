import {
  constants,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  X509Certificate,
} from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCertificate } from '../../../src/core/verify/cms/certificate.js';
import { describeKey } from '../../../src/core/verify/cms/public-key.js';
import { Malformed } from '../../../src/core/verify/malformed.js';
import { isTrusted } from '../../../src/core/verify/trust.js';
import { der } from './forge.js';

/** A certificate from its parts; by default one of an EC key that signed itself. */
interface Parts {
  subject?: Uint8Array;
  issuer?: Uint8Array;
  serial?: Uint8Array;
  from?: Uint8Array;
  to?: Uint8Array;
  algorithm?: Uint8Array;
  /** The algorithm as it stands in what is signed, where that is another. */
  inner?: Uint8Array;
  extensions?: Uint8Array[];
  publicKey?: KeyObject;
  signature?: (tbs: Uint8Array) => Uint8Array;
}

const oid = (hex: string) => der(0x06, Buffer.from(hex, 'hex'));
const attribute = (type: string, tag: number, content: Uint8Array) =>
  der(0x31, der(0x30, oid(type), der(tag, content)));
const nameOf = (words: string) => der(0x30, attribute('550403', 0x0c, Buffer.from(words)));
const utc = (digits: string) => der(0x17, Buffer.from(digits));
const extension = (id: string, value: Uint8Array, critical = false) =>
  der(0x30, oid(id), ...(critical ? [der(0x01, Uint8Array.of(0xff))] : []), der(0x04, value));
const TRUE = der(0x01, Uint8Array.of(0xff));
const authority = extension('551d13', der(0x30, TRUE), true);
const ECDSA_SHA256 = der(0x30, oid('2a8648ce3d040302'));
const own = generateKeyPairSync('ec', { namedCurve: 'P-256' });
const AT = new Date(Date.UTC(2026, 6, 17));

function certificate(parts: Parts = {}): Uint8Array {
  const algorithm = parts.algorithm ?? ECDSA_SHA256;
  const subject = parts.subject ?? nameOf('Harrow Creek Transport');
  const tbs = der(
    0x30,
    der(0xa0, der(0x02, Uint8Array.of(2))),
    der(0x02, parts.serial ?? Uint8Array.of(0x51)),
    parts.inner ?? algorithm,
    parts.issuer ?? subject,
    der(0x30, parts.from ?? utc('260101000000Z'), parts.to ?? utc('310101000000Z')),
    subject,
    (parts.publicKey ?? own.publicKey).export({ type: 'spki', format: 'der' }),
    ...(parts.extensions === undefined ? [] : [der(0xa3, der(0x30, ...parts.extensions))]),
  );
  const signature = (parts.signature ?? ((bytes) => sign('sha256', bytes, own.privateKey)))(tbs);
  return der(0x30, tbs, algorithm, der(0x03, Uint8Array.of(0), signature));
}

/** An RSA key of 2,048 bits with this exponent, in base64url. */
function rsaWithExponent(e: string): KeyObject {
  const { publicKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  return createPublicKey({ key: { ...publicKey.export({ format: 'jwk' }), e }, format: 'jwk' });
}

/** What Node, that is OpenSSL, says of the subject. */
const nodesLine = (bytes: Uint8Array) => new X509Certificate(bytes).subject.replaceAll('\n', ', ');

describe('the subject of a certificate in one line is that of OpenSSL', () => {
  const TYPES = [
    ...['550403', '550404', '550405', '550406', '550407', '550408', '550409', '55040a', '55040b', '55040c'],
    ...['550411', '55042a', '550461', '2a864886f70d010901', '0992268993f22c640119', '0992268993f22c640101'],
    ...['2b0601040182373c020103', '2a030405'],
  ];
  const strings = fc.oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }).map((text) => ({ tag: 0x0c, text })),
    fc.stringMatching(/^[ #A-Za-z0-9'()+,./:=?-]{1,20}$/).map((text) => ({ tag: 0x13, text })),
    fc.stringMatching(/^[ -~]{1,20}$/).map((text) => ({ tag: 0x16, text })),
  );
  const part = fc.tuple(fc.constantFrom(...TYPES), strings);
  const name = fc.array(fc.array(part, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 4 });

  it('for any names', () =>
    fc.assert(
      fc.property(name, (sets) => {
        const subject = der(
          0x30,
          ...sets.map((all) =>
            der(
              0x31,
              ...all.map(([type, { tag, text }]) => der(0x30, oid(type), der(tag, Buffer.from(text)))),
            ),
          ),
        );
        const bytes = certificate({ subject });
        expect(readCertificate(bytes).subjectLine).toBe(nodesLine(bytes));
      }),
    ));

  it.each([
    ['of the marks that are written with a backslash', 0x0c, Buffer.from(' #a,b+c"d\\e<f>g;h=i# ')],
    ['of a mark alone', 0x0c, Buffer.from('#')],
    ['of a space alone', 0x0c, Buffer.from(' ')],
    ['of control characters', 0x0c, Buffer.from('a\n\x1b[31mb\x7f')],
    ['of two bytes a character', 0x1e, Buffer.from([0x00, 0xd1, 0x20, 0xac])],
    ['of four bytes a character', 0x1c, Buffer.from([0, 1, 0xf6, 0x00])],
    ['of the oldest kind of text', 0x14, Buffer.from('Nandú', 'latin1')],
  ])('for a name %s', (_, tag, content) => {
    const bytes = certificate({ subject: der(0x30, attribute('550403', tag, content)) });
    expect(readCertificate(bytes).subjectLine).toBe(nodesLine(bytes));
  });
});

describe('the parts of a certificate are those that OpenSSL reads', () => {
  it.each([
    ['two digits of the year', utc('500101000000Z'), utc('491231235959Z')],
    [
      'four digits of the year',
      der(0x18, Buffer.from('20260101000000Z')),
      der(0x18, Buffer.from('20991231235959Z')),
    ],
  ])('validity with %s', (_, from, to) => {
    const bytes = certificate({ from, to });
    const { validFrom, validTo } = readCertificate(bytes);
    const x509 = new X509Certificate(bytes);
    expect([validFrom, validTo]).toEqual([new Date(x509.validFrom), new Date(x509.validTo)]);
  });

  it.each([
    ['P-256', generateKeyPairSync('ec', { namedCurve: 'P-256' }).publicKey, 'an EC key on prime256v1'],
    ['P-384', generateKeyPairSync('ec', { namedCurve: 'P-384' }).publicKey, 'an EC key on secp384r1'],
    ['P-521', generateKeyPairSync('ec', { namedCurve: 'P-521' }).publicKey, 'an unknown key'],
    ['secp256k1', generateKeyPairSync('ec', { namedCurve: 'secp256k1' }).publicKey, 'an unknown key'],
    ['Ed25519', generateKeyPairSync('ed25519').publicKey, 'an unknown key'],
    ['RSA', generateKeyPairSync('rsa', { modulusLength: 2048 }).publicKey, 'an RSA key of 2048 bits'],
    ['RSA with an exponent of five bytes', rsaWithExponent('AQAAAAE'), 'an unknown key'],
    ['a short RSA', generateKeyPairSync('rsa', { modulusLength: 1024 }).publicKey, 'an unknown key'],
  ])('a key on or of %s', (_, publicKey, words) => {
    const { key } = readCertificate(certificate({ publicKey }));
    const { asymmetricKeyDetails: details } = publicKey;
    if (key.kind.is === 'ec') expect(key.kind.curve).toBe(details?.namedCurve);
    if (key.kind.is === 'rsa') expect(key.kind.bits).toBe(details?.modulusLength);
    expect(Buffer.from(key.spki).equals(publicKey.export({ type: 'spki', format: 'der' }))).toBe(true);
    expect(describeKey(key)).toBe(words);
  });

  it.each<[string, Uint8Array[] | undefined]>([
    ['no extensions', undefined],
    ['nothing of the kind', [extension('551d0e', der(0x04, Buffer.from('id')))]],
    ['an authority', [authority]],
    ['one that says that it is none', [extension('551d13', der(0x30))]],
    [
      'an authority with a length of chain',
      [extension('551d13', der(0x30, TRUE, der(0x02, Uint8Array.of(0))))],
    ],
    [
      'an authority that may sign certificates',
      [authority, extension('551d0f', der(0x03, Uint8Array.of(2, 4)))],
    ],
    ['an authority that may not', [authority, extension('551d0f', der(0x03, Uint8Array.of(7, 0x80)))]],
    ['one that only may', [extension('551d0f', der(0x03, Uint8Array.of(2, 4)))]],
    ['extended uses', [extension('551d25', der(0x30, oid('2b06010505070304'), oid('2b06010505070303')))]],
  ])('whether it issues others, and what for: %s', (_, extensions) => {
    const bytes = certificate(extensions === undefined ? {} : { extensions });
    const x509 = new X509Certificate(bytes);
    const read = readCertificate(bytes);
    expect([read.isAuthority, read.extendedUses]).toEqual([x509.ca, x509.keyUsage]);
  });

  it.each([
    ['nothing', new Uint8Array()],
    ['a byte behind it', Buffer.concat([certificate(), Uint8Array.of(0)])],
    ['a byte too few', certificate().subarray(0, -1)],
    ['the same extension twice', certificate({ extensions: [authority, authority] })],
    ['a time without seconds', certificate({ from: utc('2601010000Z') })],
    ['a time of another zone', certificate({ from: utc('260101000000+0100') })],
    ['a month that there is not', certificate({ from: utc('261301000000Z') })],
    ['a day that there is not', certificate({ from: utc('260230000000Z') })],
    ['an hour that there is not', certificate({ from: utc('260228240000Z') })],
    ['a fraction of a second', certificate({ from: der(0x18, Buffer.from('20260101000000.5Z')) })],
    [
      'an algorithm outside that is another inside',
      certificate({ inner: der(0x30, oid('2a8648ce3d040303')) }),
    ],
    [
      'a name that is no text',
      certificate({ subject: der(0x30, attribute('550403', 0x0c, Uint8Array.of(0xff))) }),
    ],
    ['four parts', der(0x30, ...[1, 2, 3, 4].map(() => der(0x30)))],
  ])('%s is refused', (_, bytes) => {
    expect(() => readCertificate(bytes)).toThrow(Malformed);
  });

  it('whatever byte of it is changed, it is read as another one or refused', () =>
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 1, max: 255 }), (n, by) => {
        const bytes = Uint8Array.from(certificate({ extensions: [authority] }));
        const at = n % bytes.length;
        bytes[at] = (bytes[at] ?? 0) ^ by;
        try {
          expect(Buffer.from(readCertificate(bytes).der).equals(bytes)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(Malformed);
        }
      }),
    ));
});

describe('who issued a certificate is found as OpenSSL finds it', () => {
  const rsa = generateKeyPairSync('rsa', { modulusLength: 2048 });
  const large = generateKeyPairSync('ec', { namedCurve: 'P-521' });
  const edwards = generateKeyPairSync('ed25519');
  const sha256 = der(0x30, oid('608648016503040201'), der(0x05));
  const pss = der(
    0x30,
    oid('2a864886f70d01010a'),
    der(
      0x30,
      der(0xa0, sha256),
      der(0xa1, der(0x30, oid('2a864886f70d010108'), sha256)),
      der(0xa2, der(0x02, Uint8Array.of(32))),
    ),
  );
  const keyId = (tag: number, ...parts: Uint8Array[]) => extension('551d23', der(tag, ...parts));
  const subjectKeyId = (words: string) => extension('551d0e', der(0x04, Buffer.from(words)));
  const root = nameOf('Root');

  it.each<[string, Parts, Parts]>([
    ['by ECDSA on P-256', {}, {}],
    [
      'by ECDSA on P-521 with SHA-512',
      { publicKey: large.publicKey },
      {
        algorithm: der(0x30, oid('2a8648ce3d040304')),
        signature: (tbs) => sign('sha512', tbs, large.privateKey),
      },
    ],
    [
      'by RSA',
      { publicKey: rsa.publicKey },
      {
        algorithm: der(0x30, oid('2a864886f70d01010b'), der(0x05)),
        signature: (tbs) => sign('sha256', tbs, rsa.privateKey),
      },
    ],
    [
      'by RSA-PSS',
      { publicKey: rsa.publicKey },
      {
        algorithm: pss,
        signature: (tbs) =>
          sign('sha256', tbs, {
            key: rsa.privateKey,
            padding: constants.RSA_PKCS1_PSS_PADDING,
            saltLength: 32,
          }),
      },
    ],
    [
      'by Ed25519',
      { publicKey: edwards.publicKey },
      { algorithm: der(0x30, oid('2b6570')), signature: (tbs) => sign(null, tbs, edwards.privateKey) },
    ],
    ['with another key', { publicKey: large.publicKey }, {}],
    ['with a key of another kind', { publicKey: rsa.publicKey }, {}],
    ['by somebody of another name', { subject: nameOf('Roof') }, {}],
    ['by one that is no authority', { extensions: [] }, {}],
    [
      'by one whose key it names',
      { extensions: [authority, subjectKeyId('one')] },
      { extensions: [keyId(0x30, der(0x80, Buffer.from('one')))] },
    ],
    [
      'by one whose key is another than it names',
      { extensions: [authority, subjectKeyId('one')] },
      { extensions: [keyId(0x30, der(0x80, Buffer.from('two')))] },
    ],
    ['by one whose key has no name', {}, { extensions: [keyId(0x30, der(0x80, Buffer.from('two')))] }],
    [
      'by one whose issuer and number it names',
      { serial: Uint8Array.of(7) },
      { extensions: [keyId(0x30, der(0xa1, der(0xa4, root)), der(0x82, Uint8Array.of(7)))] },
    ],
    [
      'by one whose number is another than it names',
      { serial: Uint8Array.of(8) },
      { extensions: [keyId(0x30, der(0xa1, der(0xa4, root)), der(0x82, Uint8Array.of(7)))] },
    ],
    [
      'by one whose issuer is another than it names',
      { serial: Uint8Array.of(7) },
      { extensions: [keyId(0x30, der(0xa1, der(0xa4, nameOf('Roof'))), der(0x82, Uint8Array.of(7)))] },
    ],
  ])('%s', async (_, of, child) => {
    const issuer = certificate({ subject: root, extensions: [authority], ...of });
    const issued = certificate({ issuer: root, ...child });
    const [parent, leaf] = [new X509Certificate(issuer), new X509Certificate(issued)];
    let expected = false;
    try {
      expected = parent.ca && leaf.checkIssued(parent) && leaf.verify(parent.publicKey);
    } catch {
      // A key of another kind than the signature.
    }
    expect(await isTrusted(readCertificate(issued), [], [readCertificate(issuer)], AT)).toBe(expected);
  });

  it('but not by an RSA key of 1024 bits', async () => {
    const { publicKey, privateKey } = generateKeyPairSync('rsa', { modulusLength: 1024 });
    const issuer = certificate({ subject: root, extensions: [authority], publicKey });
    const issued = certificate({
      issuer: root,
      algorithm: der(0x30, oid('2a864886f70d01010b'), der(0x05)),
      signature: (tbs) => sign('sha256', tbs, privateKey),
    });
    expect(new X509Certificate(issued).verify(publicKey)).toBe(true);
    expect(await isTrusted(readCertificate(issued), [], [readCertificate(issuer)], AT)).toBe(false);
  });

  it.each([
    ['SHA-1', der(0x30, oid('2a8648ce3d0401')), 'sha1'],
    ['another algorithm than it says', der(0x30, oid('2a8648ce3d040303')), 'sha256'],
  ])('but not by %s', async (_, algorithm, hash) => {
    const issuer = certificate({ subject: root, extensions: [authority] });
    const issued = certificate({
      issuer: root,
      algorithm,
      signature: (tbs) => sign(hash, tbs, own.privateKey),
    });
    expect(await isTrusted(readCertificate(issued), [], [readCertificate(issuer)], AT)).toBe(false);
  });
});
