import type { LetterClaim, LetterInput } from '../../../src/compose/letters/input.js';
import type { TemplatedLetterKind } from '../../../src/compose/letters/kinds.js';
import { carrierTemplates } from '../../../src/compose/templates.js';
import { type ClaimNote, claimNote } from '../../../src/core/model/claim.js';
import type { EvidenceId } from '../../../src/core/model/evidence.js';
import type { SupportingDocument } from '../../../src/core/model/results.js';
import type { ClaimEntry } from '../../../src/core/model/state.js';
import type { Instant } from '../../../src/core/model/time.js';
import { BUILT_AT, type SampleOptions, sampleInput } from '../sample.js';
import { hashOf } from '../sample-evidence.js';

const on = { date: '2026-08-03', zone: 'America/Chicago' };
/** What was said of an invented claim; e1 is the first evidence of the sample. */
const NOTES: unknown[] = [
  {
    is: 'received',
    claim: 'c1',
    evidence: ['e1'],
    claimant: { name: 'Plainsview Grocers', role: 'receiver', address: '4 Orchard Way, Omaha NE' },
    theirNumber: 'PG-77',
    ourNumber: '2026-014',
    received: on,
    amount: { amount: '12480.50', currency: 'USD' },
    grounds: ['Romaine arrived warm'],
  },
  { is: 'letter', claim: 'c1', way: 'sent', letter: 'acknowledgement', on, with: 'Plainsview Grocers' },
  {
    is: 'offer',
    claim: 'c1',
    by: 'carrier',
    on,
    amount: { amount: '3000', currency: 'USD' },
    firm: true,
  },
  { is: 'declined', claim: 'c1', on, inWriting: true, reasons: ['The romaine was warm when it was loaded.'] },
];

const entriesOf = (notes: readonly unknown[], firstSeq = 90): ClaimEntry[] =>
  notes.map((note, i) => ({
    ...(claimNote.parse(note) as ClaimNote),
    seq: firstSeq + i,
    enteredAt: BUILT_AT as Instant,
    enteredBy: 'Office',
  }));

const supportingDocument = (id: SupportingDocument['id'], ...have: string[]): SupportingDocument => ({
  id,
  asked: 'by-rule',
  have: have as EvidenceId[],
});

/** A claim with some papers there and some not. */
export function sampleClaim(notes: readonly unknown[] = NOTES): LetterClaim {
  const entries = entriesOf(notes);
  const received = entries.find((entry) => entry.is === 'received');
  if (received?.is !== 'received') return { entries };
  return {
    entries,
    result: {
      claim: received.claim,
      received,
      governs: 'unknown',
      clocks: [],
      contents: [
        { id: 'amount', state: 'said', source: '49 CFR 370.3(b)', basis: 'read' },
        { id: 'liability', state: 'not-said', source: '49 CFR 370.3(b)', basis: 'read' },
      ],
      papers: [
        supportingDocument('bill-of-lading', 'e2'),
        supportingDocument('invoice'),
        supportingDocument('sale-account'),
      ],
      position: [],
    },
  };
}

/** Everything a letter of the invented delivery is made of. */
export async function letterInput(
  kind: TemplatedLetterKind,
  more: Partial<LetterInput> = {},
  sample: SampleOptions = {},
): Promise<LetterInput> {
  const { state, assessment, exhibits, fingerprint } = await sampleInput(sample);
  return {
    kind,
    state,
    assessment,
    exhibits,
    fingerprint,
    language: 'en',
    paper: 'Letter',
    madeAt: BUILT_AT,
    enclosed: [{ name: 'dossier.pdf', what: 'dossier', bytes: 812_345, sha256: hashOf('dossier') }],
    templates: await carrierTemplates(),
    claim: sampleClaim(),
    day: { date: '2026-08-10', zone: 'America/Chicago' } as LetterInput['day'],
    to: { name: 'Plainsview Grocers', address: '4 Orchard Way, Omaha NE' },
    reasons: [],
    items: [],
    firm: false,
    disallowsRest: false,
    loading: false,
    ...more,
  };
}
