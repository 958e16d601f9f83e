import type { Compartment } from '../../core/model/compartment.js';
import type { Zone } from '../../core/model/time.js';
import type { LogOptions } from '../draft.js';

/** What is known of a log before its table is read: what a person said, and what the delivery gives. */
export interface LogContext extends LogOptions {
  /** Name for problems. */
  fileName: string;
  /** The zone of all stops, when they have only one: used where nothing else is said. */
  onlyZone?: Zone;
  /** Zones of the stops: what letters such as CST mean there. */
  zones?: readonly Zone[];
  /** Planned moments, milliseconds UTC; they decide between July 8 and 7 August where nothing else does. */
  near?: readonly number[];
  /** Compartments of the trailer, from the front wall to the doors. */
  compartments?: readonly Compartment[];
  /** Name of the sheet that the text stands for, where the file is a spreadsheet. */
  sheet?: string;
}
