import { sha256Of } from '../../../src/core/ledger/tree.js';
import type { NewEntry } from '../../../src/core/model/entry.js';
import type { EvidenceId } from '../../../src/core/model/evidence.js';

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The smallest delivery that holds. */
export function someFacts(carrier = 'Invented Carrier') {
  const facts = {
    delivery: 'TEST 2026-07/A',
    parties: { carrier: { name: carrier } },
    equipment: { trailer: { number: 'T-1' } },
    stops: [
      { id: 'load-1', does: 'load', place: 'Packing house', zone: 'America/Phoenix' },
      { id: 'drop-1', does: 'unload', place: 'Store', zone: 'America/Chicago' },
    ],
    lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
  };
  return { facts, sha256: sha256Of(bytesOf(JSON.stringify(facts))), by: 'M. Ortega' };
}

export function pulpOf(evidence: EvidenceId | string, value = 34.2): NewEntry {
  return {
    type: 'reading-recorded',
    by: 'M. Ortega',
    body: {
      evidence,
      kind: 'pulp',
      time: { is: 'none', why: 'test' },
      line: 'romaine',
      source: { is: 'typed' },
      temperature: { value, unit: '°F' },
    },
  };
}

export function documentOf(
  evidence: EvidenceId | string,
  file: { bytes: number; sha256: string },
  name = 'bill.txt',
): NewEntry {
  return {
    type: 'evidence-received',
    by: 'M. Ortega',
    body: {
      evidence,
      kind: 'document',
      time: { is: 'none', why: 'test' },
      file: { name, bytes: file.bytes, sha256: file.sha256, type: 'text/plain' },
    },
  };
}
