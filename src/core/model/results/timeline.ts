/** What happened, in order. */
import type { EventName, EvidenceId, OutcomeVerdict, ReadingKind } from '../evidence.js';
import type { Zone } from '../time.js';
import type { TimeRange } from './window.js';

/** Something at one time, milliseconds UTC. */
export interface TimelineItem {
  at: number;
  zone: Zone;
  /** Known within this many seconds. */
  uncertaintySeconds: number;
  evidence?: EvidenceId;
  stop?: string;
  is: ReadingKind | 'photo' | 'document';
  event?: EventName;
  outcome?: OutcomeVerdict;
  label: string;
}

export interface TimelineInterval extends TimeRange {
  id: 'on-the-dock' | 'doors-open' | 'in-transit' | 'arrival-to-doors' | 'arrival-to-refusal';
  stop?: string;
  seconds: number;
  evidence: EvidenceId[];
}

/** Everything with a known time, in order. */
export interface Timeline {
  items: TimelineItem[];
  intervals: TimelineInterval[];
  /** Evidence without a known time, listed apart, never placed. */
  untimed: EvidenceId[];
}
