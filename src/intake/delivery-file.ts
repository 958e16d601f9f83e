import { type Delivery, type DeliveryInput, delivery } from '../core/model/delivery.js';
import type { Sha256 } from '../core/model/evidence.js';
import { readYamlAs } from './yaml.js';

export interface DeliveryFile {
  facts: Delivery;
  /** The facts as written, as plain JSON for the ledger. */
  written: DeliveryInput;
  /** SHA-256 of the text. */
  sha256: Sha256;
}

/**
 * Parses delivery.yaml. Throws DossierError `bad-delivery-file` at the first problem, with all of them in the
 * message.
 */
export function parseDeliveryFile(text: string, fileName: string): DeliveryFile {
  const { read, written, sha256 } = readYamlAs(delivery, text, fileName, 'bad-delivery-file');
  // A value that the schema accepts has the schema's input shape.
  return { facts: read, written: written as DeliveryInput, sha256 };
}
