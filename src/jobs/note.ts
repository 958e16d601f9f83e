import type { z } from 'zod';
import { parseTypedTime } from '../intake/typed.js';
import type { Delivery, Stop } from '../model/delivery.js';
import { DossierError } from '../model/error.js';
import { type EvidenceId, type Place, position, type ReadingKind, reading } from '../model/evidence.js';
import { type EventTime, milliseconds, toInstant } from '../model/time.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { bodyOf, typedFields } from './typed-words.js';

/** What is written down has happened; another clock may be a little ahead of this machine's. */
const AHEAD_MILLISECONDS = 10 * 60_000;

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
    const typed = typedFields.parse(input.fields);
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
    if (!read.success) throw notUnderstood(input, body, read.error.issues[0]);
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

/** What the schema found wrong, by the name that the person typed it under and with the choices there are. */
function notUnderstood(
  { kind }: NoteInput,
  body: Readonly<Record<string, unknown>>,
  issue: z.core.$ZodIssue | undefined,
): DossierError {
  const name = String(issue?.path[0] ?? kind);
  const isOption = name in typedFields.shape;
  const option = `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const said = body[name];
  const choices = issue?.code === 'invalid_value' ? issue.values.map(String) : [];
  const empty = said === undefined || said === '';
  const wrong = choices.length > 0 ? `"${String(said)}" is not one of the choices` : (issue?.message ?? '');
  return new DossierError('bad-value', empty ? 'not told' : wrong, {
    where: { field: isOption ? option : name },
    fix: choices.length > 0 ? `Use one of: ${choices.join(', ')}.` : `See: dossier record ${kind} --help`,
  });
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
  if (read.time.is === 'known' && milliseconds(read.time.instant) > now().getTime() + AHEAD_MILLISECONDS)
    throw new DossierError('bad-value', `"${typed}" has not come yet by this machine’s clock`, {
      where: { field: '--at' },
      fix: 'Write when it happened, or set the machine’s clock right.',
    });
  return read.time;
}
