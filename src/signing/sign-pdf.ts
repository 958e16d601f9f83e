import { createHash } from 'node:crypto';
import { DossierError } from '../core/model/error.js';
import type { Signer } from '../core/ports/signer.js';
import { type Signing, signDetached } from './cms.js';
import { CONTENTS_BYTES, type PreparedPdf, preparePdf, type SignatureWords } from './placeholder.js';

export interface SigningOptions extends SignatureWords, Signing {
  /** `count` random bytes; they only make the marker of the placeholder. */
  random: (count: number) => Uint8Array;
}

/**
 * Signs a PDF as a whole: one certifying PAdES signature, baseline B-B or with a time stamp B-T, over every byte but its own. Attachments,
 * structure, metadata and dates stay as they are. With the same input and random bytes, everything outside
 * the signature value is the same.
 * @throws DossierError unsupported-file when the PDF has a form or a signature already; identity for a key
 *   that is not used for signing here; what `signer` and `stamp` throw
 */
export async function signPdf(pdf: Uint8Array, signer: Signer, options: SigningOptions): Promise<Uint8Array> {
  const marker = Buffer.from(options.random(16)).toString('hex');
  const prepared = await preparePdf(pdf, options, marker);
  const digest = digestOf(prepared);
  const cms = await signDetached(digest, signer, options);
  if (cms.length > CONTENTS_BYTES)
    throw new DossierError(
      'identity',
      `signature, certificates and time stamp take ${cms.length} bytes, and there is room for ${CONTENTS_BYTES}`,
      { fix: 'Leave certificates out that the chain does not need, or ask another time-stamp server.' },
    );
  return insertSignature(prepared, cms);
}

/** SHA-256 over everything but the room for the signature, `<` and `>` included in the room. */
export function digestOf(prepared: PreparedPdf): Uint8Array {
  return createHash('sha256')
    .update(prepared.bytes.subarray(0, prepared.contentsFrom - 1))
    .update(prepared.bytes.subarray(prepared.contentsTo + 1))
    .digest();
}

/** Writes the CMS structure into the reserved bytes; the rest of them stay zeros. */
export function insertSignature(prepared: PreparedPdf, cms: Uint8Array): Uint8Array {
  if (cms.length > CONTENTS_BYTES)
    throw new Error(`the signature takes ${cms.length} bytes, and there is room for ${CONTENTS_BYTES}`);
  const view = Buffer.from(prepared.bytes.buffer, prepared.bytes.byteOffset, prepared.bytes.length);
  view.write(Buffer.from(cms).toString('hex'), prepared.contentsFrom, 'latin1');
  return prepared.bytes;
}
