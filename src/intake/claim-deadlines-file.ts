import { type ClaimDeadlines, claimDeadlines } from '../core/model/claim-deadlines.js';
import { readYamlAs } from './yaml.js';

/**
 * Parses claim deadlines, such as templates/claim-deadlines.yaml. Throws DossierError `bad-template`, naming every
 * problem with its line.
 */
export function parseClaimDeadlines(text: string, fileName: string): ClaimDeadlines {
  return readYamlAs(claimDeadlines, text, fileName, 'bad-template', 'claim-deadlines').read;
}
