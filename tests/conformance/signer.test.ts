import { generateKeyPairSync } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkSigner } from '../../src/conformance.js';
import { toInstant } from '../../src/core/model/time.js';
import type { Signer } from '../../src/core/ports/signer.js';
import { verifyDossier } from '../../src/core/verify/verify-dossier.js';
import { signPdf } from '../../src/signing/sign-pdf.js';
import { samplePdf } from '../signing/sample.js';
import { countingBytes, SIGNED_AT, sampleIdentity } from '../signing/sample-identity.js';
import { brokenRules } from './broken-rules.js';
import { outsideSigner } from './outside-signer.js';

const folder = mkdtempSync(join(tmpdir(), 'signer-'));
const { signer: outside, end } = outsideSigner(folder);
afterAll(() => {
  end();
  rmSync(folder, { recursive: true, force: true });
});

const rsa = () => generateKeyPairSync('rsa', { modulusLength: 2048 });
const good = sampleIdentity();

describe('the contract of a signer is kept', () => {
  it.each<[string, Signer]>([
    ['by an identity on P-256', good],
    ['by one on P-384', sampleIdentity({ keys: generateKeyPairSync('ec', { namedCurve: 'P-384' }) })],
    ['by one of RSA', sampleIdentity({ keys: rsa() })],
    ['by a key in another process, which is given digests alone', outside],
  ])('%s', async (_, signer) => {
    const results = await checkSigner(signer);
    expect(brokenRules(results)).toEqual([]);
    expect(results).toHaveLength(8);
  });
});

describe('what does not keep it is told:', () => {
  const fits = 'A signature fits the certificate: SHA-256, RSASSA-PKCS1-v1_5 or ECDSA in DER';
  const atOnce = 'Several calls at once are answered each by its own signature';
  it.each<[string, () => Signer, string[]]>([
    ['another key', () => ({ ...good, sign: sampleIdentity().sign }), [fits, atOnce]],
    [
      'r and s of fixed length',
      () => ({ ...good, sign: async () => new Uint8Array(64).fill(7) }),
      [fits, atOnce, 'It rejects with the signal’s reason when it is aborted'],
    ],
    [
      'one answer for all',
      () => {
        let kept: Promise<Uint8Array> | undefined;
        let calls = 0;
        return {
          ...good,
          sign: (what) => {
            what.signal?.throwIfAborted();
            calls += 1;
            if (calls <= 3) return good.sign(what);
            kept ??= good.sign(what);
            return kept;
          },
        };
      },
      [atOnce],
    ],
    [
      'a digest that is wiped',
      () => ({
        ...good,
        sign: async (what) => {
          const signature = await good.sign(what);
          what.digest.fill(0);
          return signature;
        },
      }),
      ['Nothing that it is given is changed'],
    ],
    [
      'a signal that is not heeded',
      () => ({ ...good, sign: ({ bytes, digest }) => good.sign({ bytes, digest }) }),
      ['It rejects with the signal’s reason when it is aborted'],
    ],
    [
      'a chain of somebody else',
      () => ({ ...good, chain: [sampleIdentity({ name: 'Somebody' }).certificateDer] }),
      ['The chain leads from the certificate upwards, the issuer of each the next'],
    ],
    [
      'a certificate that is none',
      () => ({ ...good, certificateDer: new Uint8Array(3) }),
      [
        'The certificate is an X.509 certificate in DER whose key is RSA of 2,048 to 4,096 bits, or EC on P-256 or P-384',
        'The certificate is for signing documents',
        'The chain leads from the certificate upwards, the issuer of each the next',
        fits,
        atOnce,
      ],
    ],
  ])('%s', async (_, make, rules) => {
    expect(brokenRules(await checkSigner(make()))).toEqual(rules);
  });
});

it('a dossier is signed by a key in another process', async () => {
  const options = { at: toInstant(SIGNED_AT.getTime()), random: countingBytes() };
  const signed = await signPdf(await samplePdf(), outside, options);
  const { verdict } = await verifyDossier(signed, { trusted: [outside.certificateDer] });
  expect(verdict).toBe('intact');
});
