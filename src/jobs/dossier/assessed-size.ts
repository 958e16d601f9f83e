import type { Entry, EntryOf } from '../../core/model/entry.js';
import { DossierError } from '../../core/model/error.js';

/**
 * The number of entries that an assessment is made over: those of the last dossier, so that both have one fingerprint.
 * @throws DossierError bad-usage when no dossier was built, or when what it shows has changed since
 */
export function assessedSize(entries: readonly Entry[]): number {
  const last = entries.findLast(isDossier);
  if (last === undefined)
    throw new DossierError('bad-usage', 'no dossier of this delivery was built that could be assessed', {
      where: { field: '--assessment' },
      fix: 'Build it first: dossier build. The assessment is made over its fingerprint and names its exhibits.',
    });
  const { size, file } = last.body;
  const since = entries.slice(size).filter((entry) => !isAboutFiles(entry));
  const [first] = since;
  if (first === undefined) return size;
  const count = since.length === 1 ? 'an entry was' : `${since.length} entries were`;
  throw new DossierError(
    'bad-usage',
    `the record has changed since ${file} was built: ${count} made, from entry ${first.seq} (${first.type}) on`,
    {
      where: { field: '--assessment' },
      fix: 'Build the dossier anew, then its assessment: dossier build, and dossier build --assessment.',
    },
  );
}

const isDossier = (entry: Entry): entry is EntryOf<'dossier-built'> =>
  entry.type === 'dossier-built' && entry.body.volume !== 'assessment';

/** Whether an entry tells only of files made of the record, and of fingerprints: none changes what the record shows. */
const isAboutFiles = ({ type, body }: Entry): boolean =>
  type === 'dossier-built' ||
  type === 'fingerprint-published' ||
  type === 'time-stamp-received' ||
  (type === 'claim-noted' && 'is' in body && body.is === 'answered');
