import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { readNotes } from '../../../src/intake/notes.js';
import { delivery } from '../a-delivery.js';

const read = (text: string, standing = {}) => readNotes(text, 'notes.txt', delivery, standing);
const one = (line: string) => {
  const { lines, problems } = read(line);
  expect(problems).toEqual([]);
  const [{ kind, word, fields } = { kind: 'none', word: undefined, fields: {} }] = lines;
  return { kind, ...omitUndefined({ word }), ...fields };
};

describe('one note a line', () => {
  it.each([
    [
      '04:40 counted-by shipper J. Ortiz load-1: SLC on the bill',
      {
        kind: 'particular',
        word: 'counted-by',
        who: 'shipper J. Ortiz',
        words: 'SLC on the bill',
        at: '04:40',
        stop: 'load-1',
      },
    ],
    [
      '04:41 count 480 ctns romaine driver',
      { kind: 'particular', word: 'count', howMany: '480 ctns', line: 'romaine', who: 'driver', at: '04:41' },
    ],
    [
      '04:42 recorder 77120455 shipper: pallet 3, nose',
      {
        kind: 'instrument',
        word: '77120455',
        type: 'recorder',
        owner: 'shipper',
        where: 'pallet 3, nose',
        at: '04:42',
      },
    ],
    [
      '04:43 thermometer P-7 serial 0441 ice 32.4F before cert C-12',
      {
        kind: 'instrument',
        word: 'P-7',
        type: 'thermometer',
        serial: '0441',
        iceBefore: '32.4F',
        certificate: 'C-12',
        at: '04:43',
      },
    ],
    [
      '20:10 stopped hours-of-service',
      { kind: 'event', word: 'stopped', reason: ['hours-of-service'], at: '20:10' },
    ],
    [
      '04:10 pulp 34.2F romaine nose load-1 by M. Ortega',
      {
        kind: 'pulp',
        word: '34.2F',
        at: '04:10',
        line: 'romaine',
        position: 'nose',
        stop: 'load-1',
        by: 'M. Ortega',
      },
    ],
    [
      'romaine by M. Ortega nose pulp load-1 34.2 °F 04:10',
      {
        kind: 'pulp',
        word: '34.2 °F',
        at: '04:10',
        line: 'romaine',
        position: 'nose',
        stop: 'load-1',
        by: 'M. Ortega',
      },
    ],
    [
      '2026-07-16 06:08 pulp 44.4F receiver ROMAINE Drop-1',
      {
        kind: 'pulp',
        word: '44.4F',
        at: '2026-07-16 06:08',
        from: 'receiver',
        line: 'romaine',
        stop: 'drop-1',
      },
    ],
    [
      '2026-07-16 10:15 inspection lot L-4471 romaine drop-1 480 cartons 24 samples 41F to 44F cert T-118 by A. Quill: tipburn 8% serious 3%; decay 2%',
      {
        kind: 'inspection',
        word: 'L-4471',
        at: '2026-07-16 10:15',
        line: 'romaine',
        stop: 'drop-1',
        count: '480 cartons',
        samples: '24',
        pulps: '41F to 44F',
        certificate: 'T-118',
        by: 'A. Quill',
        defect: 'tipburn 8% serious 3%; decay 2%',
      },
    ],
    [
      '08:15 refused 4 pallets romaine said by D. Haas told consignor to P. Wren call: warm',
      {
        kind: 'outcome',
        outcome: 'refused',
        word: '4 pallets',
        at: '08:15',
        line: 'romaine',
        saidBy: 'D. Haas',
        told: 'consignor',
        toldName: 'P. Wren',
        how: 'call',
        words: 'warm',
      },
    ],
    [
      '05:05 called shipper to P. Wren by M. Ortega: romaine pulps at 42 F',
      {
        kind: 'contact',
        word: 'shipper',
        at: '05:05',
        how: 'call',
        withName: 'P. Wren',
        by: 'M. Ortega',
        about: 'romaine pulps at 42 F',
      },
    ],
    ['2026-07-14T04:10 pulp 1,5C', { kind: 'pulp', word: '1,5C', at: '2026-07-14T04:10' }],
    [
      'yesterday 2:05 pm arrived drop-1',
      { kind: 'event', word: 'arrived', at: 'yesterday 2:05 pm', stop: 'drop-1' },
    ],
    [
      '14:00 MST round 37F set 36F fuel 3/4 alarm 63',
      { kind: 'round', word: '37F', at: '14:00 MST', setPoint: '36F', fuel: '3/4', alarm: ['63'] },
    ],
    [
      '06:35 set-point 36F display continuous',
      { kind: 'set-point', word: '36F', at: '06:35', shownBy: 'display', run: 'continuous' },
    ],
    ['04:20 seal 4471908 applied', { kind: 'seal', word: '4471908', at: '04:20', state: 'applied' }],
    [
      '06:36 bracing load-bars note two behind the last row at 34F',
      { kind: 'bracing', word: 'load-bars', at: '06:36', note: 'two behind the last row at 34F' },
    ],
    [
      '05:05 called shipper: romaine pulps at 42 F',
      { kind: 'contact', word: 'shipper', how: 'call', at: '05:05', about: 'romaine pulps at 42 F' },
    ],
    [
      '06:40 statement by R. Vela: I was there.',
      { kind: 'statement', word: 'I was there.', at: '06:40', by: 'R. Vela' },
    ],
    ['04:20 seal 55110 intact', { kind: 'seal', word: '55110', at: '04:20', state: 'intact' }],
    ['04:20 seal 20260714 applied', { kind: 'seal', word: '20260714', at: '04:20', state: 'applied' }],
    ['7/14/2026 4:10 AM pulp 34F', { kind: 'pulp', word: '34F', at: '7/14/2026 4:10 AM' }],
    ['2:05 PM PT pulp 34F', { kind: 'pulp', word: '34F', at: '2:05 PM PT' }],
    ['14:00 Pacific Time PULP 34F', { kind: 'pulp', word: '34F', at: '14:00 Pacific Time' }],
    ['14:00 PULP 34F', { kind: 'pulp', word: '34F', at: '14:00' }],
    ['7/14/2026 arrived drop-1', { kind: 'event', word: 'arrived', at: '7/14/2026', stop: 'drop-1' }],
    ['06:08 pulp 44F by receiver', { kind: 'pulp', word: '44F', at: '06:08', by: 'receiver' }],
    [
      '06:08 pulp 44F by the consignee R. Vela',
      { kind: 'pulp', word: '44F', at: '06:08', by: 'the consignee R. Vela' },
    ],
    [
      '06:08 called consignee: 44 F',
      { kind: 'contact', word: 'receiver', how: 'call', at: '06:08', about: '44 F' },
    ],
    ['06:41 pattern pinwheel rows 1-13', { kind: 'pattern', word: 'pinwheel', at: '06:41', rows: '1-13' }],
  ])('%s', (line, said) => expect(one(line)).toEqual(said));

  it('is completed by what stands alone on a line above it', () => {
    const { lines } = read(
      '# dock\n2026-07-14 load-1\nby M. Ortega\n\n04:10 pulp 34F\n04:12 pulp 35F by R. Vela drop-1',
    );
    expect(lines.map(({ row, fields }) => ({ row, ...fields }))).toEqual([
      { row: 5, at: '2026-07-14 04:10', stop: 'load-1', by: 'M. Ortega' },
      { row: 6, at: '2026-07-14 04:12', stop: 'drop-1', by: 'R. Vela' },
    ]);
  });

  it.each([
    ['04:10 34F romaine', /what kind/],
    ['pulp 34F', /no time of day/],
    ['04:10 pulp 34F bananas', /"bananas" is not understood/],
    ['04:10 pulp 34F 35F', /"34F" and "35F" both/],
    ['04:10 pulp 34F 04:12', /both say its time/],
    ['04:10 seal 447 doors-closed', /"doors-closed" is not understood/],
  ])('"%s" is refused with its row', (line, message) => {
    const { lines, problems, count } = read(`\n${line}\n04:11 arrived`);
    expect([lines.length, count]).toEqual([1, 2]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ message: expect.stringMatching(message), where: { row: 2 } });
  });

  it('never throws, and answers every line once', () => {
    const word = fc.oneof(
      fc.constantFrom(
        'pulp',
        'seal',
        '04:10',
        '34F',
        'by',
        'note',
        'romaine',
        'load-1',
        ':',
        'constructor',
        '__proto__',
      ),
      fc.string({ maxLength: 12 }),
    );
    fc.assert(
      fc.property(fc.array(fc.array(word, { maxLength: 8 }), { maxLength: 6 }), (written) => {
        const { lines, problems, count } = read(written.map((words) => words.join(' ')).join('\n'));
        expect(lines.length + problems.length).toBe(count);
      }),
    );
  });
});
