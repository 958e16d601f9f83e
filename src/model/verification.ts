/** `notice`: nothing is broken, and a reader should know what the detail says. */
export type CheckResult = 'passed' | 'notice' | 'failed' | 'not-checked';

/** What a stranger's check found. Judging never throws: every check is named with its result. */
export interface Check {
  /** Stable, dotted: `signature.digest`, `attachment.hash`, `ledger.root` … */
  id: string;
  /** In words, for a person. */
  what: string;
  result: CheckResult;
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
  /** The time that a time-stamp server confirms: the signature existed by then. */
  stampedTime?: string;
}

export interface Verification {
  verdict: Verdict;
  checks: Check[];
  signer?: Signer;
  fingerprint?: { delivery: string; size: number; root: string };
}

/** One of the things that were given to be checked. */
export interface Subject extends Verification {
  /** As it was given. */
  path: string;
  is: 'dossier' | 'bag' | 'record' | 'unknown';
}

/** What a check of several things found: each alone, and whether they belong together. */
export interface VerificationReport {
  schema: 'load-dossier-verification-1';
  /** The worst of all. */
  verdict: Verdict;
  subjects: Subject[];
  together: Check[];
}
