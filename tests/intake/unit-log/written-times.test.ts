import { describe, expect, it } from 'vitest';
import { inBerlin, inOneZone, inTwoZones, tables } from './tables.js';

/** Times and units that tables write in ways of their own, with invented values. */
const { taken, reading, times } = await tables();

describe('date and time in columns of their own are put together', () => {
  it.each([
    ['year to minute', 'Year,Month,Day,Hour,Minute,Temp_C', ['2026,7,13,23,45', '2026,7,14,0,0']],
    ['year to hour', 'YYYY,MM,DD,HH,Temp_C', ['26,7,13,23', '26,7,14,0']],
    ['with a clock', 'Year,Mo,Day,Time,Temp_C', ['2026,7,13,23:00', '2026,7,14,00:00']],
    ['hours and minutes in one number', 'Year,Month,Day,HHMM,Temp_C', ['2026,7,13,2300', '2026,7,14,0']],
    ['the day of the year', 'Year,DOY,Hour,Temp_C', ['2026,194,23', '2026,195,0']],
    ['in Spanish', 'Año;Mes;Día;Hora;Temperatura (°C)', ['2026;7;13;23', '2026;7;14;0']],
  ])('%s', async (_, head, rows) => {
    const mark = head.includes(';') ? ';' : ',';
    const read = await times([head, ...rows.map((row, i) => `${row}${mark}${i}.5`)]);
    expect(read).toEqual([expect.stringMatching(/^07-14T06:(?:00|45)$/), '07-14T07:00']);
  });

  it('a day that is none is told, and a table of dates keeps its own', async () => {
    const { examined } = await taken(['Year,Month,Day,Hour,Temp_C', '2026,6,30,23,3.5', '2026,6,31,0,3.6']);
    expect(examined.problems.map(({ message }) => message)).toEqual(['no time in this row']);
    const both = ['2026-07-13 23:00,23,2026,7,13,3.5', '2026-07-14 00:00,0,2026,7,14,3'];
    expect(await times(['Date,Hour,Year,Month,Day,Temp_C', ...both])).toEqual(['07-14T06:00', '07-14T07:00']);
  });
});

describe('the date of rows with times of day alone is the one above them', () => {
  it('in a line before the headings; a clock that begins again is in the next day', async () => {
    const rows = ['22:00,3.5', '23:00,3.6', '00:00,3.7', '01:00,3.8'];
    expect(await times(['Date: 13 July 2026', 'Time,Temp_C', ...rows])).toEqual([
      ...['07-14T05:00', '07-14T06:00', '07-14T07:00', '07-14T08:00'],
    ]);
  });

  it('in lines between the rows, in the order that they show', async () => {
    const rows = ['13/07/2026', '22:00,3.5', '23:00,3.6', '14/07/2026', '00:00,3.7'];
    expect(await times(['Time,Temp_C', ...rows])).toEqual(['07-14T05:00', '07-14T06:00', '07-14T07:00']);
  });

  it('two dates above are refused: which one it is nothing says', async () => {
    const head = ['Start,2026-07-13', 'End,2026-07-14', 'Time,Temp_C'];
    expect(await reading([...head, '22:00,3.5', '23:00,3.6'])).toContain('no column');
  });
});

describe('letters of a zone in each row', () => {
  it.each([
    ['of summer', '2026-07-14 04:00 EDT', '2026-07-14 04:05 EDT', '07-14T08:00'],
    ['with noon', '07/14/2026 4:00 AM PDT', '07/14/2026 4:05 AM PDT', '07-14T11:00'],
    ['as Unix writes them', 'Tue Jul 14 04:00:00 EDT 2026', 'Tue Jul 14 04:05:00 EDT 2026', '07-14T08:00'],
    [
      'of winter on rows of summer, row by row',
      '2026-07-14 04:00 EST',
      '2026-07-14 04:05 EST',
      '07-14T09:00',
    ],
  ])('%s are their offset', async (_, first, second, from) =>
    expect((await times(['Time,Temp_C', `${first},3.5`, `${second},3.6`], inTwoZones))[0]).toBe(from),
  );

  it('that change within the log keep its hours apart', async () => {
    const rows = ['2026-11-01 01:30 EDT,3.5', '2026-11-01 01:30 EST,3.6'];
    expect(await times(['Time,Temp_C', ...rows])).toEqual(['11-01T05:30', '11-01T06:30']);
  });

  it('that mean nothing here are asked about, and a person settles it', async () => {
    const lines = ['Time,Temp_C', '2026-07-14 04:00 XQT,3.5', '2026-07-14 04:05 XQT,3.6'];
    expect(await reading(lines)).toContain('"XQT" in the rows does not say');
    const zone = inOneZone.stops[0]?.zone;
    expect(
      zone === undefined ? undefined : await reading(lines, inTwoZones, { logZone: zone }),
    ).toMatchObject({
      from: '2026-07-14T11:00',
    });
  });

  it('in some rows and not in others are asked about', async () => {
    const lines = ['Time,Temp_C', '2026-07-14 04:00 EDT,3.5', '2026-07-14 04:05,3.6'];
    expect(await reading(lines)).toContain('"EDT" in the rows does not say of each');
  });
});

it('a start above the rows that is the time of the first row gives the zone of its clock', async () => {
  const head = ['Start of recording: Tue Jul 14 04:00:00 CDT 2026', 'Date/Time,Unit,Value'];
  const rows = ['7/14/26 4:00:00 AM,C,3.5', '7/14/26 4:02:00 AM,C,3.6'];
  expect(await reading([...head, ...rows])).toEqual({ from: '2026-07-14T09:00', rows: 2, probe: 3.5 });
  const printed = ['Printed: Tue Jul 14 09:30:00 CDT 2026', 'Date/Time,Unit,Value'];
  expect(await reading([...printed, ...rows])).toMatchObject({ from: '2026-07-14T11:00' });
});

describe('a table without headings', () => {
  it('is read where one column has times and the others say their unit in each cell', async () => {
    expect(await reading(['3.5C,2026-07-14 04:00', '3.6C,2026-07-14 04:05'])).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
    expect(await reading(['1784026800\t38.3 F', '1784027100\t38.5 F'])).toMatchObject({ probe: 3.5 });
  });

  it('is refused where the cells say less', async () => {
    expect(await reading(['2026-07-14 04:00,3.5', '2026-07-14 04:05,3.6'])).toContain('has no headings');
  });
});

describe('a unit', () => {
  it.each([
    ['behind a point', 'Time,Temp.F', '38.3'],
    ['within the words', 'Time,temp_c_avg_front', '3.5'],
    ['with a ring for the degree', 'Time,Temperature ˚F', '38.3'],
  ])('%s', async (_, head, value) => {
    const rows = [`2026-07-14 04:00,${value}`, `2026-07-14 04:05,${value}`];
    expect(await reading([head, ...rows])).toMatchObject({ probe: 3.5 });
  });

  it('that nothing states is the one of the countries of all stops where they have one, and that is told', async () => {
    const lines = ['Zeit;Temperatur', '14.07.2026 04:00;3,5', '14.07.2026 04:05;3,6'];
    expect(await reading(lines)).toContain('nothing says whether "Temperatur" is in');
    const { examined } = await taken(lines, inBerlin);
    expect(examined.takenFor).toContain('probe in °C as is usual in the countries of the stops');
    expect(examined.received).toMatchObject({ mapping: { unitBasis: 'countries' } });
    expect(await reading(lines, inBerlin)).toMatchObject({ probe: 3.5 });
  });

  it('is asked for there too where the values are no temperatures of air in °C, or nothing calls them one', async () => {
    const lines = ['Zeit;Temperatur', '2026-07-14 04:00;65', '2026-07-14 04:05;66'];
    expect(await reading(lines, inBerlin)).toContain('nothing says whether');
    const values = ['Zeit;Wert', '2026-07-14 04:00;3,5', '2026-07-14 04:05;3,6'];
    expect(await reading(values, inBerlin)).toContain('nothing says whether');
  });
});

it('T with a word is a temperature where its numbers have decimals', async () => {
  const lines = ['Zeit;T_front;T_rear', '2026-07-14 04:00;3.5;4.5', '2026-07-14 04:05;3.6;4.6'];
  expect(await reading(lines, inBerlin)).toMatchObject({ probe: 3.5, 'probe-2': 4.5 });
  expect(await reading(['Zeit;T_front', '2026-07-14 04:00;3', '2026-07-14 04:05;4'], inBerlin)).toContain(
    'no column is headed as set point',
  );
});

it('a clock of twelve hours that goes from 12 to 1 once is no clock', async () => {
  const rows = ['11:55', '12:25', '12:55', '1:25'].map((clock) => `7/14/2026,${clock},3.5`);
  expect(await reading(['Date,Time,Temp (°C)', ...rows])).toContain('nothing says which are before noon');
});
