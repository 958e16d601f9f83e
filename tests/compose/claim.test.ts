import { beforeAll, describe, expect, it } from 'vitest';
import { type Block, type Cell, type Inline, type Section, wordsOf } from '../../src/compose/blocks.js';
import { prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { sampleInput } from './sample.js';
import { withClaim } from './sample-claim.js';

const inlines = (cell: Cell): readonly Inline[] => ('is' in cell ? cell.of : cell);
const said = (cell: Cell) => wordsOf(inlines(cell)).replaceAll('\u00a0', ' ');

/** The words of a section in the order of the page, one line for a paragraph, a fact or a row. */
function linesOf(blocks: readonly Block[]): string[] {
  return blocks.flatMap((block) => {
    switch (block.is) {
      case 'paragraph':
      case 'none':
        return [said(block.of)];
      case 'heading':
        return [`# ${block.text}`];
      case 'facts':
        return block.facts.map(({ label, value }) => `${label}: ${said(value)}`);
      case 'table':
        return block.rows.map((row) => row.map(said).join(' | '));
      case 'list':
        return block.items.flatMap(linesOf);
      default:
        return [];
    }
  });
}

async function documentOf(input: ComposeInput) {
  const { job } = await prepareDossier(input);
  return job.document;
}
const claimOf = (sections: readonly Section[]) => {
  const section = sections.find(({ id }) => id === 'claim');
  if (section === undefined) throw new Error('no section on claims');
  return section;
};

describe('the section on claims', () => {
  let document: Awaited<ReturnType<typeof documentOf>>;
  let lines: string[];
  beforeAll(async () => {
    document = await documentOf(withClaim(await sampleInput()));
    lines = linesOf(claimOf(document.sections).blocks);
  });
  const line = (start: string) => lines.find((one) => one.startsWith(start));

  it('stands after arrival and before the findings', () => {
    const ids = document.sections.map(({ id }) => id);
    expect(ids.slice(ids.indexOf('arrival'), ids.indexOf('missing') + 1)).toEqual([
      'arrival',
      'claim',
      'findings',
      'missing',
    ]);
  });

  it('is not there without a claim', async () => {
    const { sections, cover } = await documentOf(await sampleInput());
    expect(sections.map(({ id }) => id)).not.toContain('claim');
    expect(wordsOf(cover.happened)).not.toMatch(/claim/);
  });

  it('cautions that local law and the contract decide', () => {
    expect(lines[0]).toMatch(/Local law and the contract of carriage decide/);
    expect(lines[0]).toMatch(/Nothing here is an admission, an offer or legal advice/);
  });

  it('says who claims what, when, and what governs on whose word', () => {
    expect(lines).toContain('Claimant: Plainsview Grocers DC 4 (receiver), 4 Plain St, Omaha NE');
    expect(line('Received')).toMatch(/^Received: Mon 3 Aug 2026 CDT, by e-mail \(\d+\)$/);
    expect(lines).toContain('Claimed amount: 6,240.00 USD');
    expect(lines).toContain('Lines: Romaine 24s. What is about other lines alone is not weighed below.');
    expect(line('What governs')).toMatch(/by the bill of lading; Clause 7 of the bill of lading \(\d+\)$/);
    expect(line('What the letter says')).toMatch(/that the carrier is liable: not said/);
    expect(line('Papers behind it')).toMatch(/bill of lading \(\d+\); account of sale \(not in the record\)/);
  });

  it('says what is due when, under which terms, and what was done', () => {
    expect(line('Acknowledge the claim')).toMatch(
      /Only if this governs: by the bill\. \| carrier \| Mon 3 Aug 2026 CDT \(\d+\): the claim was received \| Wed 2 Sep 2026 CDT \| done, Mon 10 Aug 2026 CDT \| 49 CFR 370\.5\(a\) \(as others quote it\)/,
    );
    expect(line('Least time to file')).toMatch(
      /Set by the contract: Clause 9 \(\d+\).*no deadline by itself/,
    );
  });

  it('shows each thing that must be shown, by whom, with its exhibits', () => {
    const table = claimOf(document.sections).blocks.flatMap((block) =>
      block.is === 'table' && block.columns.length === 6 && block.columns[5]?.title === 'As it stands'
        ? block.rows
        : [],
    );
    expect(table.map((row) => [said(row[0] ?? []), said(row[1] ?? [])])).toEqual([
      ['Good condition as the carrier received the goods', 'claimant'],
      ['Damaged on arrival', 'claimant'],
      ['Amount of the damage', 'claimant'],
      ['Freedom from negligence: instructions followed, care on the way', 'carrier'],
      ['Excepted cause: act of the shipper', 'carrier'],
    ]);
    const against = inlines(table[3]?.[3] ?? []);
    expect(against.some((part) => part.is === 'exhibit')).toBe(true);
    expect(lines.join('\n')).toMatch(/care alone is not enough/);
  });

  it('says of a record without any excepted cause that care does not free the carrier', async () => {
    const input = await sampleInput();
    const findings = input.assessment.findings.filter(({ id }) => id !== 'warm-at-loading-and-delivery');
    const { sections } = await documentOf(
      withClaim({ ...input, assessment: { ...input.assessment, findings } }),
    );
    const text = linesOf(claimOf(sections).blocks).join('\n');
    expect(text).toMatch(/No excepted cause has evidence in this record/);
    expect(text).toMatch(/Excepted cause \| carrier \| – .*against the carrier/);
  });

  it('works the amounts out from papers, each linked, and says what is not in the sum', () => {
    expect(line('Market value at destination, sound | Romaine 24s | market report')).toMatch(
      /14\.25 USD × 400 cartons \| 5,700\.00 USD \| \d+$/,
    );
    expect(line('Value, sound')).toMatch(/5,700\.00 – 6,240\.00 USD \| \d+$/);
    expect(line('Less: net salvage')).toMatch(/ 1,179\.36 USD /);
    expect(lines).toContain('By the papers: 4,685.64 – 5,225.64 USD');
    expect(line('Cost of disposal: no paper behind it')).toMatch(/not in the sum\. \(entry 71\)$/);
    expect(line('Freight paid is in the market value')).toBeDefined();
    expect(lines.filter((one) => one.startsWith('More is valued'))).toHaveLength(1);
  });

  it('says that counted goods do not add up', () => {
    expect(line('Romaine 24s | 1280 | 880 | 390')).toMatch(/does not come to what was shipped/);
  });

  it('is named on the cover, by number and amount', () => {
    expect(said(document.cover.happened)).toMatch(/; claim 2026-014 for 6,240\.00 USD\.$/);
  });

  it('names several claims by their numbers', async () => {
    const input = withClaim(await sampleInput());
    const [claim] = input.assessment.claims ?? [];
    if (claim === undefined) throw new Error('no claim');
    const second = { ...claim, received: { ...claim.received, ourNumber: '2026-015' } };
    const { sections, cover } = await documentOf({
      ...input,
      assessment: { ...input.assessment, claims: [claim, second] },
    });
    const found = linesOf(claimOf(sections).blocks);
    expect(found).toContain('# Claim 2026-014');
    expect(found).toContain('# Claim 2026-015');
    expect(said(cover.happened)).toMatch(/; claim 2026-014, 2026-015\.$/);
  });
});

describe('in Spanish', () => {
  it('clocks and words are Spanish', async () => {
    const show = { temperature: '°F', language: 'es', paper: 'A4' };
    const { sections } = await documentOf(withClaim(await sampleInput({ facts: { show } })));
    const text = linesOf(claimOf(sections).blocks).join('\n');
    expect(text).toMatch(/el cuidado solo no basta/);
    expect(text).toMatch(/Acusar recibo del reclamo/);
    expect(text).not.toMatch(/Acknowledge|undefined/);
  });
});
