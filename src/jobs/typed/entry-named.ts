import type { Entry } from '../../core/model/entry.js';
import { DossierError } from '../../core/model/error.js';

/**
 * The entry that people name by the evidence it brought in (e12), or by its number in the trail (#41).
 * @throws DossierError 'bad-value' when there is none
 */
export function entryNamed(name: string, entries: readonly Entry[]): Entry {
  const number = /^#?(\d+)$/.exec(name.trim());
  const found =
    number === null
      ? entries.find(
          (entry) =>
            (entry.type === 'evidence-received' || entry.type === 'reading-recorded') &&
            entry.body.evidence === name.trim().toLowerCase(),
        )
      : entries[Number(number[1])];
  if (found === undefined)
    throw new DossierError('bad-value', `there is no ${number === null ? 'evidence' : 'entry'} ${name}`, {
      fix: 'Name evidence like e12, or an entry by its number in: dossier trail',
    });
  return found;
}
