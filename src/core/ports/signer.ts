/** What is to be signed, twice over: key services take the one or the other. */
export interface ToSign {
  /** SHA-256 of `bytes`, 32 bytes: for a key service that signs digests. */
  digest: Uint8Array;
  /** The signed attributes in DER (RFC 5652 §5.4), a few hundred bytes: for one that hashes by itself. */
  bytes: Uint8Array;
  /** Aborted when the signature is no longer wanted. */
  signal?: AbortSignal;
}

/**
 * Somebody who signs: a key and its certificate, wherever the key is. The identity in a folder is one; a smart card
 * (PKCS#11) or a key service is another, whose key never comes into this program.
 *
 * The contract:
 * - The certificate is an X.509 end-entity certificate (RFC 5280) in DER of an RSA key of 2,048 to 4,096 bits or an EC
 *   key on P-256 or P-384, is for signing by its key usage, and stays the same as long as the signer is used.
 * - `chain` holds the certificates of the authorities between it and a root, in DER, the issuer of the signer's own
 *   first; none for a self-signed one.
 * - `sign` gives RSASSA-PKCS1-v1_5 with SHA-256 (RFC 8017 §8.2), or ECDSA with SHA-256 as DER Ecdsa-Sig-Value
 *   (RFC 3279 §2.2.3), not the bare r and s of fixed length.
 * - It changes nothing of what it is given, answers each call by itself, also several at once, and rejects when it
 *   can't sign: with a DossierError where a person can mend it, with the signal's reason when aborted.
 */
export interface Signer {
  /** The certificate of the key. */
  readonly certificateDer: Uint8Array;
  /** Certificates of its authorities. */
  readonly chain?: readonly Uint8Array[];
  /** Gives the signature. */
  sign(what: ToSign): Promise<Uint8Array>;
}
