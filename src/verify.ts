/** Checking what a stranger gave, trusting nobody. */
export { consistencyProof, inclusionProof, verifyConsistency, verifyInclusion } from './core/ledger/proof.js';
export { leafHash, treeHash } from './core/ledger/tree.js';
export { DossierError, type ErrorCode, type Problem, type Where } from './core/model/error.js';
export type { Sha256 } from './core/model/evidence.js';
export type {
  Check,
  CheckedItem,
  CheckResult,
  Verdict,
  Verification,
  VerificationReport,
} from './core/model/verification.js';
export type { Clock } from './core/ports/clock.js';
export type { PictureComparer, PictureDistance } from './core/ports/picture-comparer.js';
export type { LongWork, Progress } from './core/ports/work.js';
export type { ContainedFile, Container } from './core/verify/container/container.js';
export type { Item, OpenedItem } from './core/verify/item.js';
export type { KnownFingerprint, TrustOptions, VerifyOptions } from './core/verify/options.js';
export { verifyAll } from './core/verify/verify-all.js';
export {
  type DossierOptions,
  type GivenItem,
  type VerifyInput,
  verify,
  verifyDossier,
  verifyFile,
} from './jobs/verify.js';
export type { GivenBytes } from './platform/node/container/given-item.js';
