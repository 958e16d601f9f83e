import { z } from 'zod';
import { parseTypedTime } from '../intake/typed.js';
import type { Delivery, Stop } from '../model/delivery.js';
import { DossierError } from '../model/error.js';
import { type EvidenceId, type Place, position, type ReadingKind, reading } from '../model/evidence.js';
import { parseRowSpan } from '../model/row-span.js';
import { parseTemperature } from '../model/temperature.js';
import { type EventTime, toInstant } from '../model/time.js';
import { type OpenDelivery, withDelivery } from './delivery.js';

export interface NoteInput {
  folder: string;
  kind: ReadingKind;
  /** The main word of the command: a temperature, a seal number, an event … */
  word: string | undefined;
  /** Options as typed, by their names. */
  fields: Record<string, unknown>;
  enteredBy: string;
  now: OpenDelivery['now'];
}

export interface NotedReading {
  evidence: EvidenceId;
  /** What was written down, in words. */
  said: string;
  notices: string[];
}

/**
 * Writes one typed reading into the record.
 * Throws DossierError `bad-value` with the field and the choices when a word can't be understood.
 */
export async function note(input: NoteInput): Promise<NotedReading> {
  return withDelivery({ folder: input.folder, by: input.enteredBy, now: input.now }, true, async (record) => {
    const { delivery } = record.state();
    const typed = fields.parse(input.fields);
    const stop = findStop(delivery, typed.stop);
    const body = {
      ...bodyOf(input.kind, input.word, typed),
      kind: input.kind,
      source: { is: 'typed' },
      time: timeOf(typed.at, delivery, stop, input.now),
      place: placeOf(stop, typed.position),
      line: findLine(delivery, typed.line),
      by: typed.by,
      caption: typed.caption,
    };
    const evidence = record.nextEvidenceId();
    const read = reading.safeParse(JSON.parse(JSON.stringify({ ...body, evidence })));
    if (!read.success) {
      const [issue] = read.error.issues;
      throw new DossierError('bad-value', issue?.message ?? 'not understood', {
        where: { field: issue?.path.join('.') ?? input.kind },
        fix: `See: dossier record ${input.kind} --help`,
      });
    }
    await record.append([{ type: 'reading-recorded', by: input.enteredBy, body: read.data }]);
    const when =
      read.data.time.is === 'known' ? (read.data.time.stated ?? read.data.time.instant) : 'no time';
    return {
      evidence,
      said: [input.kind, input.word, typed.line, typed.stop, when]
        .filter((part) => part !== undefined)
        .join(', '),
      notices: record.notices.map((notice) => notice.message),
    };
  });
}

const fields = z.object({
  at: z.string().optional(),
  stop: z.string().optional(),
  line: z.string().optional(),
  position: z.string().optional(),
  by: z.string().optional(),
  caption: z.string().optional(),
  from: z.string().optional(),
  instrument: z.string().optional(),
  shownBy: z.string().optional(),
  run: z.string().optional(),
  setPoint: z.string().optional(),
  fuel: z.string().optional(),
  alarm: z.array(z.string()).optional(),
  state: z.string().optional(),
  note: z.string().optional(),
  how: z.string().optional(),
  about: z.string().optional(),
  rows: z.string().optional(),
  blocks: z.array(z.string()).optional(),
});
type Fields = z.infer<typeof fields>;

/** The fields of each kind, before the reading's own schema judges them. */
function bodyOf(kind: ReadingKind, word: string | undefined, typed: Fields): Record<string, unknown> {
  switch (kind) {
    case 'pulp':
      return { temperature: degrees(word, 'temperature'), from: typed.from, instrument: typed.instrument };
    case 'set-point':
      return {
        temperature: degrees(word, 'temperature'),
        shownBy: typed.shownBy ?? 'display',
        run: typed.run,
      };
    case 'round':
      return {
        boxAir: word === undefined ? undefined : degrees(word, 'box air'),
        setPoint: typed.setPoint === undefined ? undefined : degrees(typed.setPoint, '--set-point'),
        fuel: typed.fuel === undefined ? undefined : fraction(typed.fuel),
        alarms: typed.alarm,
      };
    case 'seal':
      return { number: word, state: typed.state };
    case 'bracing':
      return { device: word, note: typed.note };
    case 'pattern':
      return { pattern: word, rows: rowSpan(typed.rows), blocks: typed.blocks, note: typed.note };
    case 'event':
      return { event: word, note: typed.note };
    case 'contact':
      return { with: word, how: typed.how ?? 'call', about: typed.about };
    case 'statement':
      return { text: word };
  }
}

function degrees(text: string | undefined, field: string) {
  const read = text === undefined ? undefined : parseTemperature(text);
  if (read === undefined)
    throw new DossierError('bad-value', `"${text ?? ''}" is not a temperature that air or produce can have`, {
      where: { field },
      fix: 'Write the number with its unit, such as 34.2F or 1.2C (−80 to 85 °C, −112 to 185 °F).',
    });
  return read;
}

function rowSpan(text: string | undefined) {
  const read = text === undefined ? undefined : parseRowSpan(text);
  if (read === undefined)
    throw new DossierError('bad-value', `"${text ?? ''}" are not rows`, {
      where: { field: '--rows' },
      fix: 'Count from the nose and write them like 1-13 or 4.',
    });
  return read;
}

/** `3/4`, `75%` or `0.75` of a tank. */
function fraction(text: string): number {
  const parts = /^(\d+)\s*\/\s*(\d+)$/.exec(text);
  const percent = /^(\d+(?:\.\d+)?)\s*%$/.exec(text);
  const value =
    parts !== null
      ? Number(parts[1]) / Number(parts[2])
      : percent !== null
        ? Number(percent[1]) / 100
        : /^[01](?:\.\d+)?$/.test(text)
          ? Number(text)
          : Number.NaN;
  if (!(value >= 0 && value <= 1))
    throw new DossierError('bad-value', `"${text}" is not a part of a tank`, {
      where: { field: '--fuel' },
      fix: 'Write it like 3/4, 60% or 0.6.',
    });
  return value;
}

function findStop(delivery: Delivery, named: string | undefined): Stop | undefined {
  if (named === undefined) return undefined;
  const found = delivery.stops.find((stop) => stop.id === named);
  if (found === undefined) throw unknown('stop', named, delivery.stops);
  return found;
}

function findLine(delivery: Delivery, named: string | undefined): string | undefined {
  if (named !== undefined && !delivery.lines.some((line) => line.id === named))
    throw unknown('line', named, delivery.lines);
  return named;
}

function unknown(what: string, named: string, known: readonly { id: string }[]): DossierError {
  return new DossierError('bad-value', `there is no ${what} "${named}" in delivery.yaml`, {
    where: { field: `--${what}` },
    fix: `Use one of: ${known.map(({ id }) => id).join(', ')}.`,
  });
}

function placeOf(stop: Stop | undefined, at: string | undefined): Place | undefined {
  if (stop === undefined && at === undefined) return undefined;
  const read = position.optional().safeParse(at);
  if (!read.success)
    throw new DossierError('bad-value', `"${at}" is not a position`, {
      where: { field: '--position' },
      fix: `Use one of: ${position.options.join(', ')}.`,
    });
  return {
    ...(stop === undefined ? {} : { stop: stop.id }),
    ...(read.data === undefined ? {} : { position: read.data }),
  };
}

/** The time typed, local to the stop; without a stop the places must agree on their zone. */
function timeOf(
  text: string | undefined,
  delivery: Delivery,
  stop: Stop | undefined,
  now: () => Date,
): EventTime {
  const typed = text ?? 'now';
  const zones = [...new Set(delivery.stops.map((s) => s.zone))];
  const [first, second] = stop === undefined ? zones : [stop.zone];
  const namesItsZone = typed === 'now' || /(?:Z|[+-]\d{2}:?\d{2})$/i.test(typed);
  if (first === undefined || (second !== undefined && !namesItsZone))
    throw new DossierError('bad-value', `"${typed}" can be local time of ${zones.join(' or ')}`, {
      where: { field: '--at' },
      fix: `Say at which stop: --stop ${delivery.stops.map(({ id }) => id).join(' or --stop ')}.`,
    });
  const read = parseTypedTime(typed, { now: toInstant(now().getTime()), zone: first, field: '--at' });
  if (read.is === 'problem') throw new DossierError(read.problem.code, read.problem.message, read.problem);
  return read.time;
}
