import { DossierError } from '../../core/model/error.js';
import type { RecordState } from '../../core/model/state.js';
import type { RedactedCopy } from '../redaction/read.js';
import type { LetterRequest } from './letter-request.js';

/**
 * Refuses to enclose the carrier's own assessment with what goes to anybody but the insurer or counsel: to the other side
 * it is never sent, whoever asks for it.
 * @throws DossierError bad-usage
 */
export function requireOwnSide(
  { kind, to }: Pick<LetterRequest, 'kind' | 'to'>,
  copy: RedactedCopy | undefined,
  state: RecordState,
): void {
  const refuse = (reader: string) =>
    new DossierError('bad-usage', `the assessment is confidential and not for ${reader}`, {
      where: { field: '--assessment' },
      fix: 'Leave out --assessment: the dossier alone goes with this letter. To the insurer: --letter notice-to-insurer --assessment; to counsel: the same with --to NAME --for counsel.',
    });
  if (kind !== 'notice-to-insurer') throw refuse(`whoever gets a letter of the kind ${kind}`);
  if (copy?.assessment !== true) throw refuse(copy === undefined ? 'everybody' : `the ${copy.name}`);
  if (to !== undefined && otherSide(state).has(nameKey(to.name))) throw refuse(to.name);
}

const nameKey = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

/** Names of those who may stand against the carrier: whoever claims, and every party but the carrier's own. */
function otherSide({ delivery, claims }: RecordState): ReadonlySet<string> {
  const { carrier: _, driver: __, insurer: ___, ...others } = delivery.parties;
  return new Set(
    [
      ...Object.values(others),
      ...delivery.stops.map(({ party }) => party),
      ...claims.map((entry) => (entry.is === 'received' ? entry.claimant : undefined)),
    ].flatMap((party) => (party === undefined ? [] : [nameKey(party.name)])),
  );
}
