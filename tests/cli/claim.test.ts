import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
  await here.dossier('collect', here.put('claim.txt', 'We hold you liable.'), '-d', delivery);
});
afterAll(() => here.end());

const claim = (...args: string[]) => here.dossier('record', 'claim', ...args, '-d', delivery);
const count = () => here.entries(delivery).length;
const last = () => here.entries(delivery).at(-1);
const RECEIVED = [
  ...['received', 'Mock Elms Produce', '--as', 'receiver', '--number', 'NE-77', '--on', '2026-08-03'],
  ...['--amount', '$12,480.50 USD', '--ground', 'warm on arrival', 'frost', '--paper', 'e1'],
  ...['--says', 'shipment', 'amount', '--lacks', 'liability', '--made', 'written'],
];

describe('record claim', () => {
  it('needs a claim before anything is said of one', async () => {
    const { code, err } = await claim('terms', 'cmr');
    expect(code).toBe(2);
    expect(err).toMatch(/no claim is recorded\n.*record claim received/);
  });

  it('writes down who claims what, when, and what the letter says', async () => {
    const { code, out } = await claim(...RECEIVED);
    expect(code).toBe(0);
    expect(out).toContain('c1  claim of Mock Elms Produce (receiver), our number 2026-0714-A c1');
    expect(last()).toMatchObject({
      type: 'claim-noted',
      body: {
        is: 'received',
        claim: 'c1',
        evidence: ['e1'],
        claimant: { name: 'Mock Elms Produce', role: 'receiver' },
        theirNumber: 'NE-77',
        received: { date: '2026-08-03', zone: 'America/Chicago' },
        amount: { amount: '12480.50', currency: 'USD' },
        grounds: ['warm on arrival', 'frost'],
        contents: { shipment: true, liability: false, amount: 'stated', form: 'written' },
      },
    });
  });

  it('adds nothing when the same is said again', async () => {
    const before = count();
    const { code, out } = await claim(...RECEIVED);
    expect([code, out]).toEqual([0, expect.stringContaining('entry 2  c1  claim of Mock Elms')]);
    expect(out).toContain('(recorded before)');
    expect(count()).toBe(before);
  });

  it.each([
    [
      ['terms', 'us-carriage-by-contract', '--paper', 'e1', '--note', 'clause 9'],
      { is: 'terms', governs: 'us-carriage-by-contract', evidence: ['e1'], note: 'clause 9' },
    ],
    [
      ['clock', 'us-acknowledge', '--span', '15 days'],
      { is: 'clock-set', clock: 'us-acknowledge', count: 15, unit: 'days' },
    ],
    [
      ['clock', 'us-least-time-to-sue', '--span', '10 working day'],
      { is: 'clock-set', clock: 'us-least-time-to-sue', count: 10, unit: 'working-days' },
    ],
    [
      ['letter', 'acknowledgement', '--way', 'sent', '--with', 'Mock Elms Produce', '--on', '2026-08-05'],
      { is: 'letter', letter: 'acknowledgement', way: 'sent', on: { date: '2026-08-05' } },
    ],
    [
      ['offer', '4000 USD', '--firm', '--on', '2026-09-10', '--zone', 'America/Phoenix'],
      { is: 'offer', by: 'carrier', firm: true, on: { date: '2026-09-10', zone: 'America/Phoenix' } },
    ],
    [
      ['payment', '4.000,50 EUR', '--by', 'insurer', '--on', '2026-09-20'],
      { is: 'payment', by: 'insurer', amount: { amount: '4000.50', currency: 'EUR' } },
    ],
    [
      ['declined', 'warm when loaded', '--in-writing', '--part', '8000 USD', '--on', '2026-09-10'],
      { is: 'declined', inWriting: true, reasons: ['warm when loaded'], part: { amount: '8000' } },
    ],
    [
      [
        ...['amount', 'invoice-value', '--each', '14.25 USD', '--quantity', '876 cartons'],
        ...['--line', 'romaine', '--said-by', 'claimant'],
      ],
      { is: 'amount', item: 'invoice-value', each: { amount: '14.25' }, quantity: '876', unit: 'cartons' },
    ],
    [
      ['cause', 'act-of-god', '--paper', 'e1', '--note', 'Road closed by a flood'],
      { is: 'cause', cause: 'act-of-god', evidence: ['e1'], note: 'Road closed by a flood' },
    ],
    [
      ['quantity', 'rejected', '--quantity', '876 cartons', '--line', 'romaine', '--said-by', 'receiver'],
      { is: 'quantity', state: 'rejected', quantity: '876', line: 'romaine' },
    ],
    [['closed', 'settled', '--on', '2026-10-01'], { is: 'closed', how: 'settled' }],
  ])('%j', async (args, body) => {
    const before = count();
    const { code, err } = await claim(...args);
    expect(code).toBe(0);
    // An amount or a count without its paper counts for nothing yet, and that is said.
    expect(err).toMatch(/^(amount|quantity)$/.test(args[0] ?? '') ? /No paper was named/ : /^$/);
    expect(count()).toBe(before + 1);
    expect(last()).toMatchObject({ type: 'claim-noted', by: 'Test', body: { claim: 'c1', ...body } });
  });

  it('corrects by a new entry that names the old one', async () => {
    expect((await claim(...RECEIVED, '--number', 'NE-78', '--correct', '2')).code).toBe(0);
    expect(last()?.body).toMatchObject({ claim: 'c1', theirNumber: 'NE-78', replaces: 2 });
  });

  it('says entry, claim and words in JSON', async () => {
    const { out } = await claim('terms', 'unknown', '--json');
    expect(JSON.parse(out)).toEqual({
      claim: 'c1',
      entry: count() - 1,
      added: true,
      said: 'c1  governed by: unknown',
      notices: [],
    });
  });

  it.each([
    [['terms', 'us-law'], 'us-carriage-by-law'],
    [['closed', 'lost'], 'paid, settled, withdrawn'],
    [['letter', 'acknowledgment', '--way', 'sent', '--with', 'x'], 'Did you mean acknowledgement?'],
    [['letter', 'denial', '--with', 'x'], '--way'],
    [['offer', '$4000'], 'currency: USD'],
    [['offer', '4000 USD', '--on', '2026-02-30'], 'not a day of the calendar'],
    [['offer', '4000 USD', '--on', '2999-01-01'], 'has not come yet'],
    [['declined', 'late', '--in-writing', '--on', '2026-08-02'], 'is before claim c1 came in, 2026-08-03'],
    [['admitted', '10 USD', '--on', '2026-08-02'], 'is before claim c1 came in'],
    [['papers-returned', 'Mock Elms Produce', '--on', '2026-08-02'], 'is before claim c1 came in'],
    [['closed', 'withdrawn', '--on', '2026-08-02'], 'is before claim c1 came in'],
    [['offer', '4000 USD', '--zone', 'Mars/Base'], 'America/Phoenix'],
    [['offer', '4000 USD', '--claim', 'c7'], 'Use one of: c1'],
    [['amount', 'salvage', '--said-by', 'receiver'], '--total'],
    [['amount', 'salvage', '--said-by', 'receiver', '--each', '2 USD'], '--quantity'],
    [['amount', 'salvage', '--said-by', 'me', '--total', '2 USD'], 'market-report'],
    [
      ['quantity', 'rejected', '--quantity', '5', '--line', 'romaine', '--said-by', 'receiver'],
      '876 cartons',
    ],
    [
      ['quantity', 'rejected', '--quantity', '5 cartons', '--line', 'kale', '--said-by', 'receiver'],
      'romaine',
    ],
    [['clock', 'us-acknowledge', '--span', 'long'], '45 days'],
    [
      ['clock', 'us-acknowledge', '--span', '99999999999999999999 days'],
      '--span: a whole number, at most 3650',
    ],
    [['clock', 'us-acknowledge', '--span', '3651 days'], 'See: dossier record claim clock --help'],
    [['clock', 'us-acknowledge', '--span', '3 moons'], 'Use one of: hours, days'],
    [['offer', '4000 USD', '--on', '0026-08-03'], 'the year with its four digits'],
    [['amount', 'salvage', '--said-by', 'receiver', '--total', '12345678901 USD'], 'not an amount'],
    [['amount', 'salvage', '--said-by', 'me', '--total', '2 USD'], '--said-by: there is no role "me"'],
    [
      ['quantity', 'rejected', '--quantity', '1.2345 lb', '--line', 'romaine', '--said-by', 'receiver'],
      '--quantity: "1.2345 lb" is not a quantity with its unit',
    ],
    [['received', 'Z'.repeat(201), '--as', 'owner'], 'claimant: '],
    [['clock', 'us-acknowledgement', '--span', '15 days'], 'Did you mean us-acknowledge?'],
    [['cause', 'act-of-god'], '--paper'],
    [['cause', 'bad-luck', '--paper', 'e1'], 'public-enemy'],
    [['terms', 'cmr', '--paper', 'e9'], 'dossier collect FILE'],
    [['terms', 'cmr', '--correct', '2'], 'entry 2'],
    [['terms', 'cmr', '--correct', 'x'], 'number of an entry'],
    [['received', 'Z', '--as', 'lawyer'], '--as: there is no role "lawyer"\n  Use one of: shipper, receiver'],
    [['letter', 'denial', '--way', 'send', '--with', 'Z'], '--way: there is no way "send"'],
    [['received', '', '--as', 'owner'], 'claimant: it is not said who claims'],
    [['received', 'Z', '--as', 'owner', '--says', 'much'], 'shipment, liability'],
  ])('refuses %j with the choices, and writes nothing', async (args, said) => {
    const before = count();
    const { code, err } = await claim(...args);
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(count()).toBe(before);
  });
});

describe('record claim amounts', () => {
  let own: string;
  beforeAll(async () => {
    own = await here.delivery('worksheet');
    for (const args of [
      ['collect', here.put('invoice.txt', 'Invoice 7731'), here.put('sale.txt', 'Account of sale')],
      ['record', 'claim', 'received', 'Mock Elms Produce', '--as', 'receiver'],
    ])
      await here.dossier(...args, '-d', own);
  });
  const amounts = (csv: string, ...args: string[]) =>
    here.dossier('record', 'claim', 'amounts', here.put('amounts.csv', csv), ...args, '-d', own);
  const notes = () =>
    here
      .entries(own)
      .filter(({ type, body }) => type === 'claim-noted' && ['amount', 'quantity'].includes(String(body.is)))
      .map(({ body }) => body);
  const SHEET = `What,Line,Total,Each,Quantity,Said by,Paper,Note
Invoice value,romaine,,17.25 USD,480 cartons,,,
rejected,romaine,,,480 cartons,receiver,e2,whole line
salvage,romaine,1920.00 USD,,,receiver,e1 e2,
`;

  it('says how each row is understood, and writes nothing, in a dry run', async () => {
    const { code, out } = await amounts(SHEET, '--said-by', 'claimant', '--paper', 'e1', '--dry-run');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^row 2 {2}c1 {2}invoice-value USD 17\.25 each for 480 cartons of romaine, says the claimant/m,
    );
    expect(out).toContain('3 understood, 0 recorded before, 0 not understood; nothing was written.');
    expect(notes()).toEqual([]);
  });

  it('writes each row down as the commands for one do', async () => {
    const { code, out } = await amounts(SHEET, '--said-by', 'claimant', '--paper', 'e1');
    expect(code).toBe(0);
    expect(out).toContain('3 recorded; 0 recorded before, nothing added for those; 0 not understood.');
    expect(notes()).toMatchObject([
      {
        is: 'amount',
        item: 'invoice-value',
        line: 'romaine',
        each: { amount: '17.25', currency: 'USD' },
        quantity: '480',
        unit: 'cartons',
        saidBy: 'claimant',
        evidence: ['e1'],
      },
      {
        is: 'quantity',
        state: 'rejected',
        line: 'romaine',
        saidBy: 'receiver',
        evidence: ['e2'],
        note: 'whole line',
      },
      {
        is: 'amount',
        item: 'salvage',
        total: { amount: '1920.00', currency: 'USD' },
        evidence: ['e1', 'e2'],
      },
    ]);
    const one = ['amount', 'salvage', '--total', '1920.00 USD', '--line', 'romaine', '--said-by', 'receiver'];
    const { out: again } = await here.dossier('record', 'claim', ...one, '--paper', 'e1', 'e2', '-d', own);
    expect(again).toContain('(recorded before)');
  });

  it('adds nothing when it is given again, or when a row stands twice', async () => {
    const before = notes().length;
    const [header, first] = SHEET.split('\n');
    const twice = `${SHEET}${first}\n`;
    expect(header).toMatch(/^What/);
    const { code, out } = await amounts(twice, '--said-by', 'claimant', '--paper', 'e1');
    expect([code, notes().length]).toEqual([0, before]);
    expect(out).toContain('0 recorded; 4 recorded before');
  });

  it('names row and column of what it does not understand, and takes the rest in', async () => {
    const before = notes().length;
    const { code, out, err } = await amounts(
      'what,line,total,each,quantity,said-by,paper\n' +
        'freight-paid,,4200.00 USD,,,carrier,e1\n' +
        'freightpaid,,1 USD,,,carrier,e1\n' +
        'salvage,romaine,$5,,,receiver,e1\n' +
        'salvage,romane,5 USD,,,receiver,e1\n' +
        'salvage,romaine,5 USD,1 USD,3 cartons,receiver,e1\n' +
        'credit,,5 USD,,,receiver,e99\n' +
        'credit,,5 USD,,,,e1\n',
    );
    expect(code).toBe(2);
    expect(notes().length).toBe(before + 1);
    expect(out).toContain('1 recorded; 0 recorded before, nothing added for those; 6 not understood.');
    for (const [row, column] of [
      [3, 'what'],
      [4, 'total'],
      [5, 'line'],
      [6, 'each'],
      [7, 'paper'],
      [8, 'said-by'],
    ])
      expect(err).toContain(`amounts.csv, row ${row}, column ${column}: `);
  });

  it.each([
    ['item,total\nsalvage,5 USD\n', /there is no column for item/],
    ['total\n5 USD\n', /there is no column "what"/],
  ])('refuses a table with other columns: %j', async (csv, words) => {
    const { code, err } = await amounts(csv);
    expect([code, err]).toEqual([2, expect.stringMatching(words)]);
    expect(err).toContain('Use the columns what, line, total, each, quantity, said-by, paper, note.');
  });

  it('says that a row without paper counts for nothing yet', async () => {
    const { err } = await amounts('what,total,said-by\ndisposal-cost,90 USD,receiver\n');
    expect(err).toMatch(/No paper is named for 1 of the rows/);
  });

  it('says that there is no such file', async () => {
    const { code, err } = await here.dossier('record', 'claim', 'amounts', 'none.csv', '-d', own);
    expect([code, err]).toEqual([2, expect.stringMatching(/none\.csv: there is no such file/)]);
  });
});
