import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { draftCertificate } from '../../../src/compose/letters/certificate.js';
import { typesetLetter, writeLetter } from '../../../src/compose/letters/compose.js';
import { TEMPLATED_LETTER_KINDS } from '../../../src/compose/letters/kinds.js';
import { WIDTH } from '../../../src/compose/letters/text.js';
import { carrierTemplates } from '../../../src/compose/templates.js';
import { day } from '../../../src/core/model/claim.js';
import { language } from '../../../src/core/model/delivery.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { Block } from '../../../src/core/words/blocks.js';
import { fontsOf, squeezed, textBeyond, textOf } from '../pages.js';
import { SAMPLE_FACTS } from '../sample.js';
import { hashOf } from '../sample-evidence.js';
import { letterInput, sampleClaim } from './sample-letter.js';

const RECEIVED_ON = { date: '2026-08-03', zone: 'America/Chicago' };
const BLANK = /\[________ ([^\]]+)\]/g;
const flat = (text: string) => text.replace(/\s+/g, ' ');
const blanksIn = (text: string) => [...flat(text).matchAll(BLANK)].map(([, name]) => name);

/** Lists of a letter by the paragraph that leads them. */
function listsOf(body: readonly Block[]): { lead: string; items: string[] }[] {
  return body.flatMap((block, i) => {
    const before = body[i - 1];
    return block.is === 'list' && before?.is === 'paragraph'
      ? [{ lead: JSON.stringify(before.of), items: block.items.map((item) => JSON.stringify(item)) }]
      : [];
  });
}

const every = language.options.flatMap((name) => TEMPLATED_LETTER_KINDS.map((kind) => [kind, name] as const));

describe.each(every)('the letter %s in %s', (kind, name) => {
  it('is plain text in short lines, without markup', async () => {
    const { text } = await writeLetter(await letterInput(kind, { language: name }));
    for (const line of text.split('\n').filter((one) => one.includes(' ')))
      expect(line.length, line).toBeLessThanOrEqual(WIDTH);
    expect(text).not.toMatch(/\*\*|\{\{|undefined|\[object|exhibit:|\\|`| {2,}\S.* {2,}|\u00a0/);
    expect(text).toContain('2026-0714-A');
  });

  it('lists each place to fill in, as it stands in the text', async () => {
    for (const claim of [sampleClaim(), { entries: sampleClaim().entries }]) {
      const { text, blanks } = await writeLetter(await letterInput(kind, { language: name, claim }));
      expect(blanksIn(text)).toEqual(blanks);
    }
  });

  it('names an exhibit with every sentence that claims a fact', async () => {
    const { document } = await writeLetter(await letterInput(kind, { language: name, disallowsRest: true }));
    for (const { lead, items } of listsOf(document.body))
      if (/the exhibits it rests on|with exhibits:|words rest on|se apoya|con sus anexos:/.test(lead))
        for (const item of items) expect(item).toMatch(/"is":"exhibit"|"is":"strong".*________/);
    const claimed = document.body
      .map((block) => JSON.stringify(block))
      .filter((block) => block.includes('12,480.50'));
    for (const block of claimed) expect(block).toMatch(/"is":"exhibit","number":1/);
  });
});

// Setting pages takes longest: each letter once, one language after the other.
const alternately = TEMPLATED_LETTER_KINDS.map((kind, i) => [kind, i % 2 === 0 ? 'en' : 'es'] as const);

describe.each(alternately)('the pages of the letter %s in %s', (kind, name) => {
  it('are set, with all its fonts inside and nothing in the margin', async () => {
    const paper = name === 'es' ? 'A4' : 'Letter';
    const input = await letterInput(kind, { language: name, paper });
    const { document, blanks } = await writeLetter(input);
    const { pdf, pages, warnings } = await typesetLetter(document, input);
    expect(warnings).toEqual([]);
    expect(pages).toBe(1);
    const text = squeezed(await textOf(pdf));
    for (const words of [document.subject, 'Plainsview Grocers', hashOf('dossier'), ...blanks])
      expect(text).toContain(squeezed(words));
    expect(await textBeyond(pdf, 60)).toEqual([]);
    for (const font of await fontsOf(pdf)) expect(font.embedded, font.name).toBe(true);
    const raw = Buffer.from(pdf).toString('latin1');
    expect(raw).toMatch(name === 'es' ? /\/Lang\s*\(es/ : /\/Lang\s*\(en/);
    expect(raw).toMatch(/\/MarkInfo/);
    expect(raw).toMatch(/pdfaid:part>3</);
  });
});

describe('what a letter says', () => {
  it.each(TEMPLATED_LETTER_KINDS)(
    'of a record that shows nothing: %s has no sentence of a fact',
    async (kind) => {
      const input = await letterInput(kind, { claim: { entries: [] }, enclosed: [] }, { change: () => [] });
      const { document, blanks } = await writeLetter({
        ...input,
        assessment: { ...input.assessment, findings: [] },
      });
      expect(JSON.stringify(document.body)).not.toContain('"is":"exhibit"');
      expect(document.exhibitsNote).toBeUndefined();
      if (kind === 'notice-to-shipper' || kind === 'reservation' || kind === 'notice-to-insurer')
        expect(blanks.length).toBeGreaterThan(0);
    },
  );

  it('of findings whose exhibits the reader does not have: nothing', async () => {
    const input = await letterInput('denial');
    const said = async (exhibits: typeof input.exhibits) => (await writeLetter({ ...input, exhibits })).text;
    expect(await said(input.exhibits)).toMatch(/Seal 0044718/);
    const without = input.exhibits.filter(({ kind }) => kind !== 'seal');
    expect(await said(without)).not.toMatch(/Seal 0044718/);
  });

  it('names the exhibits also behind a sentence that has none in the dossier', async () => {
    const input = await letterInput('notice-to-shipper');
    const silent = {
      id: 'no-instruction-on-bill',
      weighs: 'open' as const,
      element: 'instructions-followed' as const,
      weight: 62,
      evidence: input.exhibits.slice(2, 3).map(({ evidence }) => evidence),
      by: 'no-instruction-on-bill',
      facts: { line: { is: 'line' as const, line: 'romaine' } },
    };
    const assessment = { ...input.assessment, findings: [silent] };
    expect(flat((await writeLetter({ ...input, assessment })).text)).toMatch(/- Romaine 24s.* \(Ex\. 3\)\. /);
  });

  it('of a position: only what the table puts on the side of the carrier, in its order', async () => {
    const input = await letterInput('denial');
    const { claim } = input;
    if (claim?.result === undefined) throw new Error('the sample has a result');
    const point = (id: string) => ({
      from: {
        is: 'finding' as const,
        id,
        ...omitUndefined({ line: id.startsWith('warm') ? 'romaine' : undefined }),
      },
      evidence: [],
    });
    const row = (forCarrier: string[], againstCarrier: string[]) => ({
      element: 'freedom-from-negligence' as const,
      by: 'carrier' as const,
      forCarrier: forCarrier.map(point),
      againstCarrier: againstCarrier.map(point),
      weak: [],
      stands: 'disputed' as const,
    });
    const position = [row(['seal-same', 'warm-at-loading-told'], ['arrival-supports-origin'])];
    const placed = { ...claim, result: { ...claim.result, position } };
    const text = flat((await writeLetter({ ...input, claim: placed })).text);
    expect(text).toMatch(/Seal 0044718.*was told of the pulps/);
    expect(text).not.toMatch(/both at loading/);
  });

  it('of what speaks against the carrier: nothing', async () => {
    const { text } = await writeLetter(await letterInput('denial'));
    expect(flat(text)).toMatch(/What the record of the delivery shows/);
    expect(flat(text)).not.toMatch(/differ|refused|outside|unexplained/);
  });

  it('of an offer: that it admits nothing, and whether it disallows the rest is what the person chose', async () => {
    const said = async (more: object) => flat((await writeLetter(await letterInput('offer', more))).text);
    const open = await said({});
    expect(open).toMatch(
      /firm compromise settlement offer of USD 3,000 \(entry 92 of the record\) in full settlement/,
    );
    expect(open).toMatch(/not an admission of liability/);
    expect(open).toMatch(/disallows no part of the claim/);
    const closed = await said({ disallowsRest: true, amount: { amount: '2500.00', currency: 'USD' } });
    expect(closed).toMatch(/We offer USD 2,500\.00 in full settlement/);
    expect(closed).toMatch(/We disallow the claim beyond this amount/);
    expect(closed).toMatch(/The romaine was warm when it was loaded \(entry 93 of the record\)\./);
  });

  it('of papers: those that are there by their exhibits, the others as wanted; a place to fill in when nobody has looked', async () => {
    const { text } = await writeLetter(await letterInput('acknowledgement'));
    expect(flat(text)).toMatch(/we have: - the bill of lading \(Ex\. 2\) To process/);
    expect(flat(text)).toMatch(/please provide: - the invoice/);
    expect(text).toContain('2026-014');
    const unknown = await letterInput('acknowledgement', { claim: { entries: sampleClaim().entries } });
    expect((await writeLetter(unknown)).blanks).toContain('papers that are still needed');
  });

  it('of a reservation: the pulps in figures, the words short, and what they rest on', async () => {
    const { document, text } = await writeLetter(await letterInput('reservation'));
    const words = document.body.find((block) => block.is === 'quote');
    expect(flat(text)).toMatch(/Romaine 24s: \d pulps before loading, 39\.4 °F .* to 41\.2 °F/);
    expect(JSON.stringify(words)).not.toContain('"is":"exhibit"');
    expect(flat(text)).toMatch(/What these words rest on: - Romaine 24s: Pulp temperature \(Ex\. \d/);
  });

  it('of how the load was placed: only when the person says that the shipper loaded', async () => {
    const input = await letterInput('notice-to-shipper');
    const near = {
      id: 'rows-hard-to-walls',
      weighs: 'open' as const,
      element: 'care-in-transit' as const,
      weight: 40,
      evidence: [input.state.evidence[0]?.evidence].flatMap((id) => (id === undefined ? [] : [id])),
      by: 'rows-hard-to-walls',
      facts: {
        rows: '3',
        least: { is: 'length' as const, metres: 0 },
        limit: { is: 'length' as const, metres: 0.05 },
      },
    };
    const assessment = { ...input.assessment, findings: [...input.assessment.findings, near] };
    const said = async (loading: boolean) => (await writeLetter({ ...input, assessment, loading })).text;
    expect(await said(false)).not.toMatch(/rows? 3/i);
    expect(await said(true)).toMatch(/rows? 3/i);
  });
});

describe('letters by the texts', () => {
  const entry = (more: Record<string, unknown>) => ({ claim: 'c1', evidence: ['e1'], ...more });
  const usd = (amount: string) => ({ amount, currency: 'USD' });
  const RECEIVED = entry({
    is: 'received',
    claimant: { name: 'Plainsview Grocers', role: 'receiver' },
    ourNumber: '2026-014',
    received: { date: '2026-08-03', zone: 'America/Chicago' },
    amount: usd('9000'),
  });
  const amount = (item: string, total: string, line?: string) =>
    entry({
      is: 'amount',
      item,
      saidBy: 'claimant',
      total: usd(total),
      ...(line === undefined ? {} : { line }),
    });
  const letter = async (
    kind: Parameters<typeof letterInput>[0],
    notes: readonly unknown[],
    governs: 'cmr' | 'us-carriage-by-law' | 'unknown',
    more: Parameters<typeof letterInput>[1] = {},
  ) => {
    const claim = sampleClaim(notes);
    if (claim.result !== undefined) claim.result.governs = governs;
    const { text, blanks } = await writeLetter(await letterInput(kind, { claim, ...more }));
    return { text: flat(text), blanks };
  };

  it('a declination goes item by item, and asks for the reason of an item that has none', async () => {
    const notes = [
      RECEIVED,
      amount('market-value', '8000', 'romaine'),
      amount('inspection-cost', '200'),
      amount('salvage', '900'),
    ];
    const items = [{ item: 'romaine', reason: 'warm when it was loaded' }];
    const { text, blanks } = await letter('denial', notes, 'us-carriage-by-law', {
      items,
      reasons: ['warm'],
    });
    expect(text).toMatch(
      /Item by item: - Romaine 24s, Market value at destination, sound \(USD 8,000\): warm when it was loaded/,
    );
    expect(text).toMatch(/Cost of inspection \(USD 200\) \(Ex\. 1\): \[________ reason for this item\]/);
    expect(text).not.toMatch(/USD 900 /);
    expect(blanks).toEqual(['reason for this item']);
  });

  it('CMR 32(2): a declination returns the documents; elsewhere it does not speak of it', async () => {
    expect((await letter('denial', [RECEIVED], 'cmr')).blanks).toContain('documents returned, one by one');
    expect((await letter('denial', [RECEIVED], 'us-carriage-by-law')).text).not.toMatch(/returned/);
  });

  it('49 U.S.C. 14706(e): a declination disallows, in full or in part, with reasons', async () => {
    expect((await letter('denial', [RECEIVED], 'unknown')).text).toMatch(
      /disallow it in full, for these reasons: - \[________/,
    );
    const part = entry({
      is: 'declined',
      on: RECEIVED_ON,
      inWriting: true,
      part: usd('400'),
      reasons: ['late'],
    });
    expect((await letter('denial', [RECEIVED, part], 'unknown')).text).toMatch(
      /disallow it in the amount of USD 400,/,
    );
  });

  it('49 CFR 370.9(a): a firm offer says so in the words of the rule', async () => {
    expect((await letter('offer', [RECEIVED], 'us-carriage-by-law', { firm: true })).text).toMatch(
      /firm compromise settlement offer of/,
    );
    expect((await letter('offer', [RECEIVED], 'us-carriage-by-law')).text).not.toMatch(/firm compromise/);
  });

  it('49 CFR 370.9(a): a status report names the day of the next', async () => {
    const claim = sampleClaim([RECEIVED]);
    if (claim.result === undefined) throw new Error('the sample has a result');
    const due = (date: string) => ({
      id: 'us-status',
      title: { en: '', es: '' },
      duty: { en: '', es: '' },
      starts: { en: '', es: '' },
      source: '',
      basis: 'read' as const,
      binds: 'carrier' as const,
      nature: 'deadline' as const,
      governs: [],
      state: 'running' as const,
      due: { is: 'day' as const, day: day.parse({ date, zone: 'America/Chicago' }), evidence: [] },
    });
    claim.result.governs = 'us-carriage-by-law';
    claim.result.clocks = [due('2026-08-09'), due('2026-10-08')];
    const { text } = await writeLetter(await letterInput('status-report', { claim }));
    expect(flat(text)).toMatch(/pending and has not been concluded\. Reason for the delay:/);
    expect(flat(text)).toMatch(/report its status by October 8, 2026\./);
  });

  it('49 CFR 370.7(b): asks for the invoice, or in its place a certification of values', async () => {
    const { text } = await letter('request-for-papers', [RECEIVED], 'us-carriage-by-law');
    expect(text).toMatch(
      /the invoice, a copy of it, or an exact copy or extract that you certify to be true and correct .*; or, in its place, your certification of the prices or values, with trade or other discounts/,
    );
  });

  it('CMR 8(2): a reservation has its grounds and the sender’s agreement; a bill of lading has neither', async () => {
    const { text, blanks } = await letter('reservation', [RECEIVED], 'cmr');
    expect(text).toMatch(/Grounds of the reservation/);
    expect(text).toMatch(/binds the sender only if he has expressly agreed in the consignment note/);
    expect(blanks).toContain('signature of the sender');
    expect((await letter('reservation', [RECEIVED], 'us-carriage-by-law')).text).not.toMatch(/sender/);
  });

  it('7 CFR 46.2(dd)(3): a notice of rejection goes to the consignor, says whose it is and asks who told whom', async () => {
    const { text, blanks } = await letter('rejection-notice', [], 'unknown');
    expect(text).toMatch(/as consignor of delivery/);
    expect(text).toMatch(/does not say that the receiver itself gave you notice/);
    expect(blanks).toContain('who said it, to whom, how, at what time');
  });

  it('7 CFR 51.24: an appeal states what is appealed and why, and goes with the certificate and other information', async () => {
    const { text, blanks } = await letter('inspection-appeal', [], 'unknown', {
      reasons: ['Only the rear pallets were looked at.'],
    });
    expect(text).toMatch(/Reasons: - Only the rear pallets were looked at\./);
    expect(text).toMatch(/A copy of the certificate, or of the inspection report, must go with/);
    expect(blanks).toContain('lot, certificate number, place and time of the inspection, and what it found');
    expect(blanks).toContain(
      'other information received on quality or condition at the time of that inspection, or none',
    );
  });

  it('49 CFR 370.3(e): claimants are told of conflicting claims, and asked to substantiate their right', async () => {
    const { text, blanks } = await letter('similar-claims', [RECEIVED], 'us-carriage-by-law');
    expect(text).toMatch(/conflicting or overlapping claims, and each must further substantiate the title/);
    expect(text).toMatch(/admits no liability and disallows no part of any claim/);
    expect(blanks).toContain('carriers to whom a similar claim was presented');
  });

  it('49 U.S.C. 14706(b): recourse is for what was required to be paid, and shown, with the cost of a defense', async () => {
    const payment = {
      is: 'payment',
      claim: 'c1',
      by: 'carrier',
      on: RECEIVED_ON,
      amount: { amount: '3000', currency: 'USD' },
      evidence: ['e1'],
    };
    const { text, blanks } = await letter('recourse', [RECEIVED, payment], 'us-carriage-by-law');
    expect(text).toMatch(/We were required to pay: - USD 3,000, .*2026 \(Ex\. 1\)/);
    expect(blanks).toContain('expenses reasonably incurred in defending an action, or none');
  });

  it('49 CFR 370.11(a): a notice of a refused load says that the carrier will sell unless advised to the contrary', async () => {
    const { text, blanks } = await letter('refused-load', [], 'unknown');
    expect(text).toMatch(/Unless advised to the contrary, we will undertake to sell or dispose of them/);
    expect(text).toMatch(/fairly and equally protects the best interests of all persons having an interest/);
    expect(blanks).toEqual(
      expect.arrayContaining(['successive lot number', 'day and time by which instructions are needed']),
    );
  });
});

describe('what people write', () => {
  const HOSTILE = '{{ourNumber}} #panic("x") **b** [y](exhibit:3) <b> $x$ `c` \\ {{#each}}';
  const party = { name: HOSTILE };

  it('comes out as the letters it is, in text and on pages', async () => {
    const input = await letterInput(
      'denial',
      { to: { name: HOSTILE, address: HOSTILE }, reasons: [HOSTILE] },
      { facts: { parties: { ...SAMPLE_FACTS.parties, carrier: party, receiver: party } } },
    );
    const { document, text } = await writeLetter(input);
    expect(squeezed(text).split(squeezed(HOSTILE))).toHaveLength(1 + 5);
    const { pdf } = await typesetLetter(document, input);
    expect(squeezed(await textOf(pdf)).split(squeezed(HOSTILE))).toHaveLength(1 + 5);
  });

  it('and can’t be printed shows as what it is, with a warning', async () => {
    const input = await letterInput('denial', { reasons: ['hidden\u202e turn'] });
    const { document } = await writeLetter(input);
    const { warnings } = await typesetLetter(document, input);
    expect(warnings.join()).toMatch(/U\+202E/);
  });
});

describe('templates of a carrier’s own', () => {
  const own = mkdtempSync(join(tmpdir(), 'letters-'));
  afterAll(() => rmSync(own, { recursive: true, force: true }));
  const put = (name: string, text: string) => {
    mkdirSync(join(own, 'letters/en'), { recursive: true });
    writeFileSync(join(own, 'letters/en', name), text);
  };

  it('take the place of the shipped ones, one by one', async () => {
    put('denial.md', 'We answer {{claimant}}: no. {{blank "reasons"}}\n');
    put('labels.yaml', 'blank: { reasons: why not }\n');
    const templates = await carrierTemplates(own);
    const { text, blanks } = await writeLetter(await letterInput('denial', { templates }));
    expect(text).toMatch(/We answer Plainsview Grocers: no\. \[________ why not\]/);
    expect(blanks).toEqual(['why not']);
    expect((await writeLetter(await letterInput('offer', { templates }))).text).toMatch(/not an admission/);
  });

  it.each([
    ['a fact that there is not', '\n\n{{claiment}}', 3],
    ['a block that does not end', 'x\n{{#if claim}}\n', 3],
  ])('with %s are refused with file and line', async (_, text, row) => {
    put('denial.md', text);
    const templates = await carrierTemplates(own);
    await expect(writeLetter(await letterInput('denial', { templates }))).rejects.toMatchObject({
      code: 'bad-template',
      where: { file: join(own, 'letters/en/denial.md'), row },
    });
  });

  it('with a place to fill in that has no name are refused with its label', async () => {
    put('denial.md', '{{blank "colour"}}');
    const templates = await carrierTemplates(own);
    await expect(writeLetter(await letterInput('denial', { templates }))).rejects.toMatchObject({
      where: { field: 'blank.colour' },
    });
  });
});

describe('the draft of a certificate', () => {
  const drafted = async (name: (typeof language.options)[number]) => {
    const { kind: _, ...input } = await letterInput('denial', { language: name });
    const tool = { name: 'load-dossier', version: '0.1.0' };
    const draft = await draftCertificate({ ...input, tool, entryHash: (seq) => hashOf(`entry ${seq}`) });
    return { input, draft };
  };

  it('lists every exhibit with the hash of its file, or of its entry', async () => {
    const { input, draft } = await drafted('en');
    const { pdf } = await typesetLetter(draft.document, input);
    const text = squeezed(await textOf(pdf));
    expect(draft.document.annex?.rows).toHaveLength(input.exhibits.length);
    for (const { file, seq } of input.exhibits) {
      const hash = file?.sha256 ?? hashOf(`entry ${seq}`);
      expect(text).toContain(hash);
      expect(squeezed(draft.text)).toContain(hash);
    }
    expect(text).toContain(input.fingerprint.root);
  });

  it('is a draft that leaves to a person what only a person can say, and claims no admissibility', async () => {
    const { draft } = await drafted('en');
    const text = flat(draft.text);
    expect(text).toMatch(/DRAFT\. This is no certificate until a qualified person/);
    expect(text).toMatch(/It does not say that a court will admit/);
    // 28 U.S.C. 1746: "under penalty of perjury", and "under the laws of the United States of America" outside of it.
    expect(text).toMatch(/I declare under penalty of perjury that the foregoing is true and correct/);
    expect(text).toMatch(/under penalty of perjury under the laws of the United States of America/);
    expect(blanksIn(draft.text)).toEqual(draft.blanks);
    expect(draft.blanks).toEqual(
      expect.arrayContaining(['name of the qualified person', 'position', 'date', 'exceptions, or none']),
    );
  });

  it.each([
    ['803(6)(A): persons with knowledge', /by, or from information transmitted by, someone with knowledge/],
    ['803(6)(B)', /kept in the course of a regularly conducted activity of/],
    ['803(6)(C)', /making them was a regular practice of that activity/],
    [
      '901(b)(9), 902(13): instruments and systems',
      /generated by an electronic process or system that produces an accurate result/,
    ],
    ['902(14)', /process of digital identification/],
    [
      '902(12): records made abroad',
      /in a manner that, if falsely made, would subject the maker to a criminal penalty/,
    ],
    [
      '902(11): notice and inspection',
      /reasonable written notice, and the records and the certification are made available for inspection/,
    ],
  ])('has the words of Federal Rules of Evidence %s', async (_, words) => {
    const { draft } = await drafted('en');
    expect(flat(draft.text)).toMatch(words);
    expect(draft.text).not.toMatch(/from memory|or by an instrument/);
  });

  it('and a letter under a letterhead can be set as PDF/UA-1: the same pages are accessible', async () => {
    const own = mkdtempSync(join(tmpdir(), 'letterhead-'));
    const drawing =
      '<svg xmlns="http://www.w3.org/2000/svg" width="600" height="80"><rect width="600" height="80"/></svg>';
    writeFileSync(join(own, 'letterhead.svg'), drawing);
    const templates = await carrierTemplates(own);
    const { draft, input } = await drafted('en');
    const { document } = await writeLetter(await letterInput('denial'));
    for (const one of [draft.document, document]) {
      const { pdf } = await typesetLetter(one, { ...input, templates }, 'ua-1');
      expect(Buffer.from(pdf).toString('latin1')).toMatch(/pdfuaid:part>1</);
    }
    rmSync(own, { recursive: true, force: true });
  });

  it('in Spanish says that the English one is signed', async () => {
    const { draft } = await drafted('es');
    expect(flat(draft.text)).toMatch(/SOLO PARA LEER\. .* la forma inglesa/);
  });
});
