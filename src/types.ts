/** What entries, state and results are made of. */
export type { Acceleration, AccelerationUnit } from './core/model/acceleration.js';
export type {
  ClaimId,
  ClaimNote,
  ClaimNoteKind,
  ClaimNoteOf,
  Day,
  ExceptedCause,
  Governing,
  LetterKind,
  ValueMeasure,
} from './core/model/claim.js';
export type { ClaimDeadlines } from './core/model/claim-deadlines.js';
export type { Delivery, Language, Paper } from './core/model/delivery.js';
export type { CorrectedBody, Entry, EntryOf, EntryOrigin, EntryType } from './core/model/entry.js';
export type { ErrorCode, Problem, Where } from './core/model/error.js';
export type {
  AirBlock,
  AxleGroup,
  Channel,
  DefectNature,
  EventName,
  Evidence,
  EvidenceId,
  EvidenceKind,
  EvidenceOf,
  Flag,
  FlagName,
  Height,
  OutcomeHow,
  OutcomeReason,
  OutcomeTold,
  OutcomeVerdict,
  Position,
  ReadingFrom,
  ReadingKind,
  Region,
  RowPattern,
  Sha256,
  ShockEvent,
  StateColumn,
  StatementSignature,
} from './core/model/evidence.js';
export type { Footprint, Length, LengthUnit } from './core/model/length.js';
export type { Volume } from './core/model/manifest.js';
export type { Milestone, MilestoneOffset, WithinWindow } from './core/model/milestone.js';
export type { Currency, MinorUnits, Money } from './core/model/money.js';
export type { TradeQuantity, TradeUnit } from './core/model/quantity.js';
export type * from './core/model/results.js';
export type { Need, SimpleNeed } from './core/model/rule-need.js';
export type {
  Element,
  RuleConflict,
  RuleSet,
  RuleSetOrigin,
  RuleWeight,
  Stage,
  Substitute,
} from './core/model/rule-set.js';
export type {
  ClaimEntry,
  ClaimEntryOf,
  Correction,
  EvidenceItem,
  RecordState,
  Strike,
} from './core/model/state.js';
export type { CalendarDay, ClockPoint, EventTime, Instant, LocalTime, Zone } from './core/model/time.js';
export type { ClockShift, ClockStep, RowProblem, StatedNumbers, UnitLog } from './core/model/unit-log.js';
