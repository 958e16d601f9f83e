import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

const FACTS = `
delivery: TWO-DROPS
parties: { carrier: { name: Copper Basin Carriers } }
equipment: { trailer: { number: T-118 } }
stops:
  - { id: load-1, does: load, place: Cooler A, zone: America/Phoenix }
  - { id: denver, does: unload, place: Denver, zone: America/Denver }
  - { id: omaha, does: unload, place: Omaha, zone: America/Chicago }
lines:
  - { id: strawberries, goods: strawberry, from: load-1, to: denver, pallets: 18 }
  - { id: celery, goods: celery, from: load-1, to: omaha, pallets: 6, cartons: 480 }
  - { id: leeks, goods: leek, from: load-1, to: omaha, shipped: { crates: 40 } }
`;

let here: Yard;
let delivery: string;
beforeEach(async () => {
  here = yard();
  delivery = await here.delivery('delivery', FACTS);
});
afterEach(() => here.end());

const record = (...args: string[]) => here.dossier('record', ...args, '-d', 'delivery');
const AT = ['--at', '2026-07-16T10:40'];
const last = () => here.entries(delivery).at(-1);

describe('record refusal, acceptance and exception', () => {
  it('write down how much of what, why, who said so, to whom, how and on which document', async () => {
    const ran = await record(
      ...['refusal', '8', 'pallets', '--line', 'Strawberries', '--rest', 'accepted', ...AT],
      ...['--why', 'decay', 'temperature', '--words', 'soft, mold', '--said-by', 'D. Haas, receiving'],
      ...['--told', 'driver', '--told-name', 'M. Ortega', '--how', 'in-person', '--on', 'receipt 4471'],
    );
    expect(ran.out).toContain('refused, 8 pallets, strawberries, denver');
    expect(last()).toMatchObject({
      type: 'reading-recorded',
      body: {
        kind: 'outcome',
        outcome: 'refused',
        quantity: { amount: '8', unit: 'pallets' },
        rest: 'accepted',
        line: 'strawberries',
        place: { stop: 'denver' },
        reasons: ['decay', 'temperature'],
        words: 'soft, mold',
        saidBy: 'D. Haas, receiving',
        told: 'driver',
        toldName: 'M. Ortega',
        how: 'in-person',
        document: 'receipt 4471',
        time: { instant: '2026-07-16T16:40:00.000Z' },
      },
    });
  });

  it('speak of every line of a stop, and of everything when told so', async () => {
    await record('refusal', '--stop', 'omaha', ...AT);
    expect((await record('acceptance', 'all', '--stop', 'omaha', '--at', '2026-07-16T12:00')).code).toBe(0);
    expect(last()).toMatchObject({ body: { outcome: 'accepted', all: true, place: { stop: 'omaha' } } });
  });

  it.each([
    ['more than was shipped', ['refusal', '19', 'pallets', '--line', 'strawberries'], /1 more than the 18/],
    ['more of another unit', ['refusal', '41', 'crates', '--line', 'leeks'], /1 more than the 40 shipped/],
    ['an unknown line', ['refusal', '--line', 'turnips'], /no line "turnips"/],
    ['an unknown stop', ['refusal', '--stop', 'boise'], /no stop "boise"/],
    ['a loading stop', ['refusal', '--stop', 'load-1'], /nothing is delivered at load-1/],
    ['a line of another stop', ['refusal', '--line', 'celery', '--stop', 'denver'], /delivered at omaha/],
    ['a part of several lines', ['refusal', '3', 'pallets', '--stop', 'omaha'], /not told of which line/],
    ['no stop where there are two', ['acceptance'], /not told at which stop/],
    ['words that are no quantity', ['refusal', 'lots', '--line', 'celery'], /"lots" is not a quantity/],
    ['a reason of no list', ['refusal', '--line', 'celery', '--why', 'mood'], /no reason "mood"/],
    ['a document that is not there', ['refusal', '--line', 'celery', '--on', 'e9'], /no evidence e9/],
    [
      'an exception of either end',
      ['exception', '--line', 'celery', '--words', 'wet'],
      /--stop load-1 or --stop omaha/,
    ],
    ['an exception without words', ['exception', '--stop', 'load-1'], /not told what is written/],
    [
      'an exception at loading that is told',
      ['exception', '--stop', 'load-1', '--words', 'wet', '--told', 'shipper'],
      /dossier record contact/,
    ],
    [
      'a signature of nobody knows whom',
      ['exception', '--stop', 'load-1', '--words', 'wet', '--signed-by', 'J. Ortiz'],
      /"J. Ortiz" does not say for whom/,
    ],
    [
      'an exception on a document that is not there',
      ['exception', '--stop', 'load-1', '--words', 'wet', '--on', 'e9'],
      /no evidence e9/,
    ],
  ])('refuse %s and write nothing', async (_, args, says) => {
    const before = here.entries(delivery).length;
    const ran = await record(...args, ...AT);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(says)]);
    expect(here.entries(delivery)).toHaveLength(before);
  });

  it('refuse what adds nothing to an earlier word, and name that', async () => {
    await record('refusal', '--line', 'strawberries', ...AT);
    const ran = await record('acceptance', '--line', 'strawberries', '--at', '2026-07-16T12:00');
    expect([ran.code, ran.err]).toEqual([
      2,
      expect.stringMatching(/strawberries has an outcome already \(e1\)/),
    ]);
  });

  it('at loading: an exception on the bill of lading, by whom it was written and signed', async () => {
    const ran = await record(
      ...['exception', '3', 'pallets', '--stop', 'load-1', '--line', 'celery', '--why', 'temperature', ...AT],
      ...['--words', 'pulped 41 F, shipper advised', '--on', 'bill of lading 0044719'],
      ...['--written-by', 'driver R. Vela', '--signed-by', 'J. Ortiz, shipper', 'driver'],
    );
    expect(ran.out).toContain('e1  exception, 3 pallets, celery, load-1');
    expect(last()).toMatchObject({
      body: {
        kind: 'exception',
        words: 'pulped 41 F, shipper advised',
        quantity: { amount: '3', unit: 'pallets' },
        reasons: ['temperature'],
        line: 'celery',
        place: { stop: 'load-1' },
        writtenBy: { party: 'driver', name: 'R. Vela' },
        signedBy: [{ party: 'shipper', name: 'J. Ortiz' }, { party: 'driver' }],
        document: 'bill of lading 0044719',
      },
    });
    const put = (...args: string[]) => here.dossier(...args, '--why', 'read again', '-d', 'delivery');
    await put('correct', 'e1', '--words', 'pulped 44 F', '--signed-by', 'driver');
    expect(last()).toMatchObject({
      body: { becomes: { body: { words: 'pulped 44 F', signedBy: [{ party: 'driver' }] } } },
    });
    expect((await put('correct', 'e1', '2 pallets')).code).toBe(0);
    expect((await put('strike', 'e1')).code).toBe(0);
  });

  it('at delivery: an exception is the receiver’s, and an outcome of the goods', async () => {
    await record(
      ...['exception', '24', 'cartons', '--stop', 'omaha', '--line', 'celery', '--why', 'shortage', ...AT],
      ...['--words', '24 ctns short', '--on', 'delivery receipt', '--signed-by', 'driver'],
    );
    expect(last()).toMatchObject({
      body: {
        kind: 'outcome',
        outcome: 'accepted-with-exceptions',
        quantity: { amount: '24', unit: 'cartons' },
        signedBy: [{ party: 'driver' }],
      },
    });
  });

  it('an exception of a table or of notes is read by its stop', async () => {
    here.put(
      'exceptions.csv',
      `time,kind,value,stop,line,reason,note,on,written-by,signed-by
2026-07-14 05:10,exception,,load-1,celery,temperature,pulped 41 F,bill,driver,shipper J. Ortiz; driver
2026-07-16 10:41,exception,24 cartons,omaha,celery,shortage,24 ctns short,receipt,,driver
2026-07-16 10:42,exception,2 cartons,,celery,damage,crushed,,,
`,
    );
    const ran = await here.dossier('collect', here.at('exceptions.csv'), '-d', 'delivery');
    expect(ran.out + ran.err).toMatch(/row 4.*stop is missing/s);
    const notes = [
      '2026-07-14 load-1',
      'exception 05:10 leeks on bill damage written by driver signed by shipper J. Ortiz: 2 crates crushed',
      '05:12 called shipper pulp-temperatures delay: celery at 41 F, load it',
    ].join('\n');
    await record('--notes', here.put('n.txt', notes));
    expect(
      here.entries(delivery).flatMap(({ type, body }) => (type === 'reading-recorded' ? [body] : [])),
    ).toMatchObject([
      { kind: 'exception', signedBy: [{ party: 'shipper', name: 'J. Ortiz' }, { party: 'driver' }] },
      { kind: 'outcome', outcome: 'accepted-with-exceptions', words: '24 ctns short' },
      {
        kind: 'exception',
        line: 'leeks',
        reasons: ['damage'],
        words: '2 crates crushed',
        document: 'bill of lading',
        writtenBy: { party: 'driver' },
        signedBy: [{ party: 'shipper', name: 'J. Ortiz' }],
      },
      { kind: 'contact', with: 'shipper', subjects: ['pulp-temperatures', 'delay'] },
    ]);
  });

  it('are corrected and struck like all else', async () => {
    await record('refusal', '8', 'pallets', '--line', 'strawberries', ...AT);
    const correct = (...args: string[]) =>
      here.dossier('correct', 'e1', ...args, '--why', 'counted again', '-d', 'delivery');
    expect((await correct('19 pallets')).err).toMatch(/1 more than the 18 shipped/);
    await correct('all');
    expect(last()).toMatchObject({
      body: { becomes: { body: { outcome: 'refused', all: true } } },
    });
    expect(last()).not.toMatchObject({ body: { becomes: { body: { quantity: expect.anything() } } } });
    expect((await here.dossier('strike', 'e1', '--why', 'of another load', '-d', 'delivery')).code).toBe(0);
  });

  it('stand in a notice of rejection, which asks for what they do not say', async () => {
    const written = async (folder: string) => {
      await here.dossier('answer', '-d', 'delivery', '--letter', 'rejection-notice', '-o', folder);
      return readFileSync(here.at(folder, 'letter.txt'), 'utf8').replaceAll(/\s+/g, ' ');
    };
    await record(
      ...[
        'refusal',
        '8',
        'pallets',
        '--line',
        'strawberries',
        ...AT,
        '--why',
        'decay',
        '--words',
        'soft, mold',
      ],
      ...['--said-by', 'D. Haas', '--told', 'driver', '--how', 'in-person'],
    );
    const whole = await written('whole');
    expect(whole).toContain('D. Haas; told to the driver; in person The reasons given');
    expect(whole).toContain('decay; “soft, mold” The goods now');
    expect(whole).not.toContain('who said it');
    await record('refusal', '2', 'pallets', '--line', 'celery', ...AT);
    const open = await written('open');
    expect(open).toContain(
      'told to the driver; in person Who rejected them, to whom it was said, how and at what time: [_',
    );
    expect(open).toContain('“soft, mold” The reasons given: [_');
  });

  it('of a readings table are held to what was shipped, row by row, also with --sure', async () => {
    here.put(
      'outcomes.csv',
      `time,kind,value,state,stop,line
2026-07-16 10:40,outcome,8 pallets,refused,denver,strawberries
2026-07-16 10:41,outcome,12 pallets,refused,denver,strawberries
2026-07-16 10:42,outcome,10 pallets,accepted,denver,strawberries
`,
    );
    const ran = await here.dossier('collect', here.at('outcomes.csv'), '-d', 'delivery', '--sure');
    expect(ran.err + ran.out).toContain(
      'row 3, how much: 12 pallets of strawberries are 2 more than the 18 shipped',
    );
    expect(here.entries(delivery).filter(({ type }) => type === 'reading-recorded')).toHaveLength(2);
  });

  it('are read from a notes file', async () => {
    const notes = [
      '2026-07-16',
      'refused 8 pallets strawberries 10:40 decay temperature told driver rest accepted by R. Vela: soft, mold',
      'accepted with exceptions 24 ctns celery shortage 9:30',
      'accepted leeks 9:31 on-document',
      'refused 99 pallets celery 9:40',
    ].join('\n');
    const ran = await record('--notes', here.put('n.txt', notes));
    expect(ran.out).toContain('3 recorded');
    expect(ran.out + ran.err).toMatch(/row 5.*99 pallets of celery/s);
    expect(here.entries(delivery).slice(-3)).toMatchObject([
      {
        body: {
          outcome: 'refused',
          rest: 'accepted',
          reasons: ['decay', 'temperature'],
          told: 'driver',
          by: 'R. Vela',
          words: 'soft, mold',
        },
      },
      {
        body: {
          outcome: 'accepted-with-exceptions',
          quantity: { amount: '24', unit: 'cartons' },
          place: { stop: 'omaha' },
        },
      },
      { body: { outcome: 'accepted', line: 'leeks', how: 'on-document' } },
    ]);
  });
});
