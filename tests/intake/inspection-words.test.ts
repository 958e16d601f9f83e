import { describe, expect, it } from 'vitest';
import {
  parseDefect,
  parseShares,
  parseTemperatureRange,
  splitDefects,
} from '../../src/intake/inspection-words.js';
import { readReadings } from '../../src/intake/readings.js';
import { parseWrittenTable } from '../../src/intake/table/written-table.js';
import { delivery } from './a-delivery.js';

describe('a defect with its percentage', () => {
  it.each([
    ['tipburn 8%', { name: 'tipburn', percent: 8 }],
    ['tipburn 8', { name: 'tipburn', percent: 8 }],
    ['8% tipburn', { name: 'tipburn', percent: 8 }],
    ['tipburn 8% serious 3%', { name: 'tipburn', percent: 8, serious: 3 }],
    ['Tipburn: 8%, of which serious: 3', { name: 'Tipburn', percent: 8, serious: 3 }],
    ['8% tipburn (3% serious)', { name: 'tipburn', percent: 8, serious: 3 }],
    ['russet spotting 1.5 % incl. 0.5 % serious', { name: 'russet spotting', percent: 1.5, serious: 0.5 }],
    ['seedstems 4% permanent', { name: 'seedstems', percent: 4, nature: 'permanent' }],
    ['scars 4% (quality)', { name: 'scars', percent: 4, nature: 'permanent' }],
    [
      'bruising 6,5% serious 2% condition',
      { name: 'bruising', percent: 6.5, serious: 2, nature: 'condition' },
    ],
    ['pudrición 2% grave 2%', { name: 'pudrición', percent: 2, serious: 2 }],
    ['tipburn 108%', { name: 'tipburn', percent: 108 }],
    ['tipburn', undefined],
    ['8%', undefined],
    ['', undefined],
  ])('%s', (text, expected) => expect(parseDefect(text)).toEqual(expected));

  it('several stand one after another', () =>
    expect(splitDefects('tipburn 8%; decay 2% |')).toEqual(['tipburn 8%', 'decay 2%']));
});

it.each([
  ['15% serious 9%', { percent: 15, serious: 9 }],
  ['15', { percent: 15 }],
  ['tipburn 15%', undefined],
])('a total: %s', (text, expected) => expect(parseShares(text)).toEqual(expected));

const f = (low: number, high: number) => ({
  low: { value: low, unit: '°F' },
  high: { value: high, unit: '°F' },
});
it.each([
  ['41F to 44F', f(41, 44)],
  ['41-44 F', f(41, 44)],
  ['41 – 44 °F', f(41, 44)],
  ['41F', f(41, 41)],
  ['41 to 44', undefined],
])('temperatures: %s', (text, expected) => expect(parseTemperatureRange(text)).toEqual(expected));

const HEAD =
  'time,kind,lot,line,stop,count,samples,defect,percent,serious,nature,defects,decay,total,pulps,requested by,requested at,certificate';
const read = (row: string) =>
  readReadings(parseWrittenTable(`${HEAD}\n${row}\n`, 'i.csv'), 'i.csv', delivery);
const AT = '2026-07-16 10:15,inspection';

describe('a row of a table', () => {
  it.each([
    [
      'with all defects in one cell',
      `${AT},L-1,romaine,drop-1,480 cartons,24,,,,,tipburn 8% serious 3%; seedstems 4% permanent,2%,14% serious 5%,41F to 44F,Receiver,2026-07-16 08:20,T-118`,
      {
        lot: 'L-1',
        count: { amount: '480', unit: 'cartons' },
        samples: 24,
        defects: [
          { name: 'tipburn', percent: 8, serious: 3 },
          { name: 'seedstems', percent: 4, nature: 'permanent' },
          { name: 'decay', percent: 2 },
        ],
        total: { percent: 14, serious: 5 },
        requestedBy: 'Receiver',
        certificate: 'T-118',
      },
    ],
    [
      'with a defect of its own',
      `${AT},L-1,romaine,drop-1,,,tipburn,8%,3,condition`,
      { defects: [{ name: 'tipburn', percent: 8, serious: 3, nature: 'condition' }] },
    ],
  ])('%s', (_, row, expected) => {
    const { readings, problems } = read(row);
    expect(problems).toEqual([]);
    expect(readings.map(({ reading }) => reading)).toMatchObject([expected]);
  });

  it.each([
    ['without a lot', `${AT},,romaine,drop-1,,,tipburn,8`, 'lot', 'lot is missing'],
    ['with a percentage above 100', `${AT},L-1,romaine,drop-1,,,tipburn,108`, 'percent', 'between 0 and 100'],
    [
      'with serious damage above the total',
      `${AT},L-1,romaine,drop-1,,,tipburn,8,9`,
      'serious',
      'part of the damage',
    ],
    ['with a percentage of nothing', `${AT},L-1,romaine,drop-1,,,,8`, 'defect', 'defect is missing'],
    ['with a defect of no percentage', `${AT},L-1,romaine,drop-1,,,,,,,tipburn`, 'defects', 'not understood'],
    [
      'asked for after it was made',
      `${AT},L-1,romaine,drop-1,,,,,,,,,,,,2026-07-16 12:00`,
      'requested-at',
      'asked for after it was made',
    ],
  ])('%s is named with its column', (_, row, column, message) => {
    const { readings, problems } = read(row);
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([
      { where: { row: 2, column }, message: expect.stringContaining(message) },
    ]);
  });
});
