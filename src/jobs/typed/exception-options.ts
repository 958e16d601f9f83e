import type { Delivery, Stop } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import type { ReadingKind } from '../../core/model/evidence.js';
import { howMuch, reasonsOf, typedPapers } from './outcome-options.js';
import { signatures } from './signatory-options.js';
import type { TypedFields } from './typed-fields.js';

/**
 * What an exception is recorded as: at loading the carrier makes it on the bill of lading; at delivery the receiver makes
 * it against the goods that are taken, which is an outcome. Other kinds are what they are.
 * @throws DossierError 'bad-value' with the stops where none is named, since either end may be meant
 */
export function kindAtStop(
  kind: ReadingKind,
  typed: TypedFields,
  stop: Stop | undefined,
  { stops, lines }: Delivery,
): { kind: ReadingKind; typed: TypedFields } {
  if (kind !== 'exception') return { kind, typed };
  if (stop === undefined) {
    const line = lines.find(({ id }) => id === typed.line);
    const choices = stops
      .map(({ id }) => id)
      .filter((id) => line === undefined || id === line.from || id === line.to);
    throw new DossierError('bad-value', 'not told at which stop', {
      where: { field: '--stop' },
      fix: `At loading it is the carrier's exception on the bill of lading, at delivery the receiver's: --stop ${choices.join(' or --stop ')}.`,
      choices,
    });
  }
  return stop.does === 'unload'
    ? { kind: 'outcome', typed: { ...typed, outcome: 'accepted-with-exceptions' } }
    : { kind, typed };
}

/** The fields of an exception at loading, before its schema checks them. Throws DossierError `bad-value`. */
export function exceptionBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  if (typed.told !== undefined || typed.toldName !== undefined || typed.how !== undefined)
    throw new DossierError('bad-value', 'an exception at loading stands on a paper and is told to nobody', {
      where: { field: '--told' },
      fix: 'Record whom you told with: dossier record contact.',
    });
  if (typed.words === undefined || typed.words.trim() === '')
    throw new DossierError('bad-value', 'not told what is written', {
      where: { field: '--words' },
      fix: 'Give the words as they stand on the paper: --words "romaine 41 F at loading".',
    });
  const { quantity } = howMuch(word);
  return {
    quantity,
    words: typed.words,
    reasons: reasonsOf(typed.reason),
    ...signatures(typed),
    ...typedPapers(typed.on),
  };
}
