import type { Delivery, Line } from '../model/delivery.js';
import type { EventName, EvidenceId, ReadingBody } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import { plannedTime } from '../model/planned-time.js';
import type { Doubt, TypedDegrees } from '../model/results/doubts.js';
import { celsius, kelvin, type Temperature, toCelsius } from '../model/temperature.js';
import { knownMilliseconds } from '../model/time.js';

/** Differences of 40 °F: produce is cooled before loading, and none is loaded or cooled so far off in silence (common practice, no source). */
const FAR = kelvin({ difference: 40, unit: '°F' });
/** Differences of 16 °F from which a wrong unit is thought of: cooled produce that reads so is frozen or not cooled. */
const WRONG_UNIT = kelvin({ difference: 16, unit: '°F' });
/** Room of 6 °F about the instruction for the number in its other unit: pulps of a load vary so much (common practice, no source). */
const FITS = kelvin({ difference: 6, unit: '°F' });
const DAY = 86_400_000;
/** Days about the known and planned times: a breakdown costs a day, a dock that is closed over a weekend two more. */
const DAYS_ABOUT_CARRIAGE = 3;
/** Days before the first known or planned time: loads are booked and spoken of weeks ahead; after it, for years. */
const DAYS_AHEAD_OF_CARRIAGE = 60;
/** Events that happen more than once at a stop. */
const REPEATED: ReadonlySet<EventName> = new Set(['stopped', 'resumed']);

/** A reading that counts already, or that stands before in the same file. */
export type KnownReading = ReadingBody & { evidence?: EvidenceId };

/** What a candidate is compared with: a table may have thousands of rows, so that each is looked up, not sought. */
export class Kin {
  readonly delivery: Delivery;
  /** The present, milliseconds UTC. */
  readonly now: number;
  /** From the first to the last time that is planned of the delivery, or known of its carriage. */
  span: { from: number; to: number } | undefined;
  /** Pulps of each line and stop in °C, the lowest first. */
  readonly #pulps = new Map<string, number[]>();
  readonly #events = new Map<string, KnownReading>();

  constructor(delivery: Delivery, readings: Iterable<KnownReading>, now: number) {
    this.delivery = delivery;
    this.now = now;
    for (const stop of delivery.stops) this.#widen(plannedTime(stop));
    for (const reading of readings) this.add(reading);
  }

  add(reading: KnownReading): void {
    if (!isSpoken(reading)) this.#widen(knownMilliseconds(reading.time));
    if (reading.kind === 'event') {
      const key = eventKey(reading);
      if (!this.#events.has(key)) this.#events.set(key, reading);
    }
    if (reading.kind !== 'pulp') return;
    const value = celsius(reading.temperature);
    const pulps = this.pulps(reading);
    const above = pulps.findLastIndex((one) => one <= value) + 1;
    this.#pulps.set(placeKey(reading), pulps.toSpliced(above, 0, value));
  }

  pulps(of: ReadingBody): readonly number[] {
    return this.#pulps.get(placeKey(of)) ?? [];
  }

  event(of: Extract<ReadingBody, { kind: 'event' }>): KnownReading | undefined {
    return this.#events.get(eventKey(of));
  }

  /** An event of a whole stop, or of one of its lines. */
  eventAt(event: EventName, stop: string, line?: string): KnownReading | undefined {
    return this.#events.get(`${event} ${line ?? ''} ${stop}`) ?? this.#events.get(`${event}  ${stop}`);
  }

  #widen(at: number | undefined): void {
    if (at === undefined) return;
    const { from, to } = this.span ?? { from: at, to: at };
    this.span = { from: Math.min(from, at), to: Math.max(to, at) };
  }
}

const placeKey = ({ line, place }: ReadingBody) => `${line ?? ''} ${place?.stop ?? ''}`;
const eventKey = (reading: Extract<ReadingBody, { kind: 'event' }>) =>
  `${reading.event} ${placeKey(reading)}`;

/** How the time of a candidate came about: `now` was typed as such, and is meant. */
export type TimeGiven = 'typed' | 'now' | 'left-out';

/** What speaks against a typed reading being as meant, in no order of weight; empty for nearly all. */
export function doubtsAbout(reading: ReadingBody, timeGiven: TimeGiven, kin: Kin): Doubt[] {
  const lines = linesOf(reading, kin.delivery);
  const ofInstruction = temperaturesOf(reading).flatMap((one) => instructionDoubts(one, lines));
  return [
    ...(ofInstruction.length > 0 ? ofInstruction : neighbourDoubts(reading, kin)),
    ...timeDoubts(reading, timeGiven, kin),
    ...eventDoubts(reading, kin),
    ...inspectionDoubts(reading, kin),
  ];
}

interface TypedTemperature {
  field: TypedDegrees;
  typed: Temperature;
}

function temperaturesOf(reading: ReadingBody): TypedTemperature[] {
  switch (reading.kind) {
    case 'pulp':
    case 'set-point':
      return [{ field: 'temperature', typed: reading.temperature }];
    case 'round': {
      const { boxAir, setPoint } = reading;
      return [
        ...(boxAir === undefined ? [] : [{ field: 'box air', typed: boxAir } as const]),
        ...(setPoint === undefined ? [] : [{ field: '--set-point', typed: setPoint } as const]),
      ];
    }
    default:
      return [];
  }
}

/** The lines that a temperature may be of: its own, else all. */
function linesOf(reading: ReadingBody, { lines }: Delivery): Line[] {
  return reading.line === undefined ? lines : lines.filter(({ id }) => id === reading.line);
}

interface Range {
  low: number;
  high: number;
}

const beyond = (value: number, { low, high }: Range) => Math.max(low - value, value - high, 0);

function instructionDoubts({ field, typed }: TypedTemperature, lines: readonly Line[]): Doubt[] {
  const value = celsius(typed);
  const ranges = lines.flatMap(({ instruction }) =>
    instruction === undefined ? [] : [rangeOf(instruction)],
  );
  const nearest = ranges.toSorted((a, b) => beyond(value, a) - beyond(value, b)).at(0);
  if (nearest === undefined) return [];
  const beyondKelvin = beyond(value, nearest);
  const otherCelsius = toCelsius(typed.value, typed.unit === '°F' ? '°C' : '°F');
  if (beyondKelvin >= WRONG_UNIT && ranges.some((range) => beyond(otherCelsius, range) <= FITS))
    return [{ is: 'other-unit', field, celsius: value, ...nearest, otherCelsius }];
  return beyondKelvin >= FAR
    ? [{ is: 'far-from-instruction', field, celsius: value, ...nearest, beyondKelvin }]
    : [];
}

function rangeOf({ setPoint, tolerance }: NonNullable<Line['instruction']>): Range {
  const width = tolerance === undefined ? 0 : kelvin(tolerance);
  return { low: celsius(setPoint) - width, high: celsius(setPoint) + width };
}

/** A pulp near its instruction is not doubted for its neighbours: then they are the odd ones. */
function neighbourDoubts(reading: ReadingBody, kin: Kin): Doubt[] {
  if (reading.kind !== 'pulp') return [];
  const value = celsius(reading.temperature);
  const [line] = linesOf(reading, kin.delivery);
  if (line?.instruction !== undefined && beyond(value, rangeOf(line.instruction)) < WRONG_UNIT) return [];
  const others = kin.pulps(reading);
  const middle = others[Math.floor(others.length / 2)];
  if (middle === undefined || Math.abs(value - middle) < FAR) return [];
  return [
    {
      is: 'far-from-neighbours',
      celsius: value,
      middle,
      neighbours: others.length,
      beyondKelvin: Math.abs(value - middle),
    },
  ];
}

/**
 * What speaks against a time that is said of a file: a picture of the goods is of their carriage; papers are written
 * before it and long after.
 */
export const timeDoubtsOfFile = (time: ReadingBody['time'], isPaper: boolean, kin: Kin): Doubt[] =>
  outsideDoubts(time, isPaper, kin);

function timeDoubts(reading: ReadingBody, given: TimeGiven, kin: Kin): Doubt[] {
  const { span, now } = kin;
  if (span === undefined || given === 'now') return [];
  if (given === 'left-out') {
    const days = Math.floor((now - span.to) / DAY);
    return days < 1 ? [] : [{ is: 'no-time-given', days, last: span.to }];
  }
  return outsideDoubts(reading.time, isSpoken(reading), kin);
}

function outsideDoubts(time: ReadingBody['time'], spoken: boolean, { span }: Kin): Doubt[] {
  const at = knownMilliseconds(time);
  if (at === undefined || span === undefined) return [];
  const ahead = Math.floor((span.from - at) / DAY);
  if (ahead >= (spoken ? DAYS_AHEAD_OF_CARRIAGE : DAYS_ABOUT_CARRIAGE))
    return [{ is: 'outside-delivery', side: 'before', days: ahead, bound: span.from }];
  const after = Math.floor((at - span.to) / DAY);
  return !spoken && after >= DAYS_ABOUT_CARRIAGE
    ? [{ is: 'outside-delivery', side: 'after', days: after, bound: span.to }]
    : [];
}

/** What people say and arrange before a carriage and long after it. */
function isSpoken(reading: ReadingBody): boolean {
  switch (reading.kind) {
    case 'contact':
    case 'statement':
      return true;
    case 'set-point':
      return reading.shownBy !== 'display';
    case 'event':
      return reading.event === 'inspection-requested' || reading.event === 'inspected';
    default:
      return false;
  }
}

function eventDoubts(reading: ReadingBody, kin: Kin): Doubt[] {
  const stop = reading.place?.stop;
  if (reading.kind !== 'event' || stop === undefined || REPEATED.has(reading.event)) return [];
  const before = kin.event(reading);
  return before === undefined
    ? []
    : [
        {
          is: 'recorded-before',
          event: reading.event,
          stop,
          ...omitUndefined({ evidence: before.evidence }),
        },
      ];
}

/** Goods are looked at between arrival and disposal; at a place of loading, whenever they are there. */
function inspectionDoubts(reading: ReadingBody, kin: Kin): Doubt[] {
  const stop = reading.place?.stop;
  const at = knownMilliseconds(reading.time);
  if (reading.kind !== 'inspection' || stop === undefined || at === undefined) return [];
  if (kin.delivery.stops.find(({ id }) => id === stop)?.does !== 'unload') return [];
  const doubt = (
    is: 'inspected-before-arrival' | 'inspected-after-disposal',
    name: EventName,
    isWrong: (event: number) => boolean,
  ): Doubt[] => {
    const known = kin.eventAt(name, stop, reading.line);
    const event = known && knownMilliseconds(known.time);
    if (event === undefined || !isWrong(event)) return [];
    return [{ is, event, ...omitUndefined({ evidence: known?.evidence }) }];
  };
  return [
    ...doubt('inspected-before-arrival', 'arrived', (event) => at < event),
    ...doubt('inspected-after-disposal', 'disposed', (event) => at > event),
  ];
}
