import { type ClaimId, claimId } from '../../model/claim.js';
import { type EvidenceId, evidenceId } from '../../model/evidence.js';

/** What evidence, claims and entries of one record are called in another. */
export interface Renumbering {
  evidence(id: EvidenceId): EvidenceId;
  claim(id: ClaimId): ClaimId;
  entry(seq: number): number;
}

/** Fields that hold ids of evidence or numbers of entries; no other field is one, whatever it looks like. */
const EVIDENCE_FIELDS: ReadonlySet<string> = new Set(['evidence', 'photo', 'replaces', 'documents']);
const ENTRY_FIELDS: ReadonlySet<string> = new Set(['entry', 'replaces', 'comparedAt']);

/** The body of an entry with every reference as the other record has it. Nothing else is changed. */
export function renumbered(value: unknown, numbers: Renumbering, field = ''): unknown {
  if (Array.isArray(value)) return value.map((one) => renumbered(one, numbers, field));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(
      Object.entries(value).map(([name, one]) => [name, renumbered(one, numbers, name)]),
    );
  if (typeof value === 'number') return ENTRY_FIELDS.has(field) ? numbers.entry(value) : value;
  if (typeof value !== 'string') return value;
  if (field === 'claim') return ofClaim(value, numbers);
  if (!EVIDENCE_FIELDS.has(field)) return value;
  const id = evidenceId.safeParse(value);
  return id.success ? numbers.evidence(id.data) : value;
}

function ofClaim(value: string, numbers: Renumbering): string {
  const id = claimId.safeParse(value);
  return id.success ? numbers.claim(id.data) : value;
}
