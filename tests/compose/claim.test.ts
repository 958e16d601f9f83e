import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import type { PreparedImages } from '../../src/compose/exhibit-images.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { loadLanguageWords } from '../../src/compose/language.js';
import { carrierTemplates } from '../../src/compose/templates.js';
import { deadlineBlocks } from '../../src/compose/view/claim/deadlines.js';
import { type View, viewOf } from '../../src/compose/view/context.js';
import type { ClaimDeadline, DeadlineTime } from '../../src/core/model/results.js';
import type { CalendarDay, Zone } from '../../src/core/model/time.js';
import { type Block, type Cell, type Inline, type Section, wordsOf } from '../../src/core/words/blocks.js';
import { sampleInput } from './sample.js';
import { withClaim } from './sample-claim.js';

const inlines = (cell: Cell): readonly Inline[] => ('is' in cell ? cell.of : cell);
const cellText = (cell: Cell) => wordsOf(inlines(cell)).replaceAll('\u00a0', ' ');

/** The words of a section in the order of the page, one line for a paragraph, a fact or a row. */
function linesOf(blocks: readonly Block[]): string[] {
  return blocks.flatMap((block) => {
    switch (block.is) {
      case 'paragraph':
      case 'none':
        return [cellText(block.of)];
      case 'heading':
        return [`# ${block.text}`];
      case 'facts':
        return block.facts.map(({ label, value }) => `${label}: ${cellText(value)}`);
      case 'table':
        return block.rows.map((row) => row.map(cellText).join(' | '));
      case 'list':
        return block.items.flatMap(linesOf);
      default:
        return [];
    }
  });
}

/** The sections need no pictures. */
const NO_PLATES: PreparedImages = {
  pictures: new Map(),
  documents: new Map(),
  bytes: 0,
  quality: { longest: 1600, quality: 80 },
};

let sample: ComposeInput;
beforeAll(async () => {
  sample = await sampleInput();
});

async function documentOf(input: ComposeInput) {
  const { job } = await prepareDossier({ ...input, plates: NO_PLATES });
  return job.document;
}
const sectionOf = (sections: readonly Section[], wanted: 'claim' | 'position') => {
  const section = sections.find(({ id }) => id === wanted);
  if (section === undefined) throw new Error('no section on claims');
  return section;
};

const assessmentOf = (input: ComposeInput) => documentOf({ ...input, volume: 'assessment' });

describe('a claim in the dossier', () => {
  let document: Awaited<ReturnType<typeof documentOf>>;
  let lines: string[];
  beforeAll(async () => {
    document = await documentOf(withClaim(sample));
    lines = linesOf(sectionOf(document.sections, 'claim').blocks);
  });
  const line = (start: string) => lines.find((one) => one.startsWith(start));

  it('stands between arrival and the exhibits', () => {
    const ids = document.sections.map(({ id }) => id);
    expect(ids.slice(ids.indexOf('arrival'), ids.indexOf('exhibits') + 1)).toEqual([
      'arrival',
      'claim',
      'method',
      'custody',
      'verify',
      'exhibits',
    ]);
  });

  it('is not there without a claim', async () => {
    const { sections, cover } = await documentOf(sample);
    expect(sections.map(({ id }) => id)).not.toContain('claim');
    expect(wordsOf(cover.happened)).not.toMatch(/claim/);
  });

  it('is told as it was received, without a judgment of it', () => {
    expect(lines).toContain('Claimant: Plainsview Grocers DC 4 (receiver), 4 Plain St, Omaha NE');
    expect(line('Received')).toMatch(/^Received: Mon Aug 3, 2026 CDT, by e-mail \(\d+\)$/);
    expect(lines).toContain('Claimed amount: USD 6,240.00');
    expect(lines).toContain('Lines: Romaine 24s');
    expect(line('What the letter says')).toMatch(/that the carrier is liable: not said/);
    expect(lines.join('\n')).not.toMatch(/not in the record|governs:|Offer|USD 3,000|care alone/);
  });
});

describe('the position on a claim, in the assessment', () => {
  let document: Awaited<ReturnType<typeof documentOf>>;
  let lines: string[];
  beforeAll(async () => {
    document = await assessmentOf(withClaim(sample));
    lines = linesOf(sectionOf(document.sections, 'position').blocks);
  });
  const line = (start: string) => lines.find((one) => one.startsWith(start));

  it('cautions that local law and the contract decide', () => {
    expect(lines[0]).toMatch(/Local law and the contract of carriage decide/);
    expect(lines[0]).toMatch(/Nothing here is an admission, an offer or legal advice/);
  });

  it('says what governs on whose word, and which papers of the claim are not on file', () => {
    expect(line('What governs')).toMatch(/by the bill of lading; Clause 7 of the bill of lading \(\d+\)$/);
    expect(line('Papers behind it')).toMatch(/bill of lading \(\d+\); account of sale \(not in the record\)/);
    expect(lines).toContain('Lines: Romaine 24s. What is about other lines alone is not weighed below.');
  });

  it('says what is due when, under which terms, and what was done', () => {
    expect(line('Acknowledge the claim')).toMatch(
      /Only if this governs: by the bill\. \| carrier \| Mon Aug 3, 2026 CDT \(\d+\): the claim was received \| Wed Sep 2, 2026 CDT \| done, Mon Aug 10, 2026 CDT \| 49 CFR 370\.5\(a\) \(as others quote it\)/,
    );
    expect(line('Least time to file')).toMatch(
      /Set by the contract: Clause 9 \(\d+\).*no deadline by itself/,
    );
  });

  it('shows each thing that must be shown, by whom, with its exhibits', () => {
    const table = sectionOf(document.sections, 'position').blocks.flatMap((block) =>
      block.is === 'table' && block.columns.length === 6 && block.columns[5]?.title === 'As it stands'
        ? block.rows
        : [],
    );
    expect(table.map((row) => [cellText(row[0] ?? []), cellText(row[1] ?? [])])).toEqual([
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
    const input = sample;
    const findings = input.assessment.findings.filter(({ id }) => id !== 'arrival-supports-origin');
    const { sections } = await assessmentOf(
      withClaim({ ...input, assessment: { ...input.assessment, findings } }),
    );
    const text = linesOf(sectionOf(sections, 'position').blocks).join('\n');
    expect(text).toMatch(/No excepted cause has evidence in this record/);
    expect(text).toMatch(/Excepted cause \| carrier \| – .*against the carrier/);
  });

  it('works the amounts out from papers, each linked, and says what is not in the sum', () => {
    expect(line('Market value at destination, sound | Romaine 24s | market report')).toMatch(
      /USD 14\.25 × 400 cartons \| USD 5,700\.00 \| \d+$/,
    );
    expect(line('Value, sound')).toMatch(/USD 5,700\.00 – 6,240\.00 \| \d+$/);
    expect(line('Less: net salvage')).toMatch(/ USD 1,179\.36 /);
    expect(lines).toContain('By the papers: USD 4,685.64 – 5,225.64');
    expect(line('Cost of disposal: no paper behind it')).toMatch(/not in the sum\. \(entry 71\)$/);
    expect(line('Freight paid is in the market value')).toBeDefined();
    expect(lines.filter((one) => one.startsWith('More is valued'))).toHaveLength(1);
  });

  it('says that counted goods do not add up', () => {
    expect(line('Romaine 24s | 1280 | 880 | 390')).toMatch(/does not come to what was shipped/);
  });

  it('is named on the cover, by number and amount', () => {
    expect(cellText(document.cover.happened)).toMatch(/; claim 2026-014 for USD 6,240\.00\.$/);
  });

  it('names several claims by their numbers', async () => {
    const input = withClaim(sample);
    const [claim] = input.assessment.claims ?? [];
    if (claim === undefined) throw new Error('no claim');
    const second = { ...claim, received: { ...claim.received, ourNumber: '2026-015' } };
    const { sections, cover } = await assessmentOf({
      ...input,
      assessment: { ...input.assessment, claims: [claim, second] },
    });
    const found = linesOf(sectionOf(sections, 'position').blocks);
    expect(found).toContain('# Claim 2026-014');
    expect(found).toContain('# Claim 2026-015');
    expect(cellText(cover.happened)).toMatch(/; claim 2026-014, 2026-015\.$/);
  });
});

describe('a clock', () => {
  const day = (date: string): DeadlineTime => ({
    is: 'day',
    day: { date: date as CalendarDay, zone: 'America/Chicago' as Zone },
    evidence: [],
  });
  const deadline: ClaimDeadline = {
    id: 'reservation',
    title: { en: 'Reservation', es: 'Reserva' },
    duty: { en: 'Make a reservation', es: 'Hacer una reserva' },
    source: 'CMR, article 30(1)',
    basis: 'read',
    binds: 'carrier',
    nature: 'deadline',
    governs: [],
    starts: { en: 'delivery', es: 'la entrega' },
    state: 'running',
  };
  let view: View;
  beforeAll(async () => {
    const { labels, ...words } = await loadLanguageWords('en', await carrierTemplates());
    view = viewOf(sample, words, labels);
  });
  const told = (change: Partial<ClaimDeadline>) => {
    const [row = []] = deadlineBlocks(view, [{ ...deadline, ...change }], 'claim-clocks').flatMap((block) =>
      block.is === 'table' ? block.rows : [],
    );
    return { words: row.map(cellText).join(' | '), alert: !Array.isArray(row[4]) };
  };

  it.each<[string, Partial<ClaimDeadline>, RegExp, boolean]>([
    ['late for the carrier', { state: 'overdue', due: day('2026-09-02') }, /\| overdue \|/, true],
    [
      'done late by the carrier',
      { state: 'done-late', done: day('2026-09-05') },
      /done late, Sat Sep 5, 2026 CDT/,
      true,
    ],
    ['past for another', { state: 'overdue', binds: 'receiver' }, /\| has passed \|/, false],
    ['a least time that is over', { state: 'overdue', nature: 'least-time' }, /\| has passed \|/, false],
    ['that comes round again', { turn: 2 }, /^Reservation \(no\. 2\)\./, false],
    ['at one stop', { stop: 'drop-1' }, /Make a reservation\. Plainsview DC 4/, false],
    [
      'with days left out',
      {
        due: day('2026-07-24'),
        counting: {
          leftOut: [{ date: '2026-07-19' as CalendarDay, why: 'sunday' }],
          holidays: { list: 'place-of-delivery', known: false },
        },
      },
      /Fri Jul 24, 2026 CDT \(days not counted: 1; public holidays not known\)/,
      false,
    ],
    [
      'of hours at work',
      {
        due: day('2026-07-17'),
        counting: {
          leftOut: [],
          hours: { from: '08:00', to: '17:00', assumed: true, counted: 'at-work' },
          ifEveryHourCounts: day('2026-07-16'),
        },
      },
      /Fri Jul 17, 2026 CDT; if every hour counts: Thu Jul 16, 2026 CDT \(business hours, assumed, 08:00–17:00, only these hours counted\)/,
      false,
    ],
    [
      'that stands still',
      { stopped: { from: { date: '2026-08-03' as CalendarDay, zone: 'UTC' as Zone } } },
      /\| – \(stands still since Mon Aug 3, 2026 UTC\)/,
      false,
    ],
    [
      'shorter by contract than the rule lets it',
      { due: day('2026-12-01'), leastDue: day('2027-04-16') },
      /Tue Dec 1, 2026 CST; by the rule not before: Fri Apr 16, 2027 CDT/,
      false,
    ],
  ])('%s', (_, change, words, alert) => {
    const row = told(change);
    expect(row.words).toMatch(words);
    expect(row.alert).toBe(alert);
  });
});

describe('in Spanish', () => {
  it('clocks and words are Spanish', async () => {
    const show = { temperature: '°F', language: 'es', paper: 'A4' };
    const { sections } = await assessmentOf(withClaim(await sampleInput({ facts: { show } })));
    const text = linesOf(sectionOf(sections, 'position').blocks).join('\n');
    expect(text).toMatch(/el cuidado solo no basta/);
    expect(text).toMatch(/Acusar recibo del reclamo/);
    expect(text).not.toMatch(/Acknowledge|undefined/);
  });
});
