/** What a stranger's check found. Judging never throws: every check is named with its result. */
export interface Check {
  /** Stable, dotted: `signature.digest`, `attachment.hash`, `ledger.root` … */
  id: string;
  /** In words, for a person. */
  what: string;
  result: 'passed' | 'failed' | 'not-checked';
  /** What was found, naming the part (attachment, entry, exhibit). */
  detail: string;
}

export type Verdict = 'intact' | 'intact-signer-not-vouched-for' | 'broken';

export interface Signer {
  /** Subject as the certificate writes it. */
  name: string;
  certificateSha256: string;
  /** The signer's own claim of the time, not proof of it. */
  claimedTime?: string;
}

export interface Verification {
  verdict: Verdict;
  checks: Check[];
  signer?: Signer;
  fingerprint?: { delivery: string; size: number; root: string };
}
