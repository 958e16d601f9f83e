import { deprecate } from 'node:util';
import { evidenceHistory } from './core/assess/trail/trail.js';
import { type MinorUnits, minorUnits } from './core/model/money.js';
import type { AmountWorksheet, ClaimDeadline, TimeRange } from './core/model/results.js';
import type { CheckedItem } from './core/model/verification.js';
import { type ChecklistReport, type EnterChecklistInput, enterChecklist } from './jobs/checklist/enter.js';
import { type ChecklistInput, type WrittenChecklist, writeChecklist } from './jobs/checklist/make.js';
import type { RecordedClaimNote } from './jobs/claim.js';
import type { ClockComparisonInput, RecordedClockComparison } from './jobs/compare-clock.js';
import type { TypedDescription } from './jobs/describe.js';
import {
  type LetterPackageInput,
  type LetterPackageReport,
  writeLetterPackage,
} from './jobs/letter-package.js';
import { recordNotes } from './jobs/record-notes.js';
import { type ReadingInput, type RecordedReading, recordReading } from './jobs/record-reading.js';

// Names of version 0.1. They answer for one version more; the first use of each prints the new name.

/** @deprecated `evidenceHistory` */
export const lifeOf = deprecate(evidenceHistory, 'lifeOf is now evidenceHistory');
/** @deprecated `recordReading` */
export const note = deprecate(recordReading, 'note is now recordReading');
/** @deprecated `recordNotes` */
export const notes = deprecate(recordNotes, 'notes is now recordNotes');
/** @deprecated `writeChecklist` */
export const sheet = deprecate(writeChecklist, 'sheet is now writeChecklist');
/** @deprecated `enterChecklist` */
export const enterSheet = deprecate(enterChecklist, 'enterSheet is now enterChecklist');
/** @deprecated `writeLetterPackage` */
export const pack = deprecate(writeLetterPackage, 'pack is now writeLetterPackage');

/** @deprecated `minorUnits` */
export const hundredths = deprecate(minorUnits, 'hundredths is now minorUnits');

/** @deprecated `AmountWorksheet` */
export type AmountSheet = AmountWorksheet;
/** @deprecated `MinorUnits` */
export type Hundredths = MinorUnits;
/** @deprecated `ClaimDeadline` */
export type ClaimClock = ClaimDeadline;
/** @deprecated `TimeRange` */
export type Span = TimeRange;
/** @deprecated `CheckedItem` */
export type Subject = CheckedItem;
/** @deprecated `EnterChecklistInput` */
export type EnterSheet = EnterChecklistInput;
/** @deprecated `ChecklistReport` */
export type SheetReport = ChecklistReport;
/** @deprecated `ChecklistInput` */
export type SheetInput = ChecklistInput;
/** @deprecated `WrittenChecklist` */
export type MadeSheet = WrittenChecklist;
/** @deprecated `RecordedClaimNote` */
export type NotedClaim = RecordedClaimNote;
/** @deprecated `ClockComparisonInput` */
export type ClockInput = ClockComparisonInput;
/** @deprecated `RecordedClockComparison` */
export type ComparedClock = RecordedClockComparison;
/** @deprecated `TypedDescription` */
export type Says = TypedDescription;
/** @deprecated `LetterPackageInput` */
export type PackInput = LetterPackageInput;
/** @deprecated `LetterPackageReport` */
export type PackReport = LetterPackageReport;
/** @deprecated `ReadingInput` */
export type NoteInput = ReadingInput;
/** @deprecated `RecordedReading` */
export type NotedReading = RecordedReading;
