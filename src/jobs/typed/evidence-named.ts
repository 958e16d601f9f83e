import { DossierError } from '../../core/model/error.js';
import { evidenceId } from '../../core/model/evidence.js';
import { type EvidenceItem, findEvidence, type RecordState } from '../../core/model/state.js';

/**
 * The evidence that counts and is called so. Evidence that seems to belong elsewhere is given where the caller may speak
 * of it too.
 * @param field what the name was typed under
 * @throws DossierError 'bad-value' when there is none, when it was struck, or when it does not count
 */
export function evidenceNamed(
  state: RecordState,
  named: string,
  field: string,
  { notCounted = false }: { notCounted?: boolean } = {},
): EvidenceItem {
  const refuse = (message: string, fix: string) =>
    new DossierError('bad-value', message, { where: { field }, fix });
  const id = evidenceId.safeParse(named.trim().toLowerCase());
  const item = id.success ? findEvidence(state, id.data) : undefined;
  if (item !== undefined) return item;
  const elsewhere = state.notCounted.find(({ evidence }) => evidence === id.data);
  if (elsewhere !== undefined && notCounted) return elsewhere;
  if (elsewhere !== undefined)
    throw refuse(
      `${elsewhere.evidence} seems to be of another trailer or time, and does not count`,
      `If it is of this delivery: dossier admit ${elsewhere.evidence} --why WHY`,
    );
  const struck = state.strikes.find(
    ({ entry }) => 'evidence' in entry.body && entry.body.evidence === id.data && bringsIn(entry.type),
  );
  if (struck !== undefined)
    throw refuse(
      `${named} was struck by ${struck.strike.by} (entry ${struck.strike.seq}): ${struck.strike.body.why}`,
      `If it counts after all: dossier strike #${struck.strike.seq} --why WHY`,
    );
  throw refuse(
    `there is no evidence ${named}`,
    lastOf(state) === 0 ? 'Nothing was taken in yet.' : `Evidence is numbered e1 to e${lastOf(state)} here.`,
  );
}

const bringsIn = (type: string) => type === 'evidence-received' || type === 'reading-recorded';

/** The highest number that evidence of the record has, counted or not. */
export function lastOf({ evidence, notCounted, strikes }: RecordState): number {
  const ids = [
    ...[...evidence, ...notCounted].map((item) => item.evidence),
    ...strikes.flatMap(({ entry }) =>
      'evidence' in entry.body && typeof entry.body.evidence === 'string' ? [entry.body.evidence] : [],
    ),
  ];
  return ids.reduce((most, id) => Math.max(most, Number(id.slice(1))), 0);
}
