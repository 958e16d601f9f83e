import { createHash } from 'node:crypto';
import { signedStatementBytes } from '../../core/ledger/statement.js';
import { DossierError } from '../../core/model/error.js';
import { type EvidenceOf, type StatementSignature, sha256 } from '../../core/model/evidence.js';
import type { Clock } from '../../core/ports/clock.js';
import { loadIdentity } from '../../signing/identity.js';
import { identityFolder } from './identity-folder.js';
import type { SignedBy } from './signed-by.js';
import { openSigner } from './signer.js';

/** Signs a statement for the record of this name. */
export type StatementSigner = (
  record: string,
  statement: EvidenceOf<'statement'>,
) => Promise<StatementSignature>;

/**
 * Signs statements with the identity in a folder, that of the person who makes the statement, or with a signer of
 * theirs. No identity is made here, because a signature under a statement takes an identity that the person made.
 * The function throws DossierError `identity` when there is none, or it can't be used.
 */
export function statementSigner(input: SignedBy & { now: Clock }): StatementSigner {
  return async (record, statement) => {
    const { signer, certificateSha256 } = await openPersonal(input);
    if (statement.by === undefined)
      throw new DossierError('bad-value', 'a signed statement says whose it is', {
        where: { field: '--by' },
        fix: 'Give the name of the person who signs: --by NAME',
      });
    const { signDetached } = await import('../../signing/cms.js');
    const digest = createHash('sha256').update(signedStatementBytes(record, statement)).digest();
    const cms = await signDetached(digest, signer);
    return {
      cms: Buffer.from(cms).toString('base64'),
      certificateSha256: sha256.parse(certificateSha256),
    };
  };
}

async function openPersonal(input: SignedBy & { now: Clock }) {
  if (input.signer !== undefined) return openSigner(input, '', input.now);
  const folder = identityFolder(input.identityFolder);
  const { identity } = await loadIdentity(folder, await input.passphrase(false), input.now());
  return { signer: identity, certificateSha256: identity.certificateSha256 };
}
