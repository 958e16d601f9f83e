import { z } from 'zod';
import type { Delivery, Stop } from '../core/model/delivery.js';
import { DossierError, type Problem } from '../core/model/error.js';
import {
  type EvidenceId,
  type Reading,
  type ReadingBody,
  type ReadingKind,
  reading,
  signatory,
} from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { tradeQuantity } from '../core/model/quantity.js';
import type { Doubt } from '../core/model/results/doubts.js';
import { temperature } from '../core/model/temperature.js';
import { eventTime } from '../core/model/time.js';
import { timesFor } from '../core/words/times.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { doubtProblem, KnownKin, type Sure, timeGiven } from './doubts.js';
import { requireRoom } from './outcome-room.js';
import type { StatementSigner } from './signing/sign-statement.js';
import { kindAtStop } from './typed/exception-options.js';
import { inspectionTimes } from './typed/inspection-options.js';
import { outcomePlace } from './typed/outcome-options.js';
import {
  findCompartment,
  findLine,
  findPosition,
  findStop,
  typedPlace,
  typedTime,
} from './typed/place-options.js';
import { readingBody } from './typed/reading-options.js';
import { type TypedFields, typedFields } from './typed/typed-fields.js';

/** A reading as typed. */
export interface ReadingInput {
  folder: string;
  kind: ReadingKind;
  /** The main word of the command: a temperature, a seal number, an event … */
  word: string | undefined;
  /** Options as typed, by their names. */
  fields: Record<string, unknown>;
  enteredBy: string;
  now: OpenDelivery['now'];
  /** Signs a statement with the identity of the person who makes it: see `statementSigner`. */
  sign?: StatementSigner;
  /** It is right although it lies far from its kin: all of it, or in the respects named. */
  sure?: Sure;
}

/** The reading that was recorded. */
export interface RecordedReading {
  is: 'recorded';
  evidence: EvidenceId;
  /** The reading in words. */
  said: string;
  notices: string[];
}

/** A reading that lies far from its kin; nothing was recorded. */
export interface DoubtedReading {
  is: 'doubted';
  /** The reading in words. */
  said: string;
  doubts: Doubt[];
  /** The doubts in words, with the ways on. */
  problems: Problem[];
}

/**
 * Records one typed reading, unless it lies far from its kin and nobody has said that it is right. Throws DossierError
 * `bad-value` with the field and the choices when a word can't be understood.
 */
export async function recordReading(input: ReadingInput): Promise<RecordedReading | DoubtedReading> {
  return withDelivery({ folder: input.folder, by: input.enteredBy, now: input.now }, true, async (record) => {
    const state = record.state();
    const { delivery } = state;
    const judged = parseReading(input, delivery, input.now());
    requireRoom(state, judged, input.now());
    const kin = new KnownKin(state, input.now());
    const doubts = kin.doubts(judged, timeGiven(input.fields.at), input.sure);
    if (doubts.length > 0) return doubted(input, judged, doubts, delivery);
    const told: Reading = {
      ...judged,
      evidence: record.nextEvidenceId(),
      source: { is: 'typed' as const },
    };
    const body =
      told.kind === 'statement' && input.sign !== undefined
        ? { ...told, signature: await input.sign(record.head.delivery, told) }
        : told;
    await record.append([{ type: 'reading-recorded', by: input.enteredBy, body }]);
    return {
      is: 'recorded' as const,
      evidence: body.evidence,
      said: formatReading(input, judged) + ('signature' in body ? ', signed' : ''),
      notices: record.notices.map((notice) => notice.message),
    };
  });
}

/** The answer about a reading that is not recorded for its doubts. */
export function doubted(
  typed: Pick<ReadingInput, 'kind' | 'word'>,
  judged: ReadingBody,
  doubts: Doubt[],
  delivery: Delivery,
): DoubtedReading {
  return {
    is: 'doubted',
    said: formatReading(typed, judged),
    doubts,
    problems: doubts.map((doubt) => doubtProblem(doubt, judged, delivery)),
  };
}

/**
 * Parses typed words as a reading. Throws DossierError `bad-value` with the field and the choices when a word can't
 * be understood.
 */
export function parseReading(
  { kind: called, word, fields }: Pick<ReadingInput, 'kind' | 'word' | 'fields'>,
  delivery: Delivery,
  now: Date,
): ReadingBody {
  const given = typedFields.parse(fields);
  const { kind, typed } = kindAtStop(called, given, findStop(delivery, given.stop), delivery);
  const { stop, line } = placeOf(kind, word, delivery, typed);
  const body = {
    ...readingBody(kind, word, typed),
    ...(kind === 'inspection' ? inspectionTimes(typed, delivery, stop, now) : {}),
    kind,
    time: typedTime(typed.at ?? 'now', delivery, stop, now, '--at'),
    place: typedPlace(stop, findPosition(typed.position), findCompartment(delivery, typed.compartment)),
    line,
    by: typed.by,
    caption: typed.caption,
  };
  // Placeholders for the id and the source, which the caller adds, so that the schema checks the rest.
  const {
    evidence: _evidence,
    source: _source,
    ...rest
  } = checkReading(kind, {
    ...body,
    evidence: 'e1',
    source: { is: 'typed' },
  });
  return rest as ReadingBody;
}

/** The stop and line as typed; those of an outcome are derived from each other. */
function placeOf(
  kind: ReadingKind,
  word: string | undefined,
  delivery: Delivery,
  typed: TypedFields,
): { stop: Stop | undefined; line?: string | undefined } {
  const stop = findStop(delivery, typed.stop);
  const line = findLine(delivery, typed.line);
  if (kind !== 'outcome') return { stop, line };
  const isPart = word !== undefined && word.trim().toLowerCase() !== 'all';
  return outcomePlace(delivery, stop, line, isPart);
}

/**
 * Checks a whole reading by its schema.
 * @throws DossierError 'bad-value' with the field, by the name it is typed under, and the choices
 */
export function checkReading(kind: ReadingKind, body: Readonly<Record<string, unknown>>): Reading {
  const read = reading.safeParse(JSON.parse(JSON.stringify(body)));
  if (!read.success) throw notUnderstood(kind, body, read.error.issues[0]);
  return read.data;
}

/** `pulp, 34.2F, romaine, load-1, Tue Jul 14, 2026, 4:10 AM MST`. */
export function formatReading(
  { kind, word }: Pick<ReadingInput, 'kind' | 'word'>,
  judged: ReadingBody,
): string {
  const { time } = judged;
  const when = time.is === 'known' ? timesFor('en').known(time) : 'no time';
  return [
    judged.kind === 'outcome' ? judged.outcome.replaceAll('-', ' ') : kind,
    word,
    judged.line,
    judged.place?.position,
    judged.place?.compartment,
    judged.place?.stop,
    when,
    judged.by,
    ...more(judged),
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

/** Fields shown in places of their own, or as the main word. */
const SHOWN_ELSEWHERE = new Set([
  'kind',
  'time',
  'place',
  'line',
  'by',
  'temperature',
  'boxAir',
  'number',
  'device',
  'outcome',
  'quantity',
  'all',
  'lot',
]);
const MAIN = new Set(['event', 'with', 'text', 'pattern']);

/** The other fields of a reading, by name. */
function more(judged: ReadingBody): string[] {
  return Object.entries(judged).flatMap(([name, value]) => {
    if (SHOWN_ELSEWHERE.has(name) || MAIN.has(name) || (Array.isArray(value) && value.length === 0))
      return [];
    return [`${name.replaceAll(/([A-Z])/g, ' $1').toLowerCase()} ${shown(value)}`];
  });
}

/** A weight or an acceleration. */
const withUnit = z.strictObject({ value: z.number(), unit: z.string() });

function shown(value: unknown): string {
  const person = signatory.safeParse(value);
  if (person.success) return [person.data.party, person.data.name ?? ''].join(' ').trim();
  const degrees = temperature.safeParse(value);
  if (degrees.success) return `${degrees.data.value} ${degrees.data.unit}`;
  const measured = withUnit.safeParse(value);
  if (measured.success) return `${measured.data.value} ${measured.data.unit}`;
  const much = tradeQuantity.safeParse(value);
  if (much.success) return `${much.data.amount} ${much.data.unit}`;
  const time = eventTime.safeParse(value);
  if (time.success) return time.data.is === 'known' ? timesFor('en').known(time.data) : 'no time';
  if (typeof value === 'object' && value !== null && !Array.isArray(value))
    return Object.entries(value)
      .map(([name, part]) => (name === 'name' ? String(part) : `${name} ${shown(part)}`))
      .join(' ');
  if (typeof value === 'string') return `"${value}"`;
  return Array.isArray(value) ? value.map(shown).join(', ') : String(value);
}

/** Fields that are typed under another name. */
const TYPED_AS: Readonly<Record<string, string>> = {
  defects: 'defect',
  documents: 'on',
  noCommercialValue: 'worthless',
};

/** The schema's error, by the name of the typed option and with the choices. */
function notUnderstood(
  kind: ReadingKind,
  body: Readonly<Record<string, unknown>>,
  issue: z.core.$ZodIssue | undefined,
): DossierError {
  const path = issue?.path.map(String) ?? [];
  const field = path[0] ?? kind;
  const name = TYPED_AS[field] ?? field;
  const isOption = name in typedFields.shape;
  const option = `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const said = body[field];
  const choices = issue?.code === 'invalid_value' ? issue.values.map(String) : [];
  const defect = field === 'defects' && Array.isArray(said) ? said[Number(path[1])]?.name : undefined;
  const empty = said === undefined || said === '';
  const wrong =
    choices.length > 0
      ? `"${String(said)}" is not one of the choices`
      : `${defect === undefined ? '' : `${defect}: `}${issue?.message ?? ''}`;
  return new DossierError('bad-value', empty ? 'not told' : wrong, {
    where: { field: isOption ? option : name },
    fix: choices.length > 0 ? `Use one of: ${choices.join(', ')}.` : `See: dossier record ${kind} --help`,
    ...omitUndefined({ choices: choices.length > 0 ? choices : undefined }),
  });
}
