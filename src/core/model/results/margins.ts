/** Margins of the logged air to published limits of the goods. */
import type { Channel, EvidenceId } from '../evidence.js';
import type { PublishedLimit } from './published.js';
import type { TimeRange } from './window.js';

/** How far the air of one log stayed from published limits of one line, source by source. */
export interface LineMargin {
  line: string;
  log: EvidenceId;
  /** The compartment whose air it is, where the trailer has several. */
  compartment?: string;
  /** Key and name in the reference library. */
  produce: { key: string; name: string };
  window: TimeRange;
  freezing?: {
    /** The highest published point, which is the worse for the carrier, and the lowest. */
    celsius: number;
    lowest: number;
    points: PublishedLimit[];
    /** Per channel: lowest air minus the highest point, K; negative is below it. */
    channels: {
      channel: Channel;
      lowest: { value: number; at: number };
      margin: number;
      belowSeconds: number;
      kelvinHoursBelow: number;
      /** Seconds below every published point. */
      belowAllSeconds: number;
    }[];
  };
  chilling?: {
    is: 'floor' | 'band';
    /** The lowest and the highest of the published floors, or the ends of what is harmful by some source. */
    low: number;
    high: number;
    limits: PublishedLimit[];
    channel: Channel;
    /** Seconds below the lowest and below the highest of the published floors; for harmful bands, seconds inside any. */
    belowLowSeconds: number;
    belowHighSeconds: number;
    kelvinHoursBelowHigh: number;
    insideSeconds: number;
    /** Seconds in it that are in no source's recommended range. */
    againstAllSeconds: number;
  };
  /** Absent when no source recommends a temperature. */
  range?: {
    channel: Channel;
    bySource: (PublishedLimit & { aboveSeconds: number; belowSeconds: number; kelvinHoursAbove: number })[];
  };
  life?: {
    channel: Channel;
    source: string;
    /** The source itself was not read, but a document that retells it. */
    secondary: boolean;
    /** Temperature whose rate counts as one, °C. */
    reference: number;
    knownSeconds: number;
    /** Shelf life consumed, as hours at the reference temperature. */
    equivalentSeconds: number;
    /** Known seconds colder than the published rates: counted at the lowest published rate. */
    extrapolatedSeconds: number;
  };
}
