import { DossierError } from '../../core/model/error.js';
import { type Signatory, signingParty } from '../../core/model/evidence.js';
import { parseSignatory } from '../../intake/signatory.js';
import type { TypedFields } from './typed-fields.js';

/** Who wrote an exception and who signed it. Throws DossierError `bad-value` for a name without a role. */
export function signatures({ writtenBy, signedBy }: TypedFields): {
  writtenBy: Signatory | undefined;
  signedBy: Signatory[] | undefined;
} {
  return {
    writtenBy: writtenBy === undefined ? undefined : signatoryOf(writtenBy, '--written-by'),
    signedBy:
      signedBy === undefined ? undefined : [signedBy].flat().map((one) => signatoryOf(one, '--signed-by')),
  };
}

/** Who did something, and for whom. Throws DossierError `bad-value` for a name without a role. */
export function signatoryOf(text: string, field: string): Signatory {
  const read = parseSignatory(text);
  if (read !== undefined) return read;
  throw new DossierError('bad-value', `"${text}" does not say for whom`, {
    where: { field },
    fix: `Write the part before the name, in quotes: "shipper J. Ortiz"; parts are ${signingParty.options.join(', ')}.`,
  });
}
