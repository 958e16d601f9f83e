/** How far the logged air stayed from what harms the goods. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { TimeRange } from './window.js';

/** How far the air of one log stayed from what harms one line by published values. */
export interface LineMargin {
  line: string;
  log: EvidenceId;
  /** Key and name in the reference table. */
  produce: { key: string; name: string };
  window: TimeRange;
  freezing?: {
    /** The highest of the published points, which is the worse for the carrier, and every other. */
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
    /** Seconds below the lower and below the higher of the published floors; of a band, seconds inside it. */
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
    /** Hours at the reference temperature that would have cost as much life. */
    equivalentSeconds: number;
    /** Known seconds colder than the published rates reach: counted at the lowest published rate. */
    extrapolatedSeconds: number;
  };
}
