export { type AssessInput, assess } from './assess/assess.js';
export { amountsOf } from './assess/claim/amounts.js';
export { quantitiesOf } from './assess/claim/quantities.js';
export { loadPlan } from './assess/loading/plan.js';
export { productAfter, sevenEighthsTime, timeConstant } from './assess/product/cooling.js';
export { meanKineticTemperature } from './assess/temperature/kinetic.js';
export { summarise } from './assess/temperature/summary.js';
export { lifeOf, trailOf } from './assess/trail/trail.js';
export { type AnswerInput, type AnswerReport, answer } from './jobs/answer.js';
export { type AssessedDelivery, assessDelivery, readAt } from './jobs/assess.js';
export { type BuildInput, type BuildReport, build } from './jobs/build.js';
export { type ClaimInput, type NotedClaim, recordClaim, type TypedClaimKind } from './jobs/claim.js';
export { type AmountsInput, type AmountsReport, recordAmounts } from './jobs/claim-amounts.js';
export { type ClockInput, type ComparedClock, recordClock } from './jobs/clock.js';
export { type CollectInput, type CollectReport, collect } from './jobs/collect.js';
export { type OpenDelivery, withDelivery } from './jobs/delivery.js';
export { type DescribeInput, type DescribeReport, describe, type Says } from './jobs/describe.js';
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
export { type NotesInput, type NotesReport, notes } from './jobs/notes.js';
export { type PackInput, type PackReport, pack } from './jobs/pack.js';
export { openQuestions, type Question } from './jobs/questions.js';
export { type EnterSheet, enterSheet, type SheetReport } from './jobs/sheet/enter.js';
export { type MadeSheet, type SheetInput, sheet } from './jobs/sheet/make.js';
export { statementSigner } from './jobs/sign-statement.js';
export {
  type TemperaturesInput,
  type TemperaturesReport,
  temperatureSvg,
  temperatures,
} from './jobs/temps.js';
export { type TimelineReport, timeline, timelineCsv, timelineSvg } from './jobs/timeline.js';
export { type TrailInput, type TrailReport, trail, trailCsv, writeTrailPdf } from './jobs/trail.js';
export { type VerifyInput, verify, verifyFile } from './jobs/verify.js';
export { DossierError, type ErrorCode, type Problem, type Where } from './model/error.js';
export { hundredths, type Money, parseMoney } from './model/money.js';
export type {
  AmountSheet,
  Assessment,
  Band,
  ChannelSummary,
  ClaimClock,
  ClaimResult,
  Excursion,
  ExcursionTotals,
  Finding,
  GapResult,
  LineMargin,
  LoadPlan,
  ProductResult,
  QuantityRow,
  Span,
  TemperatureResult,
  TrailRow,
} from './model/results.js';
export type { ClaimEntry, RecordState } from './model/state.js';
export { celsius, fromCelsius, kelvin, parseTemperature, type Temperature } from './model/temperature.js';
export { type Instant, toInstant } from './model/time.js';
export type { UnitLog } from './model/unit-log.js';
export type {
  Check,
  CheckResult,
  Subject,
  Verdict,
  Verification,
  VerificationReport,
} from './model/verification.js';
export { consistencyProof, inclusionProof, verifyConsistency, verifyInclusion } from './record/proof.js';
export { leafHash, treeHash } from './record/tree.js';
export { cite, findProduce, type Produce, produceTable } from './reference/produce.js';
export { respirationOf, wattsPerKilogram } from './reference/respiration.js';
export { verifyDossier } from './verify/verify-dossier.js';
