/** One channel of a log by itself, and against another. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { TimeRange } from './window.js';

/** Mean, extremes and spread of one channel, °C, over the time that it is known for. */
export interface ChannelSummary {
  channel: Channel;
  /** Time-weighted over known time; °C. Undefined when nothing is known. */
  mean?: number;
  min?: { value: number; at: number };
  max?: { value: number; at: number };
  /** Seconds with known values, and their share of the window, 0 to 1. */
  knownSeconds: number;
  coverage: number;
  inBandSeconds: number;
  aboveSeconds: number;
  belowSeconds: number;
  /** K·h outside the band. */
  degreeHoursAbove: number;
  degreeHoursBelow: number;
  samples: number;
  /** Mean kinetic temperature over known time, °C. It weighs warmth more than cold: it never clears a cold excursion. */
  meanKinetic?: number;
  /** Longest time in the window between two samples, or between the window's edge and a sample, seconds. */
  longestSilenceSeconds?: number;
}

/** A physically implausible sample: far from both neighbours, which agree. Excluded from every sum. */
export interface Jump {
  channel: Channel;
  at: number;
  /** Line in the file, counted from 1. */
  row: number;
  celsius: number;
  /** Distance to the nearer neighbour, K. */
  kelvin: number;
}

/** One sensor against another where both are known, first minus second. */
export interface ChannelDifference {
  first: { log: EvidenceId; channel: Channel };
  second: { log: EvidenceId; channel: Channel };
  /** The compartment that both are of, where the trailer has several. */
  compartment?: string;
  /** Time-weighted mean, and extremes with their times; K. */
  mean: number;
  min: { kelvin: number; at: number };
  max: { kelvin: number; at: number };
  /** Seconds in which both are known, and of these the seconds farther apart than `limitKelvin`. */
  knownSeconds: number;
  apartSeconds: number;
  limitKelvin: number;
}

/** Cycling of the air about the set point while the set point held. */
export interface Cycling {
  channel: Channel;
  /** Where the set point is taken from. */
  setPointFrom: 'log' | 'bill';
  knownSeconds: number;
  /** Time-weighted mean of air minus set point, K. */
  meanOffset: number;
  /** Seconds within the band's tolerance of the set point. */
  withinSeconds: number;
  toleranceKelvin: number;
  /** Full swings about the set point: from above it to below it and back. */
  cycles: number;
  /** Medians over the full swings: lowest to highest, K, and length. */
  swingKelvin?: number;
  periodSeconds?: number;
  lowest: { kelvin: number; at: number };
  highest: { kelvin: number; at: number };
}

/** How a unit runs: always, or from time to time. */
export type RunMode = 'continuous' | 'start-stop';

/** Run mode instructed and logged, and the usual swing of that mode. */
export interface RunModeResult {
  asked?: RunMode;
  /** The mode that the log states for the longest time. */
  logged?: RunMode;
  /** The modes that the log states, in order of time. */
  runs?: (TimeRange & { mode: RunMode })[];
  /** Seconds in the mode that is not the instructed one, by the log. */
  otherSeconds?: number;
  /** Common practice, no source: usual swing of the controlled air to either side of the set point, K. */
  usualSwingKelvin?: number;
}
