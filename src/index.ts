export { type AssessedDelivery, assessDelivery, readAt } from './jobs/assess.js';
export { type BuildInput, type BuildReport, build } from './jobs/build.js';
export { type CollectInput, type CollectReport, collect } from './jobs/collect.js';
export { type OpenDelivery, withDelivery } from './jobs/delivery.js';
export { type FingerprintInput, type FingerprintReport, fingerprint } from './jobs/fingerprint.js';
export {
  type IdentityReport,
  makeNewIdentity,
  renewOwnIdentity,
  showOwnIdentity,
  useGivenIdentity,
} from './jobs/identity.js';
export { type NewDelivery, type NewDeliveryInput, newDelivery } from './jobs/new-delivery.js';
export { type NotedReading, type NoteInput, note } from './jobs/note.js';
export { statementSigner } from './jobs/sign-statement.js';
export { type VerifyInput, verify, verifyFile } from './jobs/verify.js';
export { DossierError, type ErrorCode, type Problem, type Where } from './model/error.js';
export type { Assessment, Excursion, Finding, GapResult, TemperatureResult } from './model/results.js';
export type { RecordState } from './model/state.js';
export type {
  Check,
  CheckResult,
  Subject,
  Verdict,
  Verification,
  VerificationReport,
} from './model/verification.js';
export { verifyDossier } from './verify/verify-dossier.js';
