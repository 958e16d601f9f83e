import { createHash } from 'node:crypto';
import { signedStatementBytes } from '../core/ledger/statement.js';
import { DossierError } from '../core/model/error.js';
import { type EvidenceOf, type StatementSignature, sha256 } from '../core/model/evidence.js';
import { loadIdentity } from '../signing/identity.js';
import { identityFolder } from './identity.js';

/** Signs a statement for the record of this name. */
export type StatementSigner = (
  record: string,
  statement: EvidenceOf<'statement'>,
) => Promise<StatementSignature>;

/**
 * A signer by the identity in a folder: that of the person whose statement it is. None is made here, because a
 * signature under one's words wants an identity that one made oneself.
 * The signer throws DossierError `identity` when there is none, or it can't be used.
 */
export function statementSigner(input: {
  folder: string | undefined;
  passphrase: (isNew: boolean) => Promise<string>;
  now: () => Date;
}): StatementSigner {
  return async (record, statement) => {
    const folder = identityFolder(input.folder);
    const { identity } = await loadIdentity(folder, await input.passphrase(false), input.now());
    if (statement.by === undefined)
      throw new DossierError('bad-value', 'a signed statement says whose it is', {
        where: { field: '--by' },
        fix: 'Give the name of the person who signs: --by NAME',
      });
    const { signDetached } = await import('../signing/cms.js');
    const digest = createHash('sha256').update(signedStatementBytes(record, statement)).digest();
    return {
      cms: Buffer.from(signDetached(digest, identity)).toString('base64'),
      certificateSha256: sha256.parse(identity.certificateSha256),
    };
  };
}
