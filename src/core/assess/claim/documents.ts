import type { AmountItem } from '../../model/claim.js';
import type { EvidenceId, SubjectName } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { SupportingDocument } from '../../model/results.js';
import type { EvidenceItem, RecordState } from '../../model/state.js';
import { dumpingCertificates, dumpingOf } from './dumping.js';
import { type ClaimEntries, entriesOf, termsOf } from './terms.js';

type Wanted = Pick<SupportingDocument, 'id' | 'asked'> & ({ subject: SubjectName } | { items: AmountItem[] });

/** By the rule, in its order; freight charges and values have no subject of their own. */
const BY_RULE: readonly Wanted[] = [
  { id: 'bill-of-lading', asked: 'by-rule', subject: 'bill-of-lading' },
  { id: 'freight-charges', asked: 'by-rule', items: ['freight-paid', 'freight-due'] },
  { id: 'invoice', asked: 'by-rule', subject: 'invoice' },
];
const TO_JUDGE: readonly Wanted[] = [
  { id: 'inspection-certificate', asked: 'to-judge-the-amount', subject: 'inspection-certificate' },
  { id: 'sale-account', asked: 'to-judge-the-amount', subject: 'sale-account' },
  { id: 'rejection-notice', asked: 'to-judge-the-amount', subject: 'rejection-notice' },
];

const shows = (item: EvidenceItem, subject: SubjectName): boolean =>
  ('subject' in item && item.subject?.is === subject) ||
  (subject === 'inspection-certificate' && item.kind === 'inspection' && item.defects.length > 0);

/**
 * Documents that support a claim, and the evidence on file for each: those of 49 CFR 370.7(b), the destination value
 * that its first proviso asks for where goods were sold or not invoiced, the statement of 370.7(c) where goods are
 * short, a dumping certificate (7 CFR 46.22, 46.23) where there was disposal, and others that decide an amount. Under
 * terms that part 370 does not belong to, all of them only help to judge the amount.
 */
export function supportingDocuments(
  claim: ClaimEntries,
  state: Pick<RecordState, 'evidence' | 'delivery'>,
): SupportingDocument[] {
  const { evidence } = state;
  const { governs } = termsOf(claim);
  const dumping = dumpingOf(state);
  const byRule = governs === 'unknown' || governs.startsWith('us-carriage-by');
  const amounts = entriesOf(claim, 'amount');
  const sold = amounts.some(({ item }) => item === 'salvage');
  const short = entriesOf(claim, 'quantity').some(({ state }) => state === 'short');
  const dumped = dumping !== undefined || amounts.some(({ item }) => item === 'disposal-cost');
  const wanted: Wanted[] = [
    ...BY_RULE.map((one): Wanted => (byRule ? one : { ...one, asked: 'to-judge-the-amount' })),
    ...(byRule && sold
      ? [
          {
            id: 'destination-value',
            asked: 'if-sold-or-not-invoiced',
            items: ['market-value'],
          } satisfies Wanted,
        ]
      : []),
    ...(byRule && short
      ? [{ id: 'statement-of-non-receipt', asked: 'if-lost', items: [] } satisfies Wanted]
      : []),
    ...TO_JUDGE,
    ...(dumped ? [{ id: 'dumping-certificate', asked: 'if-dumped', items: [] } satisfies Wanted] : []),
  ];
  return wanted.map((one) => {
    const { id, asked } = one;
    if (id === 'dumping-certificate')
      return {
        id,
        asked,
        have: dumpingCertificates(state).flatMap((item) => [item.evidence, ...item.documents]),
        ...omitUndefined({ dumping }),
      };
    const have: EvidenceId[] =
      'subject' in one
        ? evidence.filter((item) => shows(item, one.subject)).map((item) => item.evidence)
        : amounts.filter(({ item }) => one.items.includes(item)).flatMap((entry) => entry.evidence);
    return { id, asked, have: [...new Set(have)] };
  });
}
