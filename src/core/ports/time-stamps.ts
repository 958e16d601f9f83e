/** What a time stamp is asked for. */
export interface TimeStampOrder {
  /** SHA-256 of what is stamped, 32 bytes. */
  digest: Uint8Array;
  /** Content of a positive DER integer, 16 bytes, which the token must repeat. */
  nonce: Uint8Array;
  /** Aborted when the time stamp is no longer wanted. */
  signal?: AbortSignal;
}

/**
 * Somebody who says when a digest was known: a time-stamp server (RFC 3161), however it is reached.
 *
 * The contract:
 * - `request` gives the TimeStampToken alone in DER (RFC 3161 §2.4.2), without the answer around it: over `digest`
 *   with SHA-256, with the same nonce, under `policy` where one is named, with the server's certificate inside.
 * - It rejects when there is no token: with a DossierError where a person can mend it, with the signal's reason when
 *   aborted.
 *
 * Nothing that it gives is believed: whoever asks checks the token as a stranger would.
 */
export interface TimeStampClient {
  /** Address or name of the server, for messages. */
  readonly name: string;
  /** Dotted identifier of the policy that is asked for; the server's own when left out. */
  readonly policy?: string;
  /** Gives the token. */
  request(order: TimeStampOrder): Promise<Uint8Array>;
}
