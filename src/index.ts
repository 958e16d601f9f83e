export { type AssessInput, assess } from './core/assess/assess.js';
export { amountsOf } from './core/assess/claim/amounts.js';
export { quantitiesOf } from './core/assess/claim/quantities.js';
export { loadPlan } from './core/assess/loading/plan.js';
export { productAfter, sevenEighthsTime, timeConstant } from './core/assess/product/cooling.js';
export { meanKineticTemperature } from './core/assess/temperature/kinetic.js';
export { summarise } from './core/assess/temperature/summary.js';
export { evidenceHistory, trailOf } from './core/assess/trail/trail.js';
export { consistencyProof, inclusionProof, verifyConsistency, verifyInclusion } from './core/ledger/proof.js';
export { leafHash, treeHash } from './core/ledger/tree.js';
export { DossierError, type ErrorCode, type Problem, type Where } from './core/model/error.js';
export { hundredths, type Money, parseMoney } from './core/model/money.js';
export type {
  AmountWorksheet,
  Assessment,
  Band,
  ChannelSummary,
  ClaimDeadline,
  ClaimResult,
  Excursion,
  ExcursionTotals,
  Finding,
  GapResult,
  LineMargin,
  LoadPlan,
  ProductResult,
  QuantityRow,
  TemperatureResult,
  TimeRange,
  TrailRow,
} from './core/model/results.js';
export type { ClaimEntry, RecordState } from './core/model/state.js';
export {
  celsius,
  fromCelsius,
  kelvin,
  parseTemperature,
  type Temperature,
} from './core/model/temperature.js';
export { type Instant, toInstant } from './core/model/time.js';
export type { UnitLog } from './core/model/unit-log.js';
export type {
  Check,
  CheckedItem,
  CheckResult,
  Verdict,
  Verification,
  VerificationReport,
} from './core/model/verification.js';
export type { Clock } from './core/ports/clock.js';
export type { Signer, ToSign } from './core/ports/signer.js';
export type { TimeStampClient, TimeStampOrder } from './core/ports/time-stamps.js';
export type { LongWork, Progress } from './core/ports/work.js';
export { cite, findProduce, type Produce, produceTable } from './core/reference/produce.js';
export { respirationOf, wattsPerKilogram } from './core/reference/respiration.js';
export { verifyDossier } from './core/verify/verify-dossier.js';
export * from './former-names.js';
export { type AnswerInput, type AnswerReport, answer } from './jobs/answer.js';
export { type AssessedDelivery, assessDelivery, readAt } from './jobs/assess.js';
export { type BuildInput, type BuildOptions, type BuildReport, build } from './jobs/build.js';
export { type ChecklistReport, type EnterChecklistInput, enterChecklist } from './jobs/checklist/enter.js';
export { type ChecklistInput, type WrittenChecklist, writeChecklist } from './jobs/checklist/make.js';
export { type ClaimInput, type RecordedClaimNote, recordClaim, type TypedClaimKind } from './jobs/claim.js';
export { type AmountsInput, type AmountsReport, recordAmounts } from './jobs/claim-amounts.js';
export { type CollectInput, type CollectReport, collect } from './jobs/collect.js';
export {
  type ClockComparisonInput,
  type RecordedClockComparison,
  recordClock,
} from './jobs/compare-clock.js';
export { type OpenDelivery, withDelivery } from './jobs/delivery.js';
export { type DescribeInput, type DescribeReport, describe, type TypedDescription } from './jobs/describe.js';
export { type FingerprintInput, type FingerprintReport, fingerprint } from './jobs/fingerprint.js';
export {
  type IdentityReport,
  makeNewIdentity,
  renewOwnIdentity,
  showOwnIdentity,
  useGivenIdentity,
} from './jobs/identity.js';
export {
  type LetterPackageInput,
  type LetterPackageReport,
  type PackOptions,
  writeLetterPackage,
} from './jobs/letter-package.js';
export { type NewDelivery, type NewDeliveryInput, newDelivery } from './jobs/new-delivery.js';
export { openQuestions, type Question } from './jobs/questions.js';
export { type NotesInput, type NotesReport, recordNotes } from './jobs/record-notes.js';
export { type ReadingInput, type RecordedReading, recordReading } from './jobs/record-reading.js';
export { type StatementSigner, statementSigner } from './jobs/sign-statement.js';
export type { ByIdentity, BySigner, SignedBy } from './jobs/signer.js';
export {
  type TemperaturesInput,
  type TemperaturesReport,
  temperatureSvg,
  temperatures,
} from './jobs/temperatures.js';
export { type TimelineReport, timeline, timelineCsv, timelineSvg } from './jobs/timeline.js';
export { type TrailInput, type TrailReport, trail, trailCsv, writeTrailPdf } from './jobs/trail.js';
export { type VerifyInput, verify, verifyFile } from './jobs/verify.js';
export { type HttpTimeStamps, httpTimeStamps } from './signing/time-stamp.js';
