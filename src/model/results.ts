/** What assess computes: plain data that the CLI prints, compose lays out, and `--json` shows. */
import type { Channel, EventName, EvidenceId, FlagName, Position, ReadingFrom } from './evidence.js';
import type { Element, Moment, Stage } from './rule-set.js';
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
}

export interface SetPointAgreement {
  words: SetPointWord[];
  differences: SetPointDifference[];
  verdict: 'agree' | 'differ' | 'not-comparable';
}

export type Outcome = 'met' | 'short' | 'missing' | 'contradicted' | 'not-yet-due' | 'does-not-apply';

/** Until when an open gap can still be closed. */
export type Closable =
  | { is: 'now' }
  | { is: 'until'; moment: Moment; at?: Instant }
  | { is: 'lost'; since: Moment; at?: Instant };

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
  /** Plain words: what is there, what is lacking. */
  lacking: string[];
  closable: Closable;
  substitutes: { what: string; evidence: EvidenceId[] }[];
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
  | { is: 'line'; line: string }
  | { is: 'stop'; stop: string };

export interface Assessment {
  /** The "now" that was handed in. */
  at: Instant;
  ruleSet: { name: string; version: string; sha256: string; title: string };
  temperatures: TemperatureResult[];
  pulps: PulpGroup[];
  setPoints: SetPointAgreement;
  timeline: Timeline;
  gaps: GapResult[];
  findings: Finding[];
}
