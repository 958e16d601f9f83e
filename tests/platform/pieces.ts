import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { concatBytes, fromHex, toHex, utf8Bytes } from '../../src/core/model/bytes.js';
import type {
  CreateHasher,
  Digest,
  DigestLarge,
  HashName,
  Inflate,
  VerifySignature,
} from '../../src/core/ports/cryptography.js';
import vectors from './signatures.json' with { type: 'json' };

/** What a platform has to give. */
export interface Pieces {
  digest: Digest;
  digestLarge: DigestLarge;
  createHasher: CreateHasher;
  inflate: Inflate;
  verifySignature: VerifySignature;
}

/** Hashes of nothing, of "abc" and of 448 bits (FIPS 180-4, examples of NIST), by name. */
const HASHES: [HashName, string, string][] = [
  ['sha1', '', 'da39a3ee5e6b4b0d3255bfef95601890afd80709'],
  ['sha1', 'abc', 'a9993e364706816aba3e25717850c26c9cd0d89d'],
  ['sha256', '', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['sha256', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'sha256',
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'sha384',
    'abc',
    'cb00753f45a35e8bb5a03d699ac65007272c32ab0eded1631a8b605a43ff5bed8086072ba1e7cc2358baeca134c825a7',
  ],
  [
    'sha512',
    'abc',
    'ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f',
  ],
];

const curve = z.enum(['prime256v1', 'secp384r1', 'secp521r1']);
const hash = z.enum(['sha1', 'sha256', 'sha384', 'sha512']);
const { signed, signatures } = z
  .object({
    signed: z.string(),
    signatures: z.array(
      z.object({
        scheme: z.discriminatedUnion('is', [
          z.object({ is: z.literal('ecdsa'), hash, curve }),
          z.object({ is: z.literal('rsa-pkcs1'), hash }),
          z.object({ is: z.literal('rsa-pss'), hash, saltLength: z.number() }),
          z.object({ is: z.literal('ed25519') }),
        ]),
        publicKey: z.string(),
        value: z.string(),
      }),
    ),
  })
  .parse(vectors);

/** "limp leaves, " forty times, packed by zlib. */
const WORDS = utf8Bytes('limp leaves, '.repeat(40));
const PACKED = fromHex('789ccbc9cc2d50c8494d2c4b2dd651c819e58c540e005b4cb8b1');

const flipped = (bytes: Uint8Array, at: number) =>
  bytes.map((byte, i) => (i === (at + bytes.length) % bytes.length ? byte ^ 1 : byte));

/** What every platform must do alike; `strictAfter` when it tells what stands behind packed bytes. */
export function testPieces(platform: string, pieces: Pieces, strictAfter = true): void {
  describe(`${platform}: a hash`, () => {
    it.each(HASHES)(
      '%s of "%s" is that of the standard, in one piece, in many, and of a file',
      async (name, text, hex) => {
        const bytes = utf8Bytes(text);
        const single = Array.from(bytes, (byte) => Uint8Array.of(byte));
        expect(toHex(pieces.digest(name, [bytes]))).toBe(hex);
        expect(toHex(pieces.digest(name, single))).toBe(hex);
        expect(toHex(await pieces.digestLarge(name, single))).toBe(hex);
        const hasher = pieces.createHasher(name);
        for (const piece of single) hasher.update(piece);
        expect(toHex(hasher.digest())).toBe(hex);
      },
    );

    it('of bytes in the middle of others is that of these bytes alone', async () => {
      const middle = utf8Bytes('xabcx').subarray(1, 4);
      expect(toHex(pieces.digest('sha256', [middle]))).toBe(HASHES[3]?.[2]);
      expect(toHex(await pieces.digestLarge('sha256', [middle]))).toBe(HASHES[3]?.[2]);
    });
  });

  describe(`${platform}: packed bytes`, () => {
    it('are unpacked where there is room for them', async () => {
      expect(toHex((await pieces.inflate(PACKED, WORDS.length)) ?? new Uint8Array())).toBe(toHex(WORDS));
      expect(await pieces.inflate(PACKED, WORDS.length - 1)).toBeUndefined();
    });

    it.each([
      ['that are cut off', PACKED.subarray(0, -3)],
      ['with another checksum', flipped(PACKED, -1)],
      ['that are damaged', flipped(PACKED, 4)],
      ['without their beginning', PACKED.subarray(2)],
      ['that are none', utf8Bytes('limp leaves')],
      ['of which there are none', new Uint8Array()],
    ])('%s are refused', async (_, bytes) => {
      expect(await pieces.inflate(bytes, 1_000_000)).toBeUndefined();
    });

    it.runIf(strictAfter)('with something behind them are refused', async () => {
      expect(await pieces.inflate(concatBytes([PACKED, Uint8Array.of(0)]), 1_000_000)).toBeUndefined();
      expect(await pieces.inflate(concatBytes([PACKED, PACKED]), 1_000_000)).toBeUndefined();
    });
  });

  describe(`${platform}: a signature`, () => {
    const rows = signatures.map((one) => ({
      ...one,
      name: Object.values(one.scheme).join(' '),
      claim: {
        scheme: one.scheme,
        publicKey: fromHex(one.publicKey),
        signed: fromHex(signed),
        value: fromHex(one.value),
      },
    }));

    it.each(rows)(
      '$name holds over its bytes, by its key, as it is, and by nothing else',
      async ({ claim }) => {
        expect(await pieces.verifySignature(claim)).toBe(true);
        for (const other of [
          { ...claim, signed: flipped(claim.signed, 3) },
          { ...claim, value: flipped(claim.value, -1) },
          { ...claim, value: claim.value.subarray(1) },
          { ...claim, value: new Uint8Array() },
          { ...claim, publicKey: flipped(claim.publicKey, -1) },
          { ...claim, publicKey: new Uint8Array(4) },
          ...rows
            .filter(({ claim: { publicKey } }) => toHex(publicKey) !== toHex(claim.publicKey))
            .map(({ claim: { publicKey } }) => ({ ...claim, publicKey })),
          ...rows.filter((row) => row.claim !== claim).map(({ claim: { scheme } }) => ({ ...claim, scheme })),
        ])
          expect(await pieces.verifySignature(other)).toBe(false);
      },
    );
  });
}
