import type { Delivery } from '../../core/model/delivery.js';
import { outcomeHow, type ReadingKind, signingParty } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { roleOf } from '../roles.js';
import { quantityAt, temperatureAt } from './amounts.js';
import { ofPallets, ofPalletWeight, ofScale, ofShock } from './handling.js';
import { kindAt, kindOf, stopIn } from './kind-of.js';
import { ofInspection, ofInstrument, verdictAt } from './kinds.js';
import type { NoteContext } from './note-context.js';
import { UnreadableNote } from './unreadable.js';
import { FREE_FIELD, KIND_WORDS, LISTED_WORDS, POSITIONS, SEVERAL } from './vocabulary.js';
import type { WordReading } from './word-reading.js';
import { dateAt, type NoteWords, timeOfDayAt } from './words.js';

/** A note in the words of `dossier record KIND WORD --option …`. */
export interface ParsedNote {
  kind: ReadingKind;
  word?: string;
  fields: Record<string, string | string[]>;
}

/** Parses one line. Throws UnreadableNote for an unknown word, or a second value for one field. */
export function readNote({ words, free }: NoteWords, delivery: Delivery, context: NoteContext): ParsedNote {
  const kind = kindAt(kindOf(words), stopIn(words, delivery) ?? context.stop, delivery);
  const found = new Map<string, string>();
  const several = new Map<string, string[]>();
  const say = ({ field, text }: WordReading): void => {
    if (SEVERAL.has(field)) {
      several.set(field, [...(several.get(field) ?? []), text]);
      return;
    }
    const before = found.get(field);
    if (before !== undefined && before !== text)
      throw new UnreadableNote(
        `"${before}" and "${text}" both say its ${NAMES[field] ?? field}`,
        'write one note a line, and free words after "note"',
      );
    found.set(field, text);
  };
  for (let i = 0; i < words.length; ) {
    const said = readWordsAt(words, i, kind, delivery);
    if (said === undefined) {
      throw new UnreadableNote(
        `"${(words[i] ?? '').slice(0, 60)}" is not understood`,
        'put free words after "note" or a colon, and a name after "by"',
      );
    }
    if (said.field !== '') say(said);
    i += said.length;
  }
  if (free !== undefined && free !== '') say({ field: FREE_FIELD[kind], text: free, length: 0 });
  return parsedNote(kind, found, several, context);
}

function parsedNote(
  kind: ReadingKind,
  found: ReadonlyMap<string, string>,
  several: ReadonlyMap<string, string[]>,
  context: NoteContext,
): ParsedNote {
  const fields: ParsedNote['fields'] = Object.fromEntries(several);
  for (const [field, text] of found)
    if (!['word', 'date', 'clock', 'day'].includes(field)) fields[field] = text;
  const clock = found.get('clock');
  const date = found.get('date') ?? found.get('day') ?? context.date;
  const own = found.get('date');
  if (clock === undefined && own === undefined)
    throw new UnreadableNote(
      'it has no time of day',
      'write it like 04:10 or 2:05pm, or the day in this line where nobody knows the hour',
    );
  // A time with its own day needs no other.
  if (clock === undefined) fields.at = own ?? '';
  else fields.at = date === undefined || /^\d{4}-/.test(clock) ? clock : `${date} ${clock}`;
  if (fields.stop === undefined && context.stop !== undefined) fields.stop = context.stop;
  if (fields.by === undefined && context.by !== undefined) fields.by = context.by;
  const word = found.get('word');
  return { kind, fields, ...omitUndefined({ word }) };
}

const NAMES: Record<string, string> = { word: 'main word', clock: 'time', shownBy: 'source', at: 'time' };

/**
 * The meaning of the words at a place; undefined when they are unknown. The order of the checks decides between two
 * meanings.
 */
function readWordsAt(
  words: readonly string[],
  at: number,
  kind: ReadingKind,
  delivery: Delivery,
): WordReading | undefined {
  const word = words[at] ?? '';
  const plain = word.toLowerCase();
  const next = words[at + 1];
  const one = (field: string, text = word): WordReading => ({ field, text, length: 1 });
  const listed = LISTED_WORDS[kind].find(({ options }) => options.includes(plain));
  if (listed !== undefined) return one(listed.field, plain);
  if (kind === 'outcome') {
    const verdict = verdictAt(words, at);
    if (verdict !== undefined) return verdict;
  }
  if (KIND_WORDS[plain] === kind && Object.hasOwn(KIND_WORDS, plain))
    return plain.startsWith('call') ? one('how', 'call') : one('');
  const role = roleAt(word, kind);
  if (role !== undefined) return role;
  const line = delivery.lines.find(({ id }) => id.toLowerCase() === plain);
  if (line !== undefined) return one('line', line.id);
  const stop = delivery.stops.find(({ id }) => id.toLowerCase() === plain);
  if (stop !== undefined) return one('stop', stop.id);
  const { compartments } = delivery.equipment.trailer;
  const compartment = compartments?.find(({ id }) => id.toLowerCase() === plain);
  if (compartment !== undefined) return one('compartment', compartment.id);
  if (POSITIONS.has(plain)) return one('position', plain);
  if (plain === 'yesterday' || plain === 'today') return one('day', plain);
  const clock = timeOfDayAt(words, at);
  if (clock !== undefined) return { field: 'clock', ...clock };
  // The number of a seal or recorder may have as many figures as a day has.
  const date =
    (kind === 'seal' || kind === 'instrument') && /^\d+$/.test(word) ? undefined : dateAt(words, at);
  if (date !== undefined) return { field: 'date', ...date };
  const dated = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\S+)$/.exec(word);
  if (dated !== null) return { field: 'clock', text: word, length: 1 };
  if (plain === 'by' && next !== undefined) return name(words, at, kind, delivery);
  if (plain === 'to' && next !== undefined && (kind === 'outcome' || kind === 'contact')) {
    const person = name(words, at, kind, delivery);
    return person && { ...person, field: kind === 'outcome' ? 'toldName' : 'withName' };
  }
  return ofKind(words, at, kind, delivery);
}

/** `consignee` and `shipper's` are others' words for the roles of a kind. */
function roleAt(word: string, kind: ReadingKind): WordReading | undefined {
  for (const { field, options } of LISTED_WORDS[kind]) {
    const role = /^[a-z'’]{5,}$/i.test(word) ? roleOf(word.replace(/['’]s$/, ''), options) : undefined;
    if (role !== undefined && role !== 'other') return { field, text: role, length: 1 };
  }
  return undefined;
}

/** Words of some kinds only: temperatures, fuel, alarms, a seal's number, rows. */
function ofKind(
  words: readonly string[],
  at: number,
  kind: ReadingKind,
  delivery: Delivery,
): WordReading | undefined {
  const word = words[at] ?? '';
  const plain = word.toLowerCase();
  const next = words[at + 1];
  switch (kind) {
    case 'pulp':
    case 'set-point': {
      if (plain === 'set') return { field: '', text: '', length: 1 };
      const degrees = temperatureAt(words, at);
      return degrees === undefined ? undefined : { field: 'word', ...degrees };
    }
    case 'round': {
      const set = /^set(?:-?point)?$/.test(plain) ? temperatureAt(words, at + 1) : undefined;
      if (set !== undefined) return { field: 'setPoint', text: set.text, length: set.length + 1 };
      if (plain === 'fuel' && next !== undefined) return { field: 'fuel', text: next, length: 2 };
      if (/^(?:\d+\/\d+|\d+(?:\.\d+)?%)$/.test(word)) return { field: 'fuel', text: word, length: 1 };
      if (plain === 'alarm' && next !== undefined) return { field: 'alarm', text: next, length: 2 };
      const degrees = temperatureAt(words, at);
      return degrees === undefined ? undefined : { field: 'word', ...degrees };
    }
    case 'seal':
      return /\d/.test(word) ? { field: 'word', text: word, length: 1 } : undefined;
    case 'pattern':
      if (plain === 'rows' && next !== undefined) return { field: 'rows', text: next, length: 2 };
      return ofPalletWeight(words, at);
    case 'scale':
      return ofScale(words, at);
    case 'shock':
      return ofShock(words, at);
    case 'pallets':
      return ofPallets(words, at);
    case 'outcome':
      return onPaper(words, at, kind, delivery) ?? ofOutcome(words, at, delivery);
    case 'exception':
      return (
        onPaper(words, at, kind, delivery) ??
        (plain === 'told' || plain === 'rest' || plain === 'said'
          ? undefined
          : ofOutcome(words, at, delivery))
      );
    case 'inspection':
      return ofInspection(words, at);
    case 'instrument':
      return (
        onPaper(words, at, kind, delivery) ??
        person('owner', words, at, kind, delivery) ??
        ofInstrument(words, at)
      );
    case 'particular': {
      const much = quantityAt(words, at);
      return (
        onPaper(words, at, kind, delivery) ??
        person('who', words, at, kind, delivery) ??
        (much === undefined ? undefined : { ...much, field: 'howMany' })
      );
    }
    case 'bracing':
    case 'event':
    case 'contact':
    case 'statement':
      return undefined;
  }
}

/** The paper, and who wrote and signed there: `on e31`, `on bill`, `written by driver`, `signed by shipper J. Ortiz`. */
function onPaper(
  words: readonly string[],
  at: number,
  kind: ReadingKind,
  delivery: Delivery,
): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  const next = (words[at + 1] ?? '').toLowerCase();
  if (plain === 'on' && (/^e\d+$/.test(next) || Object.hasOwn(PAPERS, next)))
    return { field: 'on', text: PAPERS[next] ?? next, length: 2 };
  if ((plain !== 'written' && plain !== 'signed') || next !== 'by' || words[at + 2] === undefined)
    return undefined;
  const person = name(words, at + 1, kind, delivery);
  return person === undefined
    ? undefined
    : { field: `${plain}By`, text: person.text, length: person.length + 1 };
}

/** `shipper J. Ortiz`: a part, and the name behind it up to the next word that has a meaning. */
function person(
  field: string,
  words: readonly string[],
  at: number,
  kind: ReadingKind,
  delivery: Delivery,
): WordReading | undefined {
  const role = roleOf((words[at] ?? '').replace(/['’]s$/, ''), signingParty.options);
  if (role === undefined || role === 'other') return undefined;
  let end = at + 1;
  while (end < words.length && readWordsAt(words, end, kind, delivery) === undefined) end += 1;
  return { field, text: words.slice(at, end).join(' '), length: end - at };
}

const PAPERS: Readonly<Record<string, string>> = {
  bill: 'bill of lading',
  bol: 'bill of lading',
  receipt: 'delivery receipt',
};

/** How much, the rest, who said so, who was told, and how. */
function ofOutcome(words: readonly string[], at: number, delivery: Delivery): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  const next = words[at + 1]?.toLowerCase();
  if (plain === 'all') return { field: 'word', text: 'all', length: 1 };
  if (plain === 'rest' && (next === 'accepted' || next === 'refused'))
    return { field: 'rest', text: next, length: 2 };
  if (plain === 'said' && next === 'by') {
    const person = name(words, at + 1, 'outcome', delivery);
    return person && { ...person, field: 'saidBy', length: person.length + 1 };
  }
  if (plain === 'told' && next !== undefined) return { field: 'told', text: next, length: 2 };
  if (outcomeHow.options.some((how) => how === plain)) return { field: 'how', text: plain, length: 1 };
  return quantityAt(words, at);
}

/** A name ends before the next word that has a meaning. */
function name(
  words: readonly string[],
  at: number,
  kind: ReadingKind,
  delivery: Delivery,
): WordReading | undefined {
  let end = words[at + 1]?.toLowerCase() === 'the' ? at + 3 : at + 2;
  while (end < words.length && readWordsAt(words, end, kind, delivery) === undefined) end += 1;
  return { field: 'by', text: words.slice(at + 1, end).join(' '), length: end - at };
}
