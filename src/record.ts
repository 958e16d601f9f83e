/** Keeping the record of one delivery: what enters it, and what it says. */
export type { RowDifference } from './core/assess/logs/compare.js';
export type { JoinedLogs, LogOverlap, RowDisagreement } from './core/assess/logs/join.js';
export type { MergeConflict } from './core/ledger/merge/conflict.js';
export { DossierError } from './core/model/error.js';
export type { RuleSetFile } from './core/model/rule-set-file.js';
export type { Clock } from './core/ports/clock.js';
export type { KeptOriginal, OriginalOrder, OriginalsStore } from './core/ports/originals-store.js';
export type { Signer, ToSign } from './core/ports/signer.js';
export type { TimeStampClient, TimeStampOrder } from './core/ports/time-stamps.js';
export type { LongWork, Progress } from './core/ports/work.js';
export type { NoteContext } from './intake/notes/note-context.js';
export type { ParsedRuleSetFile } from './intake/rule-set-file.js';
export { type AnswerInput, type AnswerReport, answer } from './jobs/answer.js';
export { type AssessDeliveryInput, type AssessedDelivery, assessDelivery } from './jobs/assess.js';
export { type ChecklistReport, type EnterChecklistInput, enterChecklist } from './jobs/checklist/enter.js';
export type { ChecklistAnswers } from './jobs/checklist/file.js';
export { type ChecklistInput, type WrittenChecklist, writeChecklist } from './jobs/checklist/make.js';
export { type ClaimInput, type RecordedClaimNote, recordClaim, type TypedClaimKind } from './jobs/claim.js';
export {
  type AmountRow,
  type AmountsInput,
  type AmountsReport,
  recordAmounts,
} from './jobs/claim-amounts.js';
export { type ClockStepInput, type RecordedClockStep, recordClockStep } from './jobs/clock-step.js';
export type { TypedLogOptions } from './jobs/collect/log-options.js';
export {
  type CollectedItem,
  type CollectInput,
  type CollectReport,
  collect,
  type GivenFile,
} from './jobs/collect.js';
export {
  type ClockComparisonInput,
  type RecordedClockComparison,
  recordClock,
} from './jobs/compare-clock.js';
export { type CorrectInput, type CorrectReport, correct, type UnchangedReading } from './jobs/correct.js';
export type { OpenDelivery } from './jobs/delivery.js';
export { type DescribeInput, type DescribeReport, describe, type TypedDescription } from './jobs/describe.js';
export type { Sure } from './jobs/doubts.js';
export { type FingerprintInput, type FingerprintReport, fingerprint } from './jobs/fingerprint.js';
export { deliveryGaps, type GapsReport } from './jobs/gaps.js';
export { inspections } from './jobs/inspections.js';
export { load } from './jobs/load.js';
export { type MergeInput, type MergeReport, merge, type TakenOver } from './jobs/merge.js';
export {
  type MinimalFacts,
  type MinimalStop,
  type NewDelivery,
  type NewDeliveryInput,
  newDelivery,
} from './jobs/new-delivery.js';
export { openQuestions, type Question } from './jobs/questions.js';
export {
  type NotesInput,
  type NotesReport,
  type RecordedNoteLine,
  recordNotes,
} from './jobs/record-notes.js';
export {
  type DoubtedReading,
  type ReadingInput,
  type RecordedReading,
  recordReading,
} from './jobs/record-reading.js';
export { type LoadedRuleSet, loadRuleSet } from './jobs/rule-set.js';
export { type StatementSigner, statementSigner } from './jobs/signing/sign-statement.js';
export type { ByIdentity, BySigner, SignedBy } from './jobs/signing/signed-by.js';
export {
  type AdmitInput,
  admit,
  type StrikeInput,
  type StrikeReport,
  type StruckEntry,
  strike,
} from './jobs/strike.js';
export {
  type TemperaturesInput,
  type TemperaturesReport,
  temperatureSvg,
  temperatures,
} from './jobs/temperatures.js';
export { type TimelineReport, timeline, timelineCsv, timelineSvg } from './jobs/timeline.js';
export { type TrailInput, type TrailReport, trail, trailCsv, writeTrailPdf } from './jobs/trail.js';
export { readAt } from './jobs/typed/read-at.js';
export type { GivenBytes } from './platform/node/container/given-item.js';
export { type HttpTimeStamps, httpTimeStamps } from './signing/time-stamp.js';
export type * from './types.js';
