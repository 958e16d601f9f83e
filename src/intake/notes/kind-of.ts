import type { Delivery } from '../../core/model/delivery.js';
import type { ReadingKind } from '../../core/model/evidence.js';
import { quantityAt } from './amounts.js';
import { UnreadableNote } from './unreadable.js';
import { EVENTS, KIND_WORDS, PALLET_STATES } from './vocabulary.js';

/** The kind that the words of a note say. @throws UnreadableNote when none of them says one */
export function kindOf(words: readonly string[]): ReadingKind {
  // "refused" alone is the event; with a quantity it is an outcome of so much.
  if (words.some((word) => word.toLowerCase() === 'refused') && words.some((_, at) => quantityAt(words, at)))
    return 'outcome';
  for (const word of words) {
    const plain = word.toLowerCase();
    const kind = Object.hasOwn(KIND_WORDS, plain) ? KIND_WORDS[plain] : undefined;
    if (kind !== undefined) return kind;
    if (EVENTS.has(plain)) return 'event';
    if (plain === 'set') return 'set-point';
    if (PALLET_STATES.has(plain)) return 'pallets';
  }
  throw new UnreadableNote(
    'nothing says what kind of note it is',
    'use one of: pulp, set-point, check, seal, bracing, pattern, scale, shock, leaning, fallen, refusal, acceptance, exception, inspection, instrument, a particular such as counted-by, contact, statement, or an event such as arrived',
  );
}

/** What is excepted where goods are unloaded is an outcome; at loading it is an exception on the bill of lading. */
export function kindAt(kind: ReadingKind, stop: string | undefined, { stops }: Delivery): ReadingKind {
  const unloads = stops.some(({ id, does }) => id === stop && does === 'unload');
  return kind === 'exception' && unloads ? 'outcome' : kind;
}

/** The stop that a note itself names. */
export function stopIn(words: readonly string[], { stops }: Delivery): string | undefined {
  const said = words.map((word) => word.toLowerCase());
  return stops.find(({ id }) => said.includes(id.toLowerCase()))?.id;
}
