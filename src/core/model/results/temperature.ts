/** What one unit log shows against the bill: excursions, gaps, set points, leg by leg. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { ChannelDifference, ChannelSummary, Cycling, Jump, RunModeResult } from './channels.js';
import type { Custody, CustodyBound, TimeRange } from './window.js';

/** The temperatures the bill allows on the way, °C: instruction ± tolerance. */
export interface Band {
  low: number;
  high: number;
  setPoint: number;
  tolerance: number;
  /** Lines whose instruction this is. */
  lines: string[];
  toleranceFrom: 'bill' | 'rule-set';
}

export type ExcursionCause =
  | {
      is: 'defrost' | 'door-open' | 'unit-off' | 'set-point-change' | 'pull-down';
      how: 'logged' | 'inferred';
      /** Recorded events that it rests on, where the log's own columns are not enough. */
      evidence?: EvidenceId[];
    }
  | { is: 'unexplained' };

/** A time outside the band. Ends are where the straight line between samples crosses the limit. */
export interface Excursion {
  id: string;
  channel: Channel;
  side: 'above' | 'below';
  from: number;
  to: number;
  seconds: number;
  /** Farthest value, °C, and when. */
  peak: number;
  peakAt: number;
  /** Integral of the distance from the limit, K·h. */
  degreeHours: number;
  cause: ExcursionCause;
  /** Ends that are not crossings but the edge of the window or of known values. */
  cutBy: ('window-start' | 'window-end' | 'gap-before' | 'gap-after')[];
}

/** Excursions added up, listed or not. */
export interface ExcursionSums {
  count: number;
  seconds: number;
  longestSeconds: number;
  /** Farthest values above and below the band, °C. */
  highest?: number;
  lowest?: number;
  /** K·h. */
  degreeHours: number;
  firstAt: number;
}

export interface ExcursionTotals {
  count: number;
  unexplained?: ExcursionSums;
  explained?: ExcursionSums & {
    logged: number;
    inferred: number;
    /** Each cause once, in the order in which they first come. */
    causes: ExcursionCause['is'][];
  };
}

/** A time without known values longer than the gap limit. */
export interface LogGap extends TimeRange {
  seconds: number;
}

/** The way between two neighbouring stops, with what was aboard. */
export interface LegResult {
  /** Number of the leg, counted from 1. */
  leg: number;
  from: { stop: string; bound: CustodyBound };
  to: { stop: string; bound: CustodyBound };
  lines: string[];
  band?: Band;
  channels: ChannelSummary[];
  judged?: Channel;
  /** In the order of time; of more than 5,000 the heaviest by degree-hours. `excursionTotals` adds up all. */
  excursions: Excursion[];
  excursionTotals: ExcursionTotals;
  gaps: LogGap[];
  setPoints: (TimeRange & { celsius: number })[];
}

export interface TemperatureResult {
  log: EvidenceId;
  custody: Custody;
  /** Longest step over which samples are joined, seconds, and the median step it comes from. */
  gapLimitSeconds: number;
  medianStepSeconds: number;
  /** What suits every line at once; absent when no line has an instruction or they do not overlap. */
  band?: Band;
  /** The bands of the lines, where they differ. */
  bands?: Band[];
  channels: ChannelSummary[];
  /** Of the channel that the band is held against (return air, or what there is). */
  judged?: Channel;
  /** In the order of time; of more than 5,000 the heaviest by degree-hours. `excursionTotals` adds up all. */
  excursions: Excursion[];
  excursionTotals: ExcursionTotals;
  gaps: LogGap[];
  /** Defrost, open door, unit off as logged. */
  logged: (TimeRange & { is: 'defrost' | 'door-open' | 'unit-off' })[];
  setPoints: (TimeRange & { celsius: number })[];
  /** Samples left out as impossible, at most 100; `jumpCount` counts all in the window. */
  jumps?: Jump[];
  jumpCount?: number;
  /** Return air minus supply air, where the log has both. */
  returnMinusSupply?: ChannelDifference;
  cycling?: Cycling[];
  run?: RunModeResult;
  /** The ways between the stops, where there is more than one. */
  legs?: LegResult[];
}
