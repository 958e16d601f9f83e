/** What was done to the load on the way: doors by stop, shocks, pallets. */
import type { EvidenceId, ShockEvent } from '../evidence.js';
import type { TimeRange } from './window.js';

/** Doors as somebody noted them open; ends that nobody noted are absent. */
export interface NotedOpening {
  from?: number;
  to?: number;
  evidence: EvidenceId[];
}

/** Doors that a log shows open. */
export interface LoggedOpening extends TimeRange {
  log: EvidenceId;
  /** Where the log has doors of several compartments. */
  compartment?: string;
}

/** Openings of the doors at one stop, or between stops. */
export interface StopDoors {
  /** Absent between stops. */
  stop?: string;
  noted: NotedOpening[];
  logged: LoggedOpening[];
  loggedSeconds: number;
}

/** A shock or hard braking, and where it falls. */
export interface ShockResult {
  evidence: EvidenceId;
  what: ShockEvent;
  at?: number;
  /** Peak in units of standard gravity. */
  gravities?: number;
  /** At or above the threshold that is stated for it; absent where none is. */
  over?: boolean;
  /** While the goods were aboard; `unknown` where no time or no transit window says. */
  when: 'aboard' | 'before' | 'after' | 'unknown';
}
