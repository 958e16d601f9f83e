import { isDeepStrictEqual } from 'node:util';
import { countedEntries } from '../core/ledger/counted-entries.js';
import type { Delivery } from '../core/model/delivery.js';
import type { EntryOf } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import {
  axleGroup,
  type EvidenceId,
  type EvidenceOf,
  type Reading,
  type ReadingBody,
} from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Temperature } from '../core/model/temperature.js';
import type { DeliveryRecord } from '../record/store.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { KnownKin, type Sure } from './doubts.js';
import { requireRoom } from './outcome-room.js';
import { checkReading, type DoubtedReading, doubted, formatReading } from './record-reading.js';
import { entryNamed } from './typed/entry-named.js';
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

/** What an earlier entry should have said, and why it said otherwise. */
export interface CorrectInput {
  folder: string;
  /** The reading by its evidence id (e12), or its entry by number (#41). */
  target: string;
  /** The right main word: a temperature, a seal number, an event …; left out, the first one stays. */
  word?: string | undefined;
  /** Other options to put right, by their names; what is left out stays. */
  fields: Record<string, unknown>;
  why: string;
  enteredBy: string;
  now: OpenDelivery['now'];
  /** It is right although it lies far from its kin: all of it, or in the respects named. */
  sure?: Sure;
}

/** The reading before and after its correction, in words. */
export interface CorrectReport {
  is: 'corrected';
  evidence: EvidenceId;
  /** Number of the entry that was wrong, and of the one that corrects it. */
  entry: number;
  correction: number;
  before: string;
  after: string;
}

/** A reading that says what it should say already; nothing was written. */
export interface UnchangedReading {
  is: 'unchanged';
  evidence: EvidenceId;
  entry: number;
  said: string;
}

/**
 * Enters the right value of a reading that was typed wrong, unless that lies far from its kin and nobody has said that it
 * is right. The first value stays in the record and no longer counts.
 * @throws DossierError 'bad-value' when there is no such reading, when it was struck, or for words not understood
 */
export async function correct(
  input: CorrectInput,
): Promise<CorrectReport | DoubtedReading | UnchangedReading> {
  const open = { folder: input.folder, by: input.enteredBy, now: input.now };
  return withDelivery(open, true, async (record) => correctOn(record, input));
}

/** What `correct` does, on a record that is open for writing. */
export async function correctOn(
  record: DeliveryRecord,
  input: Omit<CorrectInput, 'folder'>,
): Promise<CorrectReport | DoubtedReading | UnchangedReading> {
  const named = entryNamed(input.target, record.entries);
  // A correction is put right by another one of the same entry.
  const seq = named.type === 'entry-corrected' ? named.body.entry : named.seq;
  const counted = countedEntries(record.entries).entries.find(({ entry }) => entry.seq === seq);
  if (counted === undefined)
    throw new DossierError('bad-value', `${input.target} was struck, so there is nothing to correct`, {
      fix: 'Enter the right value anew: dossier record --help',
    });
  const { entry } = counted;
  if (entry.type !== 'reading-recorded') throw notAReading(input.target, entry.type);
  const state = record.state();
  const body = corrected(entry, input, state.delivery);
  if (isDeepStrictEqual(body, entry.body))
    return { is: 'unchanged', evidence: body.evidence, entry: seq, said: shown(body) };
  requireRoom(state, body, input.now(), { replaced: body.evidence });
  const kin = new KnownKin(state, input.now(), body.evidence);
  // What was doubtful of the first value, and stays, was settled when that was entered.
  const settled = new Set(kin.doubts(entry.body, 'typed').map((doubt) => JSON.stringify(doubt)));
  const doubts = kin.doubts(body, 'typed', input.sure).filter((doubt) => !settled.has(JSON.stringify(doubt)));
  if (doubts.length > 0)
    return doubted({ kind: body.kind, word: mainWord(body) }, body, doubts, state.delivery);
  const [added] = await record.append([
    {
      type: 'entry-corrected',
      by: input.enteredBy,
      body: { entry: seq, becomes: { type: 'reading-recorded', body }, why: input.why },
    },
  ]);
  return {
    is: 'corrected' as const,
    evidence: body.evidence,
    entry: seq,
    correction: added?.seq ?? record.entries.length - 1,
    before: shown(entry.body),
    after: shown(body),
  };
}

const shown = ({ evidence: _evidence, source: _source, ...reading }: Reading) =>
  formatReading({ kind: reading.kind, word: mainWord(reading) }, reading);

function corrected(
  { body: was, at }: EntryOf<'reading-recorded'>,
  { word, fields }: Pick<CorrectInput, 'word' | 'fields'>,
  delivery: Delivery,
): Reading {
  const typed = typedFields.parse(fields);
  const stop = findStop(delivery, typed.stop);
  const place = typedPlace(stop, findPosition(typed.position), findCompartment(delivery, typed.compartment));
  const stopOfTime = stop ?? delivery.stops.find(({ id }) => id === was.place?.stop);
  const body = {
    ...(was.kind === 'outcome' ? withoutQuantity(was) : was),
    ...omitUndefined(readingBody(was.kind, word ?? mainWord(was), withDefaultsOf(was, typed))),
    ...(was.kind === 'inspection'
      ? omitUndefined(inspectionTimes(typed, delivery, stopOfTime, new Date(at)))
      : {}),
    ...omitUndefined({
      // A time of day is on the day of the entry that is put right.
      time:
        typed.at === undefined ? undefined : typedTime(typed.at, delivery, stopOfTime, new Date(at), '--at'),
      place: place === undefined ? undefined : { ...was.place, ...place },
      line: findLine(delivery, typed.line),
      by: typed.by,
      caption: typed.caption,
    }),
  };
  const read = checkReading(was.kind, body);
  if (read.kind === 'outcome')
    outcomePlace(delivery, findStop(delivery, read.place?.stop), read.line, read.quantity !== undefined);
  return read;
}

/** The main word that would be typed for a reading. */
function mainWord(reading: ReadingBody): string | undefined {
  switch (reading.kind) {
    case 'pulp':
    case 'set-point':
      return degrees(reading.temperature);
    case 'round':
      return reading.boxAir === undefined ? undefined : degrees(reading.boxAir);
    case 'seal':
      return reading.number;
    case 'bracing':
      return reading.device;
    case 'pattern':
      return reading.pattern;
    case 'scale':
      return reading.gross === undefined ? undefined : `${reading.gross.value}${reading.gross.unit}`;
    case 'shock':
      return reading.peak === undefined ? undefined : `${reading.peak.value}${reading.peak.unit}`;
    case 'pallets':
      return reading.state;
    case 'event':
      return reading.event;
    case 'outcome':
      if (reading.quantity === undefined) return reading.all === true ? 'all' : undefined;
      return `${reading.quantity.amount} ${reading.quantity.unit}`;
    case 'inspection':
      return reading.lot;
    case 'instrument':
      return reading.name;
    case 'particular':
      return reading.of;
    case 'exception':
      return reading.quantity === undefined
        ? undefined
        : `${reading.quantity.amount} ${reading.quantity.unit}`;
    case 'contact':
      return reading.with;
    case 'statement':
      return reading.text;
  }
}
const degrees = ({ value, unit }: Temperature) => `${value}${unit}`;

/** How much is said anew by the main word. */
function withoutQuantity({ quantity: _quantity, all: _all, ...rest }: EvidenceOf<'outcome'>) {
  return rest;
}

/** What the options would be by default is what the reading said. */
function withDefaultsOf(was: Reading, typed: TypedFields): TypedFields {
  switch (was.kind) {
    case 'set-point':
      return { ...typed, shownBy: typed.shownBy ?? was.shownBy };
    case 'outcome':
      return { ...typed, outcome: typed.outcome ?? was.outcome };
    case 'exception':
      return { ...typed, words: typed.words ?? was.words };
    case 'scale':
      return { ...groupsOf(was), ...omitUndefined(typed) };
    case 'shock':
      return { ...typed, what: typed.what ?? was.what };
    case 'instrument':
      return { ...typed, type: typed.type ?? was.type };
    case 'contact':
      return { ...typed, how: typed.how ?? was.how };
    case 'pattern':
      return { ...typed, rows: typed.rows ?? `${was.rows.from}-${was.rows.to}` };
    case 'round':
      return was.boxAir === undefined && was.fuel !== undefined
        ? { ...typed, fuel: typed.fuel ?? String(was.fuel) }
        : { ...typed, alarm: typed.alarm ?? was.alarms };
    default:
      return typed;
  }
}

/** The weights of a scale as they would be typed. */
function groupsOf(was: EvidenceOf<'scale'>): Partial<TypedFields> {
  return Object.fromEntries(
    axleGroup.options.flatMap((group) => {
      const weighed = was[group];
      return weighed === undefined ? [] : [[group, `${weighed.value}${weighed.unit}`]];
    }),
  );
}

function notAReading(target: string, type: string): DossierError {
  const fix =
    type === 'claim-noted'
      ? 'Say it anew with: dossier record claim … --correct ENTRY'
      : type === 'clock-compared'
        ? 'Compare the clock again; the later comparison takes the place of the earlier.'
        : 'A file stays as it is: say what it shows with dossier describe, or strike it with dossier strike.';
  return new DossierError('bad-value', `${target} is not a reading (${type})`, { fix });
}
