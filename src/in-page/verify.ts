/**
 * Checking in a page what a stranger gave: what of `load-dossier/verify` needs neither paths nor processes. Certificates
 * are given in DER; bags and records as items of the page's own.
 */
import '../platform/browser/jitless.js';

export {
  consistencyProof,
  inclusionProof,
  verifyConsistency,
  verifyInclusion,
} from '../core/ledger/proof.js';
export { leafHash, treeHash } from '../core/ledger/tree.js';
export { DossierError, type ErrorCode, type Problem, type Where } from '../core/model/error.js';
export type { Sha256 } from '../core/model/evidence.js';
export type {
  Check,
  CheckedItem,
  CheckResult,
  Verdict,
  Verification,
  VerificationReport,
} from '../core/model/verification.js';
export type { PictureComparer, PictureDistance } from '../core/ports/picture-comparer.js';
export type { ContainedFile, Container } from '../core/verify/container/container.js';
export type { Item, OpenedItem } from '../core/verify/item.js';
export type { KnownFingerprint, TrustOptions, VerifyOptions } from '../core/verify/options.js';
export { verifyAll } from '../core/verify/verify-all.js';
export { verifyDossier } from '../core/verify/verify-dossier.js';
