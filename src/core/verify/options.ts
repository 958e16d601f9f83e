import type { PictureComparer } from '../ports/picture-comparer.js';

/** What someone was sent earlier: the record had this tree hash when it had this many entries. */
export interface KnownFingerprint {
  delivery: string;
  /** Number of entries. */
  size: number;
  /** Tree hash over them (RFC 9162 §2.1), 64 lower-case hex digits. */
  root: string;
}

/** Whom the reader trusts, and what time it is. */
export interface TrustOptions {
  /** Certificates in DER: of signers, of time-stamp servers, or of authorities. */
  trusted?: readonly Uint8Array[];
  /** Latest signing time that is believed, usually now. */
  at?: Date;
}

/** What a dossier is checked against. */
export interface VerifyOptions extends TrustOptions {
  /** A fingerprint that was received earlier by another way; the record must begin with it. */
  fingerprint?: KnownFingerprint;
  /** Several such fingerprints. */
  fingerprints?: readonly KnownFingerprint[];
  /** Opens what compares the printed pictures with the originals inside; without it they are not compared. */
  pictures?: () => PictureComparer;
}
