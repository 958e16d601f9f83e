/** Margins of the logged air to published limits of the goods. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { TimeRange } from './window.js';

/** How far the air of one log stayed from published limits of one line. */
export interface LineMargin {
  line: string;
  log: EvidenceId;
  /** Key and name in the reference table. */
  produce: { key: string; name: string };
  window: TimeRange;
  freezing?: {
    /** The highest published point, which is the worse for the carrier, and all others. */
    celsius: number;
    points: { celsius: number; source: string; fromMemory: boolean }[];
    /** Per channel: lowest air minus the point, K; negative is below it. */
    channels: {
      channel: Channel;
      lowest: { value: number; at: number };
      margin: number;
      belowSeconds: number;
      kelvinHoursBelow: number;
    }[];
  };
  chilling?: {
    is: 'floor' | 'band';
    low: number;
    high: number;
    source: string;
    fromMemory: boolean;
    channel: Channel;
    /** Seconds below the lower and below the higher of the published limits; for a harmful band, seconds inside it. */
    belowLowSeconds: number;
    belowHighSeconds: number;
    kelvinHoursBelowHigh: number;
    insideSeconds: number;
  };
  range: {
    low: number;
    high: number;
    source: string;
    fromMemory: boolean;
    channel: Channel;
    aboveSeconds: number;
    belowSeconds: number;
    kelvinHoursAbove: number;
  };
  life?: {
    channel: Channel;
    source: string;
    fromMemory: boolean;
    /** Temperature whose rate counts as one, °C. */
    reference: number;
    knownSeconds: number;
    /** Shelf life consumed, as hours at the reference temperature. */
    equivalentSeconds: number;
    /** Known seconds colder than the published rates: counted at the lowest published rate. */
    extrapolatedSeconds: number;
  };
}
