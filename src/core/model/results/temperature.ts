/** One unit log against the bill: excursions, data gaps, set points, legs. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { ClockShift, ClockStep } from '../unit-log.js';
import type { ChannelDifference, ChannelSummary, Cycling, Jump, RunModeResult } from './channels.js';
import type { RecorderIdentity } from './recorders.js';
import type { TimeRange, TransitWindow, WindowBound } from './window.js';

/** The temperatures allowed by the bill in transit, °C: instruction ± tolerance. */
export interface Band {
  low: number;
  high: number;
  setPoint: number;
  tolerance: number;
  /** Lines with this instruction. */
  lines: string[];
  toleranceFrom: 'bill' | 'rule-set';
}

/** What an excursion counts as. */
export type ExcursionClass =
  /** The unit did what units do: defrost, pull-down, start-stop cycling. */
  | 'normal-operation'
  /** Doors were open. */
  | 'handling'
  /** The unit was off, showed an alarm, or cooled less than before. */
  | 'equipment'
  /** The set point or the run mode was moved. */
  | 'instruction'
  | 'not-explained';

/** Why the air was out of its band, and whether the log itself says so or the record implies it. */
export type ExcursionCause =
  | {
      is:
        | 'defrost'
        | 'pull-down'
        | 'cycling'
        | 'door-open'
        | 'unit-off'
        | 'alarm'
        | 'capacity-loss'
        | 'set-point-change'
        | 'mode-change';
      how: 'logged' | 'inferred';
      /** Recorded events it rests on, where the log's own columns are not enough. */
      evidence?: EvidenceId[];
      /** One row of the log alone says so: how long it lasted is not known. */
      oneRow?: true;
    }
  | { is: 'unexplained' };

/** Return minus supply air during an excursion at one set point, against the same while the air was in range. */
export interface ExcursionHeat {
  /** Mean over the excursion, K. */
  kelvin: number;
  /** Of air above the range: heat came in, or the unit cooled less; otherwise as usual within the spread. */
  shows?: 'heat-came-in' | 'capacity-fell' | 'as-usual';
}

/** A time out of range. Its ends are where the line between samples crosses the limit. */
export interface Excursion {
  id: string;
  channel: Channel;
  side: 'above' | 'below';
  from: number;
  to: number;
  seconds: number;
  /** Peak (above) or lowest (below) value, °C, and its time. */
  peak: number;
  peakAt: number;
  /** Integral of the distance from the limit, K·h. */
  degreeHours: number;
  cause: ExcursionCause;
  class: ExcursionClass;
  /** Absent where return and supply air are not both known, or the set point moved meanwhile. */
  heat?: ExcursionHeat;
  /** Ends that are not crossings but the edge of the window or of known values. */
  cutBy: ('window-start' | 'window-end' | 'gap-before' | 'gap-after')[];
}

/** Sums over excursions, listed or not. */
export interface ExcursionSums {
  count: number;
  seconds: number;
  longestSeconds: number;
  /** Peak above and lowest below the range, °C. */
  highest?: number;
  lowest?: number;
  /** K·h. */
  degreeHours: number;
  firstAt: number;
}

/** The excursions of one class together. */
export interface ExcursionClassSums extends ExcursionSums {
  class: ExcursionClass;
  logged: number;
  inferred: number;
  /** Each cause with the number of its excursions, in the order of first appearance. */
  causes: { is: ExcursionCause['is']; count: number }[];
}

/** All excursions of a channel together. */
export interface ExcursionTotals {
  count: number;
  /** The classes that occur, in their own order. */
  classes: ExcursionClassSums[];
  /** Share of the known time that was in range, leaving out excursions in normal operation. 0 to 1. */
  inRangeOutsideNormal?: number;
}

/** Defrost, an open door or a unit that was off, as logged. */
export interface LoggedState extends TimeRange {
  is: 'defrost' | 'door-open' | 'unit-off';
  /** Rows of the log that say so, before the window too. */
  rows: number;
  /** It was so already when the window began, or when the log did. */
  beganBefore?: true;
}

/** A data gap longer than the gap limit. */
export interface LogGap extends TimeRange {
  seconds: number;
}

/** The leg between two neighbouring stops, with the lines aboard. */
export interface LegResult {
  /** Number of the leg, counted from 1. */
  leg: number;
  from: { stop: string; bound: WindowBound };
  to: { stop: string; bound: WindowBound };
  lines: string[];
  band?: Band;
  channels: ChannelSummary[];
  judged?: Channel;
  /** In the order of time; of more than 5,000 the heaviest by degree-hours. `excursionTotals` sums all. */
  excursions: Excursion[];
  excursionTotals: ExcursionTotals;
  gaps: LogGap[];
  setPoints: (TimeRange & { celsius: number })[];
}

/** What one unit log shows over the transit window: coverage, summaries and excursions of its channels; °C, K and seconds. */
export interface TemperatureResult {
  log: EvidenceId;
  /** The compartment whose air it is, where the trailer has several. */
  compartment?: string;
  /** Doors closed to doors opened. */
  transitWindow: TransitWindow;
  /** The transit window under its former name, for one version more; `custody` of the assessment is custody. */
  custody: TransitWindow;
  /** Longest step over which samples are joined, seconds, and the median step it comes from. */
  gapLimitSeconds: number;
  medianStepSeconds: number;
  /** The range that suits every line; absent when no line has an instruction or they do not overlap. */
  band?: Band;
  /** The ranges of the lines, where they differ. */
  bands?: Band[];
  channels: ChannelSummary[];
  /** The unit's own log, or a recorder in the load. */
  instrument: RecorderIdentity['instrument'];
  /** Where its clock was set, not corrected; and the parts that a person put right. */
  clockSteps?: readonly ClockStep[];
  clockShifts?: readonly ClockShift[];
  /** The channel compared with the range (return air, or what there is). */
  judged?: Channel;
  /** In the order of time; of more than 5,000 the heaviest by degree-hours. `excursionTotals` sums all. */
  excursions: Excursion[];
  excursionTotals: ExcursionTotals;
  gaps: LogGap[];
  /** Defrost, open door, unit off as logged. */
  logged: LoggedState[];
  setPoints: (TimeRange & { celsius: number })[];
  /** Values excluded as implausible, at most 100; `jumpCount` counts all in the window. */
  jumps?: Jump[];
  jumpCount?: number;
  /** Return air minus supply air, where the log has both. */
  returnMinusSupply?: ChannelDifference;
  /** Return minus supply air while the return air was in range at one set point and nothing else went on. */
  usualReturnMinusSupply?: { median: number; spread: number; rows: number };
  cycling?: Cycling[];
  run?: RunModeResult;
  /** The legs between the stops, where there are several. */
  legs?: LegResult[];
}
