/** What assess computes: plain data that the CLI prints, compose lays out, and `--json` shows. */
import type {
  AirBlock,
  Channel,
  EventName,
  EvidenceId,
  FlagName,
  Position,
  ReadingFrom,
  RowPattern,
} from './evidence.js';
import type { Element, Moment, RuleSetOrigin, Stage, Substitute } from './rule-set.js';
import type { Instant, Zone } from './time.js';

/** Half-open span of time, milliseconds since 1970 UTC. */
export interface Span {
  from: number;
  to: number;
}

/** Where a window's end comes from, so that a reader can check it. */
export interface Bound {
  at: number;
  /** The event it rests on, or what stood in for it. */
  basis: 'doors-closed' | 'doors-opened' | 'departed' | 'arrived' | 'log-start' | 'log-end' | 'asked';
  evidence?: EvidenceId;
}

/** Time from doors closed at the first loading to doors opened at the last unloading. */
export interface Custody {
  from: Bound;
  to: Bound;
}

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

/** A time without known values longer than the gap limit. */
export interface LogGap extends Span {
  seconds: number;
}

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

/** A sample that no air can have given: far from both its neighbours, which agree. Left out of every sum. */
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
  /** Time-weighted mean, and extremes with their times; K. */
  mean: number;
  min: { kelvin: number; at: number };
  max: { kelvin: number; at: number };
  /** Seconds in which both are known, and of these the seconds farther apart than `limitKelvin`. */
  knownSeconds: number;
  apartSeconds: number;
  limitKelvin: number;
}

/** How the air moved around the set point while the set point held. */
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
  /** Full swings through the set point: from above it to below it and back. */
  cycles: number;
  /** Medians over the full swings: lowest to highest, K, and length. */
  swingKelvin?: number;
  periodSeconds?: number;
  lowest: { kelvin: number; at: number };
  highest: { kelvin: number; at: number };
}

/** How the unit was to run and did, and the swing that each way usually shows. */
export interface RunMode {
  asked?: 'continuous' | 'start-stop';
  logged?: 'continuous' | 'start-stop';
  /** Common practice, no source: how far the controlling air may swing to either side of the set point, K. */
  usualSwingKelvin?: number;
}

/** The way between two neighbouring stops, with what was aboard. */
export interface LegResult {
  /** Number of the leg, counted from 1. */
  leg: number;
  from: { stop: string; bound: Bound };
  to: { stop: string; bound: Bound };
  lines: string[];
  band?: Band;
  channels: ChannelSummary[];
  judged?: Channel;
  excursions: Excursion[];
  gaps: LogGap[];
  setPoints: (Span & { celsius: number })[];
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
  excursions: Excursion[];
  gaps: LogGap[];
  /** Defrost, open door, unit off as logged. */
  logged: (Span & { is: 'defrost' | 'door-open' | 'unit-off' })[];
  setPoints: (Span & { celsius: number })[];
  /** Samples left out as impossible, at most 100; `jumpCount` counts all in the window. */
  jumps?: Jump[];
  jumpCount?: number;
  /** Return air minus supply air, where the log has both. */
  returnMinusSupply?: ChannelDifference;
  cycling?: Cycling[];
  run?: RunMode;
  /** The ways between the stops, where there is more than one. */
  legs?: LegResult[];
}

/** How far the air of one log stayed from what harms one line by published values. */
export interface LineMargin {
  line: string;
  log: EvidenceId;
  /** Key and name in the reference table. */
  produce: { key: string; name: string };
  window: Span;
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

/** Temperatures that the product can have had at one time, °C. */
export interface Envelope {
  low: number;
  high: number;
}

export type ProductAssumption = 'half-cooling-time' | 'loading-pulps' | 'respiration' | 'air-channel';

/** Whether the arrival pulps of one line go with its loading pulps and the logged air. Plausibility, never proof. */
export interface ProductResult {
  line: string;
  log: EvidenceId;
  verdict: 'inside' | 'above' | 'below' | 'not-decidable';
  /** Why nothing can be said. */
  why?: 'no-loading-pulps' | 'no-arrival-pulps' | 'air-not-known' | 'iced' | 'pulps-on-both-sides';
  window?: Span;
  loading?: { min: number; max: number; evidence: EvidenceId[] };
  arrival?: { min: number; max: number; evidence: EvidenceId[] };
  /** At the window's end. */
  envelope?: Envelope;
  /** Room on either side for the thermometers, K. */
  toleranceKelvin: number;
  /** How far the farthest arrival pulp lies outside envelope and tolerance, K; 0 inside. */
  beyondKelvin?: number;
  assumptions: {
    load: 'pallets' | 'loose-cartons' | 'not-stated';
    halfCoolingSeconds: { low: number; high: number; from: string };
    channels: Channel[];
    respiration?: { source: string; fromMemory: boolean };
    specificHeat: { joulesPerKilogramKelvin: number; own: boolean; source: string };
    /** Share of the window in which the air is known; over the rest it is drawn straight from sample to sample. */
    coverage: number;
    /** Time from the window's end to the last arrival pulp, seconds: air of this time is not in the computation. */
    afterSeconds?: number;
  };
  /** The assumption that moves the edge next to the arrival pulps most, and by how much, K. */
  matters?: { is: ProductAssumption; kelvin: number };
}

/** Pulps of one line at both ends, and of two hands at one stop. */
export interface PulpComparison {
  line: string;
  is: 'delivery-against-loading' | 'receiver-against-driver';
  /** Where the second group was taken; for the first kind the first is the loading stop. */
  stop: string;
  counts: [first: number, second: number];
  /** Second minus first, K. */
  mean: number;
  min: number;
  max: number;
  evidence: EvidenceId[];
}

export interface PulpReading {
  evidence: EvidenceId;
  celsius: number;
  at?: number;
  position?: Position;
  from: ReadingFrom;
  instrument?: string;
  verdict: 'in-band' | 'above' | 'below' | 'no-instruction';
  /** Distance from the nearer limit, K; 0 in band. */
  beyond: number;
}

/** Pulps of one line at one stop. */
export interface PulpGroup {
  line: string;
  stop: string;
  does: 'load' | 'unload';
  /** °C */
  band?: { low: number; high: number };
  readings: PulpReading[];
  count: number;
  min: number;
  max: number;
  mean: number;
  inBand: number;
  /** Highest minus lowest, K. */
  spread?: number;
  byPosition?: { position: Position | 'not-stated'; count: number; min: number; max: number; mean: number }[];
  /** Each thermometer with the last look at it in ice water before these readings, if any. */
  instruments?: {
    instrument?: string;
    count: number;
    check?: {
      evidence: EvidenceId;
      at?: number;
      /** The check says which thermometer; else it is only the last one in the record. */
      names: boolean;
    };
  }[];
}

/** One source's word on the set point. */
export interface SetPointWord {
  source: 'bill' | 'shipper' | 'dispatcher' | 'display' | 'log';
  celsius: number;
  at?: number;
  evidence?: EvidenceId;
  lines?: string[];
  run?: string;
}

export interface SetPointDifference {
  between: [SetPointWord, SetPointWord];
  /** Size of the difference, K. */
  kelvin: number;
  /** 38 for 48; 36 for 63. */
  slip?: 'one-digit' | 'swapped-digits' | 'unit-mixed-up';
  /** When both sides had been said, if that is known; milliseconds. */
  since?: number;
  /** How long the unit's own log shows it, seconds. */
  seconds?: number;
  /** Who was told between then and the end of the leg or of custody; absent when `since` is. */
  told?: { evidence: EvidenceId; with: string; at: number }[];
}

/** Published range of a line's goods, held against its instruction. */
export interface PublishedRange {
  line: string;
  low: number;
  high: number;
  source: string;
  fromMemory: boolean;
}

/** Set points on the way from one stop to the next. */
export interface SetPointLeg {
  from: string;
  to: string;
  /** Departure and arrival; absent when one of them is not known. */
  span?: Span;
  /** Lines on board. */
  lines: string[];
  published: PublishedRange[];
  words: SetPointWord[];
  differences: SetPointDifference[];
}

export interface SetPointAgreement {
  words: SetPointWord[];
  differences: SetPointDifference[];
  verdict: 'agree' | 'differ' | 'not-comparable';
  legs?: SetPointLeg[];
}

/** One pallet on the floor; metres from the left wall and from the bulkhead at the nose, as seen from the doors. */
export interface PlacedPallet {
  row: number;
  side: 'left' | 'right' | 'middle';
  /** Long side across the trailer. */
  turned: boolean;
  line?: string;
  x: number;
  y: number;
  width: number;
  length: number;
}

export interface LoadRow {
  row: number;
  pattern: RowPattern;
  line?: string;
  evidence: EvidenceId;
  /** Width of the pallets side by side, m. */
  across: number;
  /** Room left and right together, m; below zero when the row is wider than the trailer. */
  sideRoom?: number;
  blocks: AirBlock[];
}

/** What was loaded how, from rows as noted; lengths in metres. */
export interface LoadPlan {
  rows: LoadRow[];
  pallets: PlacedPallet[];
  /** Pallets that the lines of the bill count, where every line says it. */
  palletsOnBill?: number;
  insideWidth?: number;
  insideLength?: number;
  /** `outside` when only the trailer's nominal length is known. */
  lengthFrom?: 'inside' | 'outside';
  /** From the bulkhead to the face of the last pallet; absent when rows before it were not noted. */
  floorUsed?: number;
  /** From there to the doors. */
  rearGap?: number;
  /** Lines whose footprint is assumed to be 40 × 48 in. */
  assumedFootprint: string[];
  /** Ceiling clearance by line. */
  ceilings: { line: string; stack: number; clearance?: number }[];
  /** How many pallets of the first line's footprint the floor holds, by pattern. */
  fits: { pattern: 'straight' | 'pinwheel' | 'turned'; pallets: number }[];
  /** Rows that were not noted, though later ones were. */
  unknownRows: number[];
}

export type Outcome = 'met' | 'short' | 'missing' | 'contradicted' | 'not-yet-due' | 'does-not-apply';

/**
 * Until when an open gap can still be closed. `seconds` is added to the moment; `at` is given where the moment itself
 * is recorded; `stop` where it is one stop's own.
 */
export type Closable =
  | { is: 'now' }
  | { is: 'until'; moment: Moment; seconds?: number; stop?: string; at?: Instant }
  | { is: 'lost'; since: Moment; seconds?: number; stop?: string; at?: Instant };

/** Evidence that nearly counted. */
export interface NearMiss {
  evidence: EvidenceId;
  why:
    | 'wrong-stop'
    | 'wrong-line'
    | 'no-stop'
    | 'no-line'
    | 'no-time'
    | 'too-early'
    | 'too-late'
    | 'only-proposed'
    | 'withheld'
    | 'bad-value'
    | 'wrong-source'
    | FlagName;
}

/**
 * What a rule lacks, or what a reader should know of what counts. The names and facts stand in
 * src/assess/gaps/lacks.ts, the words in templates/words under `lacking`.
 */
export interface Lack {
  is: string;
  facts: Finding['facts'];
  /** Of `one-of`: the ways in which it could be met, each with what it lacks. */
  ways?: Lack[][];
  line?: string;
  stop?: string;
}

/** One line's or one stop's part of a rule that is held against each. */
export interface GapPart {
  line?: string;
  stop?: string;
  outcome: Outcome;
  lacking: Lack[];
  closable: Closable;
}

export interface GapResult {
  rule: string;
  stage: Stage;
  title: string;
  outcome: Outcome;
  /** Evidence that counts. */
  counted: EvidenceId[];
  nearly: NearMiss[];
  /** Evidence that speaks against the rule, when contradicted. */
  against: EvidenceId[];
  lacking: Lack[];
  /** What a reader should know of what counts. */
  notes: Lack[];
  /** Of the part that can be closed longest, where the rule has parts. */
  closable: Closable;
  /** What is in the record and says something of the same, best first. */
  substitutes: { what: Substitute; evidence: EvidenceId[] }[];
  /** What would stand in and is not in the record yet. */
  wanted: Substitute[];
  /** Where the rule is held against each line or stop, and there are several. */
  parts?: GapPart[];
  proves: Element[];
  why: string;
  how: string;
  basis: string;
}

export interface TimelineItem {
  at: number;
  zone: Zone;
  /** Known within this many seconds. */
  uncertaintySeconds: number;
  evidence?: EvidenceId;
  stop?: string;
  is:
    | 'event'
    | 'photo'
    | 'pulp'
    | 'set-point'
    | 'round'
    | 'seal'
    | 'contact'
    | 'bracing'
    | 'pattern'
    | 'statement'
    | 'document';
  event?: EventName;
  label: string;
}

export interface TimelineInterval extends Span {
  id: 'on-the-dock' | 'doors-open' | 'in-transit' | 'arrival-to-doors' | 'arrival-to-refusal';
  stop?: string;
  seconds: number;
  evidence: EvidenceId[];
}

export interface Timeline {
  items: TimelineItem[];
  intervals: TimelineInterval[];
  /** Evidence whose time is not known, listed apart, never placed. */
  untimed: EvidenceId[];
}

/** One thing the record shows. `facts` fill its sentence in templates/words. */
export interface Finding {
  id: string;
  weighs: 'helps' | 'hurts' | 'open';
  element: Element;
  /** Heavier first. */
  weight: number;
  evidence: EvidenceId[];
  /** How it was computed: rule id or computation. */
  by: string;
  facts: Record<string, string | number | boolean | FindingQuantity>;
}
/** Quantities keep their kind, so that words can show them in the reader's units and zone. */
export type FindingQuantity =
  | { is: 'temperature'; celsius: number }
  | { is: 'difference'; kelvin: number }
  | { is: 'duration'; seconds: number }
  | { is: 'time'; at: number; zone: Zone }
  | { is: 'degree-hours'; kelvinHours: number }
  | { is: 'share'; of: number }
  | { is: 'length'; metres: number }
  | { is: 'line'; line: string }
  | { is: 'stop'; stop: string };

export interface Assessment {
  /** The "now" that was handed in. */
  at: Instant;
  ruleSet: {
    name: string;
    version: string;
    /** Of all files that took part: see docs/formats.md. */
    sha256: string;
    title: string;
    /** The files, and what an extension changed or switched off. */
    origin?: RuleSetOrigin;
  };
  temperatures: TemperatureResult[];
  pulps: PulpGroup[];
  setPoints: SetPointAgreement;
  /** Absent when no row was noted. */
  loading?: LoadPlan;
  timeline: Timeline;
  gaps: GapResult[];
  findings: Finding[];
  product?: ProductResult[];
  margins?: LineMargin[];
  pulpComparisons?: PulpComparison[];
  /** Sensors of the same kind in different logs, and probes against return air. */
  sensorDifferences?: ChannelDifference[];
  /** Longest time in custody without a look at the unit. */
  longestWithoutRound?: Span & { seconds: number };
}
