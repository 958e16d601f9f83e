import type { EvidenceId, SubjectName } from '../../model/evidence.js';
import type { SupportingDocument } from '../../model/results.js';
import type { EvidenceItem, RecordState } from '../../model/state.js';
import { type ClaimEntries, entriesOf } from './terms.js';

const ASKED: readonly [SupportingDocument['id'], SupportingDocument['asked'], SubjectName | undefined][] = [
  ['bill-of-lading', 'by-rule', 'bill-of-lading'],
  ['freight-charges', 'by-rule', undefined],
  ['invoice', 'by-rule', 'invoice'],
  ['inspection-certificate', 'to-judge-the-amount', 'inspection-certificate'],
  ['sale-account', 'to-judge-the-amount', 'sale-account'],
  ['rejection-notice', 'to-judge-the-amount', 'rejection-notice'],
];

const shows = (item: EvidenceItem, subject: SubjectName): boolean =>
  'subject' in item && item.subject?.is === subject;

/**
 * Documents that support a claim (49 CFR 370.7(b): the bill of lading, evidence of the freight charges, the invoice
 * or a copy), others that decide an amount, and the evidence on file for each by its subject. Freight charges have
 * no subject of their own, so the documents of freight amounts count for them.
 */
export function supportingDocuments(
  claim: ClaimEntries,
  { evidence }: Pick<RecordState, 'evidence'>,
): SupportingDocument[] {
  const freight = entriesOf(claim, 'amount')
    .filter(({ item }) => item === 'freight-paid' || item === 'freight-due')
    .flatMap((entry) => entry.evidence);
  return ASKED.map(([id, asked, subject]) => {
    const have: EvidenceId[] =
      subject === undefined
        ? [...new Set(freight)]
        : evidence.filter((item) => shows(item, subject)).map((item) => item.evidence);
    return { id, asked, have };
  });
}
