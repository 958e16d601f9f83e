import { type ClaimClocks, claimClocks } from '../core/model/claim-deadlines.js';
import { readYamlAs } from './yaml.js';

/**
 * Reads clocks of a claim, such as templates/claim-clocks.yaml.
 * Throws DossierError `bad-template`, naming every problem with its line.
 */
export function parseClaimClocks(text: string, fileName: string): ClaimClocks {
  return readYamlAs(claimClocks, text, fileName, 'bad-template').read;
}
