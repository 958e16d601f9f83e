import { DossierError } from '../../core/model/error.js';
import type { Signer } from '../../core/ports/signer.js';
import { verifyDossier } from '../../core/verify/verify-dossier.js';

/**
 * Verifies a dossier as its readers will: one that they would reject is never stored.
 * @throws DossierError record-damaged when its record contradicts itself; an Error for anything else
 */
export async function requireSound(pdf: Uint8Array, signer: Signer, folder: string): Promise<void> {
  const { verdict, checks } = await verifyDossier(pdf, { trusted: [signer.certificateDer] });
  if (verdict === 'intact') return;
  const failed = checks.filter(({ result }) => result === 'failed');
  if (failed.length > 0 && failed.every(({ id }) => id.startsWith('ledger.')))
    throw new DossierError(
      'record-damaged',
      `the record contradicts itself: ${failed.map(({ detail }) => detail).join('; ')}`,
      { where: { file: folder }, fix: 'Put the folder back from a copy; no dossier was kept.' },
    );
  throw new Error(`the dossier just built does not verify: ${JSON.stringify(failed)}`);
}
