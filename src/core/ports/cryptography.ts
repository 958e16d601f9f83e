/** Hashes by their short names (FIPS 180-4). SHA-1 only picks among certificates that are checked otherwise. */
export type HashName = 'sha1' | 'sha256' | 'sha384' | 'sha512';

/** A hash that is fed piece by piece, for files that are not held in memory. */
export interface Hasher {
  update(piece: Uint8Array): void;
  /** The hash of all pieces; nothing can be added after it. */
  digest(): Uint8Array;
}

/** The hash of pieces, one behind the other, at once: for small things. */
export type Digest = (hash: HashName, pieces: readonly Uint8Array[]) => Uint8Array;

/** The hash of megabytes: a browser's own, which answers later, is ten times as quick as one in script. */
export type DigestLarge = (hash: HashName, pieces: readonly Uint8Array[]) => Promise<Uint8Array>;

/** Begins the hash of a file that comes piece by piece. */
export type CreateHasher = (hash: HashName) => Hasher;

/**
 * The bytes that were packed (zlib, RFC 1950); undefined when they are damaged, more than `most`, or when something
 * stands behind them.
 */
export type Inflate = (packed: Uint8Array, most: number) => Promise<Uint8Array | undefined>;

/** How a signature was made (RFC 8017 §8.1, §8.2, FIPS 186-5 §6 and §7). */
export type SignatureScheme =
  | { is: 'ecdsa'; hash: HashName; curve: Curve }
  | { is: 'rsa-pkcs1'; hash: HashName }
  | { is: 'rsa-pss'; hash: HashName; saltLength: number }
  | { is: 'ed25519' };

/** Curves by their names in OpenSSL; P-256, P-384 and P-521 of FIPS 186-5. */
export type Curve = 'prime256v1' | 'secp384r1' | 'secp521r1';

/** A signature, and what it is said to be over and by. */
export interface SignatureClaim {
  scheme: SignatureScheme;
  /** The key in DER (SubjectPublicKeyInfo, RFC 5280 §4.1.2.7). */
  publicKey: Uint8Array;
  signed: Uint8Array;
  /** ECDSA as r and s side by side (IEEE P1363), each of the curve's length. */
  value: Uint8Array;
}

/** Whether the signature is one by the key over the bytes; false also for a key that is none. Never rejects. */
export type VerifySignature = (claim: SignatureClaim) => Promise<boolean>;
