import { readFile } from 'node:fs/promises';
import { ownTemplates } from '../compose/templates.js';
import type { ClaimClocks } from '../core/model/claim-deadlines.js';
import { DossierError } from '../core/model/error.js';
import { parseClaimClocks } from '../intake/claim-deadlines-file.js';

/**
 * The clocks of a claim: the carrier's own file in its folder of templates, or the shipped one.
 * Throws DossierError `bad-template` when it cannot be read or does not say what it must.
 */
export async function loadClaimClocks(folder?: string): Promise<ClaimClocks> {
  const file = (await ownTemplates(folder)).fileOf('claim-clocks.yaml');
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new DossierError('bad-template', 'the clocks of a claim cannot be read', {
      where: { file },
      fix: 'Compare it with the shipped templates/claim-clocks.yaml.',
      cause,
    });
  });
  return parseClaimClocks(text, file);
}
