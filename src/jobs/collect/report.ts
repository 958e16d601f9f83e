import type { Problem } from '../../core/model/error.js';
import type { EvidenceId, Flag } from '../../core/model/evidence.js';
import type { EventTime } from '../../core/model/time.js';
import { timesFor } from '../../core/words/times.js';
import type { Question } from '../questions.js';

/** The outcome for one file. */
export interface CollectedItem {
  file: string;
  outcome: 'taken-in' | 'already-held' | 'refused';
  evidence?: EvidenceId;
  /** The e-mail or archive that it came in. */
  within?: EvidenceId;
  takenFor: string;
  time?: EventTime;
  /** The time in words, with zone and basis. */
  when: string;
  flags: Flag[];
  readings: number;
}

/** What became of everything that was to be taken in. */
export interface CollectReport {
  items: CollectedItem[];
  counts: { taken: number; held: number; readings: number; refused: number };
  notices: string[];
  problems: Problem[];
  /** Open questions about the added evidence, with the commands that answer them. */
  questions: Question[];
}

const times = timesFor('en');

export function formatEventTime(time: EventTime): string {
  switch (time.is) {
    case 'known':
      return `${times.known(time)} (${time.basis})`;
    case 'local':
      return `${times.localTime(time.local)} (zone unknown)`;
    case 'none':
      return '';
  }
}

/** What a file was taken for, and what became of its rows. */
export function formatTaken(
  takenFor: string,
  repeated: number,
  doubted: number,
  replaces: EvidenceId | undefined,
): string {
  return [
    takenFor,
    ...(repeated === 0 ? [] : [`, ${repeated} of them recorded before`]),
    ...(doubted === 0 ? [] : [`, ${doubted} to be looked at again, not recorded`]),
    ...(replaces === undefined ? [] : [`; read anew, in place of ${replaces}, which no longer counts`]),
  ].join('');
}
