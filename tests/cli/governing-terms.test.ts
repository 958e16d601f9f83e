import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
beforeAll(() => {
  here = yard();
});
afterAll(() => here.end());

interface Case {
  facts: string;
  events: readonly (readonly [event: string, at: string, ...more: string[]])[];
  notes: readonly (readonly string[])[];
}

const facts = (zones: readonly [load: string, drop: string], line: string) => `delivery: of-terms
parties: { carrier: { name: Example Haulage }, shipper: { name: Fictional Flats Growers } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: ${zones[0]} }
  - { id: drop-1, does: unload, place: Mock Elms, zone: ${zones[1]} }
lines:
  - { id: goods, goods: ${line}, from: load-1, to: drop-1 }
`;

/** A delivery with a claim, e1 its paper, as `dossier answer` prints it and gives it as data. */
async function answered(name: string, { facts: yaml, events, notes }: Case, at: string) {
  const folder = await here.delivery(name, yaml);
  const run = async (...args: string[]) => {
    const ran = await here.dossier(...args, '-d', folder);
    if (ran.code !== 0) throw new Error(`${args.join(' ')}: ${ran.err}`);
  };
  await run(
    'collect',
    here.put(`${name}.txt`, `Claim letter, ${name}: the goods were not as they should be.\n`),
  );
  for (const [event, time, ...more] of events) await run('record', event, ...more, '--at', time);
  for (const note of notes) await run('record', 'claim', ...note);
  const { out } = await here.dossier('answer', folder, '--at', at);
  const json = JSON.parse((await here.dossier('answer', folder, '--at', at, '--json')).out);
  const [claim] = json.claims;
  const clocks: Record<string, string> = {};
  for (const { id, turn, due, state } of [...claim.clocks, ...json.refusalClocks])
    clocks[turn === undefined ? id : `${id} ${turn}`] = `${due?.day?.date ?? due?.at ?? '-'} ${state}`;
  return { said: out.replace(/\s+/g, ' '), clocks, amounts: claim.amounts, json };
}

const money = (total: string) => ['--total', total, '--said-by', 'claimant', '--paper', 'e1'];

describe('a claim for exempt produce, by a contract that brings in 49 CFR part 370', () => {
  it('has the dates and sums worked by hand', async () => {
    const { clocks, amounts, said } = await answered(
      'exempt',
      {
        facts: facts(['America/Phoenix', 'America/Chicago'], 'lettuce-romaine'),
        events: [
          ['event', '2026-07-14T05:00', 'departed', '--stop', 'load-1'],
          ['event', '2026-07-16T06:10', 'arrived', '--stop', 'drop-1'],
          ['event', '2026-07-16T09:30', 'unloaded', '--stop', 'drop-1'],
        ],
        notes: [
          [
            'received',
            'Mock Elms Produce',
            '--as',
            'receiver',
            '--on',
            '2026-08-03',
            '--amount',
            '7600 USD',
            '--paper',
            'e1',
          ],
          ['terms', 'us-carriage-by-contract', '--paper', 'e1'],
          ['clock', 'us-acknowledge', '--span', '15 days'],
          [
            'amount',
            'market-value',
            '--each',
            '18.50 USD',
            '--quantity',
            '480 cartons',
            '--said-by',
            'claimant',
            '--paper',
            'e1',
          ],
          ['amount', 'salvage', ...money('1920.00 USD')],
          ['amount', 'salvage-cost', ...money('595.20 USD')],
          ['amount', 'refunds', ...money('40.00 USD')],
          ['amount', 'freight-due', ...money('300.00 USD')],
        ],
      },
      '2026-12-05T12:00-06:00',
    );
    expect(clocks).toMatchObject({
      // 15 days by the contract, from 3 August.
      'us-acknowledge': '2026-08-18 overdue',
      // August has 28 days left, and 30, 31, 30 make 119: the 120th day is 1 December.
      'us-pay-decline-or-offer': '2026-12-01 overdue',
      'us-status 1': '2026-12-01 overdue',
      // 30 days left of December, and 30 of January.
      'us-status 2': '2027-01-30 running',
      'us-least-time-to-claim': '2027-04-16 done',
      'us-transport-records-fresh': '2027-01-16 running',
      // There at 06:10, nobody there who may reject: from 08:00, eight hours, and unloaded before that.
      'us-refusal-fresh': `${Date.parse('2026-07-16T16:00-05:00')} no-longer-needed`,
    });
    // 480 × 18.50 = 8,880.00; 1,920.00 − 595.20 − 40.00 = 1,284.80; 8,880.00 − 1,284.80 − 300.00 = 7,295.20.
    expect(amounts).toMatchObject({
      measure: 'destination-value',
      computed: { low: 729_520, high: 729_520 },
    });
    expect(said).toContain('By the papers USD 7,295.20');
    expect(said).toContain('Interest is not in this sum');
  });
});

describe('a claim for frozen goods under 49 U.S.C. 14706', () => {
  it('has the dates and sums worked by hand', async () => {
    const { clocks, amounts, said } = await answered(
      'frozen',
      {
        facts: facts(['America/Phoenix', 'America/Chicago'], 'peas, name: Frozen peas'),
        events: [
          ['event', '2026-07-14T15:30', 'arrived', '--stop', 'drop-1'],
          [
            'refusal',
            '2026-07-15T10:00',
            'all',
            '--stop',
            'drop-1',
            '--told',
            'shipper',
            '--why',
            'temperature',
          ],
        ],
        notes: [
          [
            'received',
            'Mock Elms Foods',
            '--as',
            'receiver',
            '--on',
            '2026-08-03',
            '--amount',
            '17840 USD',
            '--paper',
            'e1',
          ],
          ['terms', 'us-carriage-by-law', '--paper', 'e1', '--note', 'Frozen: 49 U.S.C. 13506(a)(6)(C)'],
          ['declined', 'thawed before loading', '--in-writing', '--by', 'insurer', '--on', '2026-09-01'],
          [
            'declined',
            'thawed before loading',
            '--in-writing',
            '--on',
            '2026-09-10',
            '--to',
            'Mock Elms Foods',
            '--form',
            'e-mail',
          ],
          [
            'amount',
            'invoice-value',
            '--each',
            '22.40 USD',
            '--quantity',
            '700 cartons',
            '--said-by',
            'claimant',
            '--paper',
            'e1',
          ],
          ['amount', 'arrived-value', ...money('0 USD')],
          ['amount', 'freight-paid', ...money('1850.00 USD')],
          ['amount', 'disposal-cost', ...money('310.00 USD')],
          ['amount', 'released-value', ...money('12000.00 USD')],
        ],
      },
      '2026-09-11T12:00-05:00',
    );
    expect(clocks).toMatchObject({
      // 28 days of August and two of September; declined on the 10th, after it.
      'us-acknowledge': '2026-09-02 done-late',
      'us-pay-decline-or-offer': '2026-12-01 done',
      // From the carrier's letter; the insurer's does not say that it acts on behalf of the carrier.
      'us-least-time-to-sue': '2028-09-10 running',
      // Refused, not delivered: nothing starts it.
      'us-least-time-to-claim': '- done',
      // An hour and a half on Tuesday, ten and a half from Wednesday 08:00.
      'us-refusal-frozen': `${Date.parse('2026-07-15T18:30-05:00')} done`,
    });
    expect(said).toContain('A letter of the insurer is not counted');
    // 700 × 22.40 = 15,680.00; with freight 1,850.00 and disposal 310.00 it is 17,840.00; released at 12,000.00.
    const loss = amounts.steps.find(({ id }: { id: string }) => id === 'loss');
    expect(loss.range).toEqual({ low: 1_784_000, high: 1_784_000 });
    expect(amounts.computed).toEqual({ low: 1_200_000, high: 1_200_000 });
  });
});

describe('a claim under the CMR', () => {
  it('has the dates and sums worked by hand', async () => {
    const { clocks, amounts, said, json } = await answered(
      'cmr',
      {
        facts: facts(['Europe/Madrid', 'Europe/Berlin'], 'strawberries'),
        events: [
          ['event', '2026-03-04T18:00', 'departed', '--stop', 'load-1'],
          ['event', '2026-03-06T08:00', 'arrived', '--stop', 'drop-1'],
          ['event', '2026-03-06T10:00', 'unloaded', '--stop', 'drop-1'],
        ],
        notes: [
          [
            'received',
            'Invented Fruchthandel',
            '--as',
            'receiver',
            '--on',
            '2026-03-20',
            '--amount',
            '7500 EUR',
            '--paper',
            'e1',
          ],
          ['terms', 'cmr', '--paper', 'e1'],
          [
            'letter',
            'reservation',
            '--way',
            'received',
            '--with',
            'Invented Fruchthandel',
            '--on',
            '2026-03-16',
            '--sent',
            '2026-03-13',
          ],
          [
            'declined',
            'ripe when taken over',
            '--in-writing',
            '--on',
            '2026-04-20',
            '--to',
            'Invented Fruchthandel',
            '--form',
            'paper',
          ],
          [
            'papers-returned',
            'Invented Fruchthandel',
            '--form',
            'paper',
            '--on',
            '2026-04-27',
            '--paper',
            'e1',
          ],
          ['amount', 'origin-value', ...money('9000.00 EUR')],
          ['amount', 'market-value', ...money('12000.00 EUR')],
          ['amount', 'salvage', ...money('3600.00 EUR')],
          ['amount', 'freight-paid', ...money('1500.00 EUR')],
          ['amount', 'inspection-cost', ...money('150.00 EUR')],
          [
            'quantity',
            'damaged',
            '--quantity',
            '2400 kg',
            '--line',
            'goods',
            '--said-by',
            'receiver',
            '--paper',
            'e1',
          ],
        ],
      },
      '2026-05-01T12:00+02:00',
    );
    expect(clocks).toMatchObject({
      // Friday 6 March. Saturday 7 is day one; Sunday 8 is left out; Saturday 14 is day seven.
      'cmr-hidden-damage': '2026-03-14 done',
      'cmr-delay': '2026-03-27 done',
      'cmr-apparent-damage': `${Date.parse('2026-03-06T10:00+01:00')} done-late`,
      // 6 March 2027, and the 38 days from 20 March to 27 April: 25 to the end of March, 13 of April.
      'cmr-limitation': '2027-04-13 running',
    });
    // 9,000 − 3,600 = 5,400, six tenths; six tenths of 1,500 is 900; the market value and the inspection are not in it.
    expect(amounts).toMatchObject({ measure: 'origin-value', computed: { low: 630_000, high: 630_000 } });
    // 8.33 × 2,400.
    expect(amounts.weightLimit.sdr).toEqual({ low: 1_999_200, high: 1_999_200 });
    expect(said).toContain('EUR 6,300.00');
    expect(json.claims[0].position[0].under).toBe('cmr');
    // Nothing of the United States is counted in Berlin.
    expect(Object.keys(clocks).filter((id) => id.startsWith('us-'))).toEqual([]);
    expect(said).toContain('19,992.00 SDR, not converted');
  });
});

describe('a claim on a uniform bill of lading, where the law of a state governs', () => {
  it('has the dates and sums worked by hand', async () => {
    const { clocks, amounts, said } = await answered(
      'bill',
      {
        facts: facts(['America/Phoenix', 'America/Chicago'], 'cantaloupe'),
        events: [['event', '2026-07-14T09:00', 'unloaded', '--stop', 'drop-1']],
        notes: [
          ['received', 'Mock Elms Produce', '--as', 'receiver', '--on', '2026-08-03', '--paper', 'e1'],
          ['terms', 'state-law', '--paper', 'e1', '--measure', 'invoice-value'],
          ['terms', 'uniform-bill', '--paper', 'e1'],
          ['declined', 'late claim of decay', '--in-writing', '--on', '2026-10-01'],
          ['amount', 'market-value', ...money('6500.00 USD')],
          ['amount', 'invoice-value', ...money('5000.00 USD')],
          ['amount', 'salvage', ...money('1200.00 USD')],
          ['amount', 'freight-paid', ...money('400.00 USD')],
        ],
      },
      '2026-10-05T12:00-05:00',
    );
    expect(Object.keys(clocks).filter((id) => /^us-(ack|pay|status|least)/.test(id))).toEqual([]);
    expect(clocks).toMatchObject({
      'uniform-bill-claim': '2027-04-14 done',
      // Two years and one day.
      'uniform-bill-suit': '2028-10-02 running',
      'us-transport-records-fresh': '2027-01-14 running',
    });
    expect(said).toContain('No minimum of nine months holds there');
    // By the contract: 5,000 − 1,200 + 400.
    expect(amounts).toMatchObject({
      measure: 'invoice-value',
      measureBy: 'contract',
      computed: { low: 420_000, high: 420_000 },
    });
  });
});

describe('terms that contradict each other', () => {
  it('are named, and nothing that depends on them is counted', async () => {
    const { amounts, clocks, said } = await answered(
      'contradicting',
      {
        facts: facts(['America/Phoenix', 'America/Chicago'], 'celery'),
        events: [],
        notes: [
          ['received', 'Mock Elms Produce', '--as', 'receiver', '--on', '2026-08-03'],
          ['terms', 'cmr'],
          ['terms', 'us-carriage-by-law'],
          ['amount', 'market-value', ...money('4500.00 USD')],
          ['amount', 'origin-value', ...money('3000.00 USD')],
        ],
      },
      '2026-12-05T12:00-06:00',
    );
    expect(Object.keys(clocks)).toEqual([]);
    expect(amounts).toMatchObject({ currency: 'USD', steps: [], notes: [] });
    expect(amounts).not.toHaveProperty('computed');
    expect(said).toMatch(/By the papers not computed, since the stated terms contradict each other/);
    expect(said).not.toMatch(/Measure of value/);
    expect(said).toMatch(/stated terms contradict each other.* Entries #\d+, #\d+\./);
  });
});
