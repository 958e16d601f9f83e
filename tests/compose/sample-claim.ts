import type { ComposeInput } from '../../src/compose/input.js';
import { amountsOf } from '../../src/core/assess/claim/amounts.js';
import { burdenOfProof } from '../../src/core/assess/claim/burden-of-proof.js';
import { quantitiesOf } from '../../src/core/assess/claim/quantities.js';
import { type ClaimId, claimNote } from '../../src/core/model/claim.js';
import type { EvidenceId } from '../../src/core/model/evidence.js';
import type { ClaimDeadline, ClaimResult } from '../../src/core/model/results.js';
import type { ClaimEntry } from '../../src/core/model/state.js';
import type { Instant } from '../../src/core/model/time.js';

const on = (date: string) => ({ date, zone: 'America/Chicago' });
const usd = (amount: string) => ({ amount, currency: 'USD' });

/** An invented claim on the sample delivery: a part of the romaine rejected, a sale, papers that disagree. */
const notes = (paper: EvidenceId): object[] =>
  [
    {
      is: 'received',
      claimant: { name: 'Plainsview Grocers DC 4', role: 'receiver', address: '4 Plain St, Omaha NE' },
      theirNumber: 'PG-2207',
      ourNumber: '2026-014',
      received: on('2026-08-03'),
      form: 'e-mail',
      amount: usd('6240.00'),
      grounds: ['Romaine pulped at 44 °F at delivery'],
      contents: { shipment: true, amount: 'stated' },
    },
    { is: 'terms', governs: 'us-carriage-by-bill', note: 'Clause 7 of the bill of lading' },
    {
      is: 'letter',
      way: 'sent',
      letter: 'acknowledgement',
      on: on('2026-08-10'),
      with: 'Plainsview Grocers DC 4',
    },
    { is: 'offer', by: 'carrier', on: on('2026-09-01'), amount: usd('1500'), firm: true },
    {
      is: 'amount',
      item: 'market-value',
      saidBy: 'market-report',
      line: 'romaine',
      each: usd('14.25'),
      quantity: '400',
      unit: 'cartons',
    },
    {
      is: 'amount',
      item: 'market-value',
      saidBy: 'claimant',
      line: 'romaine',
      each: usd('15.60'),
      quantity: '400',
      unit: 'cartons',
    },
    { is: 'amount', item: 'invoice-value', saidBy: 'claimant', line: 'romaine', total: usd('3800') },
    { is: 'amount', item: 'salvage', saidBy: 'claimant', line: 'romaine', total: usd('1310.40') },
    { is: 'amount', item: 'salvage-cost', saidBy: 'claimant', line: 'romaine', total: usd('131.04') },
    { is: 'amount', item: 'freight-paid', saidBy: 'claimant', total: usd('900') },
    { is: 'amount', item: 'inspection-cost', saidBy: 'claimant', total: usd('165') },
    { is: 'amount', item: 'disposal-cost', saidBy: 'claimant', total: usd('80'), evidence: [] },
    {
      is: 'quantity',
      line: 'romaine',
      state: 'shipped',
      quantity: '1280',
      unit: 'cartons',
      saidBy: 'carrier',
    },
    {
      is: 'quantity',
      line: 'romaine',
      state: 'accepted',
      quantity: '880',
      unit: 'cartons',
      saidBy: 'receiver',
    },
    {
      is: 'quantity',
      line: 'romaine',
      state: 'rejected',
      quantity: '390',
      unit: 'cartons',
      saidBy: 'receiver',
    },
  ].map((note) => ({ claim: 'c1', evidence: [paper], ...note }));

const clocks = (paper: EvidenceId): ClaimDeadline[] => [
  {
    id: 'acknowledge',
    title: { en: 'Acknowledge the claim', es: 'Acusar recibo del reclamo' },
    duty: { en: 'Acknowledge it in writing', es: 'Acusar recibo por escrito' },
    source: '49 CFR 370.5(a)',
    basis: 'secondary',
    binds: 'carrier',
    nature: 'deadline',
    governs: ['us-carriage-by-bill'],
    starts: { en: 'the claim was received', es: 'se recibió el reclamo' },
    from: { is: 'day', day: on('2026-08-03') as never, evidence: [paper] },
    due: { is: 'day', day: on('2026-09-02') as never, evidence: [] },
    done: { is: 'day', day: on('2026-08-10') as never, evidence: [] },
    state: 'done',
  },
  {
    id: 'least-time-to-claim',
    title: { en: 'Least time to file a claim', es: 'Plazo mínimo para reclamar' },
    duty: { en: 'File the claim', es: 'Presentar el reclamo' },
    source: '49 U.S.C. 14706(e)(1)',
    basis: 'read',
    binds: 'claimant',
    nature: 'least-time',
    governs: [],
    starts: { en: 'delivery', es: 'la entrega' },
    state: 'overdue',
    due: { is: 'time', at: Date.parse('2027-04-16T00:00:00Z'), zone: on('').zone as never, evidence: [] },
    setBy: { seq: 90, note: 'Clause 9', evidence: [paper] },
  },
];

/** The sample delivery with a claim on it, computed as the results of a record would be. */
export function withClaim(input: ComposeInput): ComposeInput {
  const [paper] = input.state.evidence
    .filter((item) => item.kind === 'document')
    .map((item) => item.evidence);
  if (paper === undefined) throw new Error('the sample has no paper');
  const entries = notes(paper).map(
    (note, i): ClaimEntry => ({
      ...claimNote.parse(note),
      seq: 60 + i,
      enteredAt: '2026-08-03T15:00:00.000Z' as Instant,
      enteredBy: 'Office',
    }),
  );
  const [received] = entries.filter((one) => one.is === 'received');
  const [terms] = entries.filter((one) => one.is === 'terms');
  const amounts = amountsOf(entries);
  if (received === undefined || terms === undefined || amounts === undefined)
    throw new Error('no claim made');
  const { findings, gaps } = input.assessment;
  const claim: ClaimResult = {
    claim: 'c1' as ClaimId,
    received,
    governs: terms.governs,
    terms,
    clocks: clocks(paper),
    contents: (['form', 'shipment', 'liability', 'amount'] as const).map((id) => ({
      id,
      state: id === 'form' ? 'not-looked-at' : id === 'liability' ? 'not-said' : 'said',
      source: '49 CFR 370.3(b)',
      basis: 'secondary',
    })),
    papers: [
      { id: 'bill-of-lading', asked: 'by-rule', have: [paper] },
      { id: 'sale-account', asked: 'to-judge-the-amount', have: [] },
    ],
    position: burdenOfProof({ entries, findings, gaps }),
    amounts,
    quantities: quantitiesOf(entries),
  };
  return {
    ...input,
    state: { ...input.state, claims: entries },
    assessment: { ...input.assessment, claims: [claim] },
  };
}
