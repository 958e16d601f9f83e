import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reading as readingSchema } from '../../src/core/model/evidence.js';
import { readReadings } from '../../src/intake/readings.js';
import { parseWrittenTable } from '../../src/intake/table/written-table.js';
import { delivery } from './a-delivery.js';

const HEAD =
  'time,kind,value,unit,line,position,stop,by,note,from,run,state,event,with,how,set point,fuel,alarms,instrument,said by,with name';
const read = (...rows: string[]) =>
  readReadings(parseWrittenTable(`${HEAD}\n${rows.join('\n')}\n`, 'r.csv'), 'r.csv', delivery);

describe('particulars and instruments of a table', () => {
  const MORE = 'time,kind,value,type,serial,owner,where,ice-before,unit,subject,with,note,on,stop';
  const rows = (...lines: string[]) =>
    readReadings(parseWrittenTable(`${MORE}\n${lines.join('\n')}\n`, 'r.csv'), 'r.csv', delivery);
  it('are read with what is stated of them', () => {
    const { readings, problems } = rows(
      '2026-07-14 04:40,instrument,77120455,recorder,77120455,shipper Example,pallet 3,,,,,,,load-1',
      '2026-07-14 04:41,instrument,P-7,thermometer,,,,32.4,F,,,,,load-1',
      '2026-07-14 04:42,particular,,,,,,,,counted-by,shipper,SLC,bill,load-1',
      '2026-07-14 04:43,particular,480 cartons,,,,,,,count,driver,,,load-1',
    );
    expect(problems).toEqual([]);
    expect(readings.map(({ reading }) => reading)).toMatchObject([
      {
        kind: 'instrument',
        type: 'recorder',
        owner: { party: 'shipper', name: 'Example' },
        where: 'pallet 3',
      },
      { kind: 'instrument', type: 'thermometer', iceBefore: { value: 32.4, unit: '°F' } },
      { kind: 'particular', of: 'counted-by', who: { party: 'shipper' }, words: 'SLC', document: 'bill' },
      {
        kind: 'particular',
        of: 'count',
        quantity: { amount: '480', unit: 'cartons' },
        who: { party: 'driver' },
      },
    ]);
  });

  it('that lack what they need are named with row and column', () => {
    const { problems } = rows(
      '2026-07-14 04:40,instrument,P-7,,,,,,,,,,,load-1',
      '2026-07-14 04:41,particular,,,,,,,,counted-by,,,,load-1',
      '2026-07-14 04:42,particular,,,,,,,,count,,,,load-1',
    );
    expect(problems.map(({ where }) => [where.row, where.column])).toEqual([
      [2, 'type'],
      [3, 'with'],
      [4, 'value'],
    ]);
  });
});

describe('a readings table', () => {
  it.each([
    [
      'pulp',
      '2026-07-14 04:10,pulp,34.2,F,romaine,nose,load-1,M. Ortega,,shipper,,,,,,,,,P-7',
      {
        kind: 'pulp',
        temperature: { value: 34.2, unit: '°F' },
        from: 'shipper',
        instrument: 'P-7',
        line: 'romaine',
        place: { stop: 'load-1', position: 'nose' },
        by: 'M. Ortega',
      },
    ],
    [
      'pulp with unit in the cell',
      '2026-07-14 04:10,pulp,1.2 °C,,romaine,,load-1',
      { temperature: { value: 1.2, unit: '°C' }, from: 'driver' },
    ],
    [
      'set point',
      '2026-07-14 04:10,set-point,36,°F,,,load-1,,,dispatcher,continuous',
      { kind: 'set-point', shownBy: 'dispatcher', run: 'continuous' },
    ],
    [
      'unit check in the word of version 0.1',
      '2026-07-14 04:10,round,37,F,,,load-1',
      { kind: 'round', boxAir: { value: 37, unit: '°F' } },
    ],
    [
      'unit check',
      '2026-07-14 04:10,check,36.2,F,,,load-1,,,,,,,,,36 F,3/4,A12; A13',
      {
        kind: 'round',
        boxAir: { value: 36.2, unit: '°F' },
        setPoint: { value: 36, unit: '°F' },
        fuel: 0.75,
        alarms: ['A12', 'A13'],
      },
    ],
    [
      'seal',
      '2026-07-14 04:10,seal,4471908,,,,load-1,,,,,applied',
      { kind: 'seal', number: '4471908', state: 'applied' },
    ],
    [
      'bracing',
      '2026-07-14 04:10,bracing,Load bars,,,,load-1,,two',
      { kind: 'bracing', device: 'load-bars', note: 'two' },
    ],
    ['event', '2026-07-14 04:10,event,doors-closed,,,,load-1', { kind: 'event', event: 'doors-closed' }],
    [
      'contact',
      '2026-07-14 04:10,contact,,,,,load-1,,warm pulp,,,,,shipper,call',
      { kind: 'contact', with: 'shipper', how: 'call', about: 'warm pulp' },
    ],
    [
      'outcome with who said it, to whom and how',
      '2026-07-14 04:10,outcome,4 pallets,,romaine,,load-1,,warm,,,refused,,consignor,call,,,,,D. Haas,P. Wren',
      {
        kind: 'outcome',
        outcome: 'refused',
        saidBy: 'D. Haas',
        told: 'consignor',
        toldName: 'P. Wren',
        how: 'call',
      },
    ],
    [
      'contact with the name of the one who was told',
      '2026-07-14 04:10,contact,,,,,load-1,,warm pulp,,,,,shipper,call,,,,,,P. Wren',
      { kind: 'contact', with: 'shipper', withName: 'P. Wren' },
    ],
    [
      'statement',
      '2026-07-14 04:10,statement,"I was there, all night",,,,load-1,M. Ortega',
      { kind: 'statement', text: 'I was there, all night' },
    ],
  ])('reads a %s', (_, row, expected) => {
    const { readings, problems } = read(row);
    expect(problems).toEqual([]);
    expect(readings).toMatchObject([
      {
        row: 2,
        reading: {
          ...expected,
          time: { instant: '2026-07-14T11:10:00.000Z', zone: 'America/Phoenix', basis: 'typed' },
        },
      },
    ]);
    const whole = { ...readings[0]?.reading, evidence: 'e2', source: { is: 'row', evidence: 'e1', row: 2 } };
    expect(readingSchema.safeParse(whole).error).toBeUndefined();
  });

  it.each([
    ['900 as a temperature', 'pulp,900,F,romaine,,load-1', 'value', /not a temperature/],
    ['a text as a temperature', 'pulp,warm,F,romaine,,load-1', 'value', /not a temperature/],
    ['no unit', 'pulp,34,,romaine,,load-1', 'unit', /°F or °C/],
    ['an unknown unit', 'pulp,34,K,romaine,,load-1', 'unit', /"K"/],
    ['an unknown line', 'pulp,34,F,romane,,load-1', 'line', /romaine/],
    ['an unknown stop', 'pulp,34,F,romaine,,load-9', 'stop', /load-1, drop-1/],
    ['an unknown kind', 'temperature,34,F,romaine,,load-1', 'kind', /pulp, set-point/],
    ['an unknown position', 'pulp,34,F,romaine,front,load-1', 'position', /nose, middle, tail/],
    ['no kind', ',34,F,romaine,,load-1', 'kind', /missing/],
  ])('refuses %s by row and column, and takes the others', (_, cells, column, message) => {
    const good = '2026-07-14 04:10,pulp,34,F,romaine,,load-1';
    const { readings, problems, rowsLeftOut } = read(good, `2026-07-14 04:11,${cells}`, good);
    expect(readings.map((r) => r.row)).toEqual([2, 4]);
    expect(rowsLeftOut).toBe(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.where).toEqual({ file: 'r.csv', row: 3, column });
    expect(problems[0]?.message).toMatch(message);
  });

  it('reads times by their own offset, by the stop, by the order of the column; else as local', () => {
    const { readings, problems } = read(
      '2026-07-14 04:10-06:00,event,arrived,,,,load-1',
      '2026-07-16 06:00,event,arrived,,,,drop-1',
      '2026-07-15 06:00,event,stopped',
      ',event,resumed',
    );
    expect(readings.map(({ reading: { time } }) => (time.is === 'known' ? time.instant : time.is))).toEqual([
      '2026-07-14T10:10:00.000Z',
      '2026-07-16T11:00:00.000Z',
      'local',
      'none',
    ]);
    expect(problems.map((p) => [p.where.row, p.where.column])).toEqual([[4, 'stop']]);
    const spreadsheet = read('7/14/2026 4:10,event,arrived,,,,load-1');
    expect(spreadsheet.readings[0]?.reading.time).toMatchObject({ instant: '2026-07-14T11:10:00.000Z' });
    const planned = read('7/8/2026 4:10,event,arrived,,,,load-1');
    expect(planned.readings[0]?.reading.time).toMatchObject({ instant: '2026-07-08T11:10:00.000Z' });
  });

  it('never throws, and every row is taken in or named', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 8 }).map((s) => s.replaceAll(/[",\r\n]/g, '')),
      fc.constantFrom('pulp', '34', 'F', 'load-1', '2026-07-14 04:10'),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 19 }), { minLength: 1, maxLength: 5 }),
        (rows) => {
          const table = parseWrittenTable(`${HEAD}\n${rows.map((r) => r.join(',')).join('\n')}\n`, 'r.csv');
          const { readings, rowsLeftOut } = readReadings(table, 'r.csv', delivery);
          expect(readings.length + rowsLeftOut).toBe(table.rows.length);
        },
      ),
    );
  });
});
