import { isSameBytes, utf8Bytes } from '../core/model/bytes.js';
import type { Signer, ToSign } from '../core/ports/signer.js';
import { DOCUMENT_USES } from '../core/verify/cms/asn1.js';
import { type Certificate, readCertificate } from '../core/verify/cms/certificate.js';
import { signingKey } from '../core/verify/cms/public-key.js';
import { isSignatureValid } from '../core/verify/cms/signature-scheme.js';
import { isTrusted } from '../core/verify/trust.js';
import { digestOf } from './digest.js';
import { broken, type RuleResult, Rules, rejectionOf } from './rules.js';

const AT_ONCE = 8;

/**
 * Tries a signer against the contract of `Signer`. It is asked for about a dozen signatures over made-up bytes. Never
 * rejects.
 */
export async function checkSigner(signer: Signer): Promise<RuleResult[]> {
  const rules = new Rules();
  const own = () => readCertificate(signer.certificateDer);
  const before = Uint8Array.from(signer.certificateDer);
  await rules.try(
    'The certificate is an X.509 certificate in DER whose key is RSA of 2,048 to 4,096 bits, or EC on P-256 or P-384',
    async () => {
      if (signingKey(own().key.kind) === undefined) broken('the key is of another kind or size');
    },
  );
  await rules.try('The certificate is for signing documents', async () => {
    const { keyUsage, extendedUses } = own();
    if (keyUsage !== undefined && !keyUsage.digitalSignature && !keyUsage.nonRepudiation)
      broken('its key usage has neither digital signature nor non-repudiation');
    if (extendedUses !== undefined && !extendedUses.some((use) => DOCUMENT_USES.includes(use)))
      broken('its extended key usage names neither documents, e-mail nor any use');
  });
  await rules.try('The chain leads from the certificate upwards, the issuer of each the next', async () => {
    let child = own();
    for (const [i, der] of (signer.chain ?? []).entries()) {
      const issuer = readCertificate(der);
      if (!(await isTrusted(child, [], [issuer], child.validFrom)))
        broken(`certificate ${i + 1} of the chain did not issue the one before it`);
      child = issuer;
    }
  });
  await rules.try(
    'A signature fits the certificate: SHA-256, RSASSA-PKCS1-v1_5 or ECDSA in DER',
    async () => {
      for (const text of ['', 'one', 'x'.repeat(1000)]) await requireFitting(own(), signer, toSign(text));
    },
  );
  await rules.try('Several calls at once are answered each by its own signature', async () => {
    const all = Array.from({ length: AT_ONCE }, (_, i) => toSign(`number ${i}`));
    await Promise.all(all.map((one) => requireFitting(own(), signer, one)));
  });
  await rules.try('Nothing that it is given is changed', async () => {
    const given = toSign('unchanged');
    const copy = { digest: Uint8Array.from(given.digest), bytes: Uint8Array.from(given.bytes) };
    await signer.sign(given);
    if (!isSameBytes(given.digest, copy.digest)) broken('the digest was changed');
    if (!isSameBytes(given.bytes, copy.bytes)) broken('the bytes were changed');
  });
  await rules.try('The certificate stays the same', async () => {
    if (!isSameBytes(signer.certificateDer, before)) broken('it is another one than at first');
  });
  await rules.try('It rejects with the signal’s reason when it is aborted', async () => {
    const why = new Error('aborted by the trial');
    const given = { ...toSign('aborted'), signal: AbortSignal.abort(why) };
    const error = await rejectionOf(() => signer.sign(given), 'though the signal was aborted before');
    if (error !== why) broken(`it rejected with something else: ${String(error)}`);
  });
  return rules.results;
}

function toSign(text: string): ToSign {
  const bytes = utf8Bytes(text);
  return { digest: digestOf(bytes), bytes };
}

async function requireFitting(certificate: Certificate, signer: Signer, given: ToSign): Promise<void> {
  const signed = Uint8Array.from(given.bytes);
  const value = await signer.sign(given);
  const { kind } = certificate.key;
  const scheme =
    kind.is === 'ec'
      ? ({ is: 'ecdsa', hash: 'sha256', curve: kind.curve } as const)
      : ({ is: 'rsa-pkcs1', hash: 'sha256' } as const);
  if (!(await isSignatureValid(scheme, certificate.key, signed, value)))
    broken(`what it gave for ${signed.length} bytes is no signature over them by the certificate's key`);
}
