import type { Signer } from '../../core/ports/signer.js';

/** The identity in a folder signs. One is made there on first use. */
export interface ByIdentity {
  /** The folder; DOSSIER_IDENTITY, or `.config/load-dossier` at home, when undefined. */
  identityFolder: string | undefined;
  /** Gives the passphrase of the key, or the one for a key that is about to be made. */
  passphrase: (isNew: boolean) => Promise<string>;
  signer?: undefined;
}

/** A signer of the caller's own signs, such as a smart card or a key service. */
export interface BySigner {
  signer: Signer;
}

/** Who signs. */
export type SignedBy = ByIdentity | BySigner;

/** What `input` says of who signs, and nothing else of it. */
export function signedBy(input: SignedBy): SignedBy {
  return input.signer === undefined
    ? { identityFolder: input.identityFolder, passphrase: input.passphrase }
    : { signer: input.signer };
}
