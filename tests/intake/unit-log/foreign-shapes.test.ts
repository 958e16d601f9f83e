import { describe, expect, it } from 'vitest';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { celsius, evidence } from './reading.js';
import { inOneZone, inTwoZones, tables } from './tables.js';

/**
 * Shapes of tables that recorders of climate and programs write, each with invented values and the reading that a
 * person gives it. Every one of them was once read otherwise than it is meant.
 */
const { taken, reading } = await tables();

const rows = (first: string, second = first) => [first, second];

describe('a stated offset of the clock is used', () => {
  it.each([
    ['after the heading', ['Date Time, GMT+01:00;Temp, °C'], '2026-07-14T03:00'],
    ['west of UTC', ['Date Time GMT-05:00;Temp, °C'], '2026-07-14T09:00'],
    ['in brackets', ['Time (UTC+1);Temp (°C)'], '2026-07-14T03:00'],
    ['as letters of summer', ['DateTime(CEST);Temp_C'], '2026-07-14T02:00'],
    ['as letters of the other half of the year than the rows', ['DateTime(EDT);Temp_C'], '2026-07-14T08:00'],
    ['in the line above', ['Time Zone;UTC -05:00', 'Time;Temp (°C)'], '2026-07-14T09:00'],
    ['after a colon', ['Time zone: GMT -5', 'Time;Temp (°C)'], '2026-07-14T09:00'],
    ['as hours alone', ['Clock zone;UTC+2', 'Time;Temp (°C)'], '2026-07-14T02:00'],
    ['under its label', ['Name;Time zone;Units', 'A;UTC-6;Celsius', 'Time;Temp'], '2026-07-14T10:00'],
    ['of half an hour', ['Time (UTC+05:30);Temp (°C)'], '2026-07-13T22:30'],
    ['as a name', ['Time zone;America/Denver', 'Time;Temp (°C)'], '2026-07-14T10:00'],
    ['by nobody: the only zone of the stops', ['Time;Temp (°C)'], '2026-07-14T11:00'],
  ])('%s', async (_, head, from) =>
    expect(await reading([...head, ...rows('2026-07-14 04:00;3.5', '2026-07-14 04:05;3.6')])).toEqual({
      ...{ from, rows: 2, probe: 3.5 },
    }),
  );

  it.each([
    ['letters of winter on rows of summer', 'DateTime(EST);Temp_C', '"EST" beside the times does not say'],
    ['an offset that no zone keeps', 'Time (UTC-03:30);Temp_C', '"UTC-03:30" beside the times does not say'],
  ])('%s are asked about', async (_, head, message) => {
    const { examined } = await taken([head, ...rows('2026-07-14 04:00;3.5')], inTwoZones);
    expect(examined.problems[0]?.message).toContain(message);
    expect(examined.received.kind).toBe('document');
  });

  it('both ways are shown with the first rows', async () => {
    const { examined } = await taken(['DateTime(EST);Temp_C', '2026-07-14 04:00;3.5']);
    expect(examined.problems[0]?.ways).toEqual([
      { answer: '--log-zone Etc/GMT+5', rows: ['2026-07-14 04:00 is 14 Jul 2026, 09:00 UTC: 3.5'] },
      { answer: '--log-zone America/New_York', rows: ['2026-07-14 04:00 is 14 Jul 2026, 08:00 UTC: 3.5'] },
    ]);
  });

  it('two statements that differ are asked about, and a person decides', async () => {
    const lines = ['Time zone;UTC-5', 'Time (UTC);Temp (°C)', '2026-07-14 04:00;3.5', '2026-07-14 04:05;3.5'];
    expect(await reading(lines)).toContain('"UTC" and "UTC-5"');
    const zone = inOneZone.stops[0]?.zone;
    expect(zone === undefined ? undefined : await reading(lines, inOneZone, { logZone: zone })).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });
});

describe('the order of day, month and year is weighed', () => {
  const through = (...dates: string[]) => ['Time,Temp (°C)', ...dates.map((date, i) => `${date},${i}`)];
  it.each([
    [
      'two digits of the year first',
      through('26.07.13 23:30', '26.07.13 23:45', '26.07.14 00:00', '26.07.14 00:15'),
      '2026-07-14T06:30',
    ],
    [
      'month first, with points',
      through('07.08.26 23:30', '07.08.26 23:45', '07.09.26 00:00', '07.09.26 00:15'),
      '2026-07-09T06:30',
    ],
    [
      'day first, with points',
      through('08.07.2026 23:30', '08.07.2026 23:45', '09.07.2026 00:00'),
      '2026-07-09T06:30',
    ],
    ['one day, by the planned time', through('07.12.26 21:00', '07.12.26 21:15'), '2026-07-13T04:00'],
    [
      'a clock in a column of its own',
      ['Date,Time,Temp (°C)', '26.07.13,23:45:00,1', '26.07.14,00:00:00,2', '26.07.14,00:15:00,3'],
      '2026-07-14T06:45',
    ],
    [
      'two columns under one heading',
      [
        '#,"Date Time, GMT-07:00","Date Time, GMT-07:00",Temp (°C)',
        '1,7/13/2026,23:45:00,1',
        '2,7/14/2026,0:00:00,2',
      ],
      '2026-07-14T06:45',
    ],
    [
      'noon in words',
      [
        'Date,Time,Temp (°C)',
        '07.13.26,11:45:00 odp.,1',
        '07.14.26,12:00:00 dop.,2',
        '07.14.26,12:15:00 dop.,3',
      ],
      '2026-07-14T06:45',
    ],
  ])('%s', async (_, lines, from) =>
    expect(await reading(lines)).toMatchObject({ from, rows: lines.length - 1 }),
  );

  it('one day far from the planned time is asked about, with the first rows in every way', async () => {
    const { examined } = await taken(through('04.08.11 21:00', '04.08.11 21:15'));
    expect(examined.problems[0]?.ways?.map(({ answer, rows: [first] }) => [answer, first])).toEqual([
      ['--log-dates month-day-year', '04.08.11 21:00 is 8 Apr 2011, 21:00: 0'],
      ['--log-dates day-month-year', '04.08.11 21:00 is 4 Aug 2011, 21:00: 0'],
      ['--log-dates year-month-day', '04.08.11 21:00 is 11 Aug 2004, 21:00: 0'],
    ]);
  });

  it('hours that never go past 12 and begin again are no clock', async () => {
    const hours = [10, 11, 12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 1, 2, 3];
    const lines = hours.map((h, i) => `2026-07-14 ${String(h).padStart(2, '0')}:${i < 3 ? '00' : '30'},3.5`);
    expect(await reading(['Time,Temp (°C)', ...lines])).toContain('nothing says which are before noon');
  });
});

describe('a column is what its unit, words and cells say', () => {
  const table = (heading: string, row: string) => [
    heading,
    `2026-07-14 04:00;${row}`,
    `2026-07-14 04:05;${row}`,
  ];
  it.each([
    ['humidity beside a temperature', 'Time;Temp (°C) c:1;RH (%) c:1 2', '3.5;91', { probe: 3.5 }],
    [
      'a sensor in lux, ppm, V and hPa',
      'Time;Sensor 1 (lux);Sensor 2 [ppm];Sensor 3 (V);Probe 4 [hPa];Probe (°C)',
      '9;9;3;9;3.5',
      { probe: 3.5 },
    ],
    ['a dew point', 'Time;Temperature_Celsius;Dew Point (°C)', '3.5;1.2', { probe: 3.5 }],
    ['numbered headings', 'Time;1. Temperature [oC];2. Humidity [%]', '3.5;91', { probe: 3.5 }],
    ['Fahrenheit as a word', 'Time;Temperature_Fahrenheit', '38.3', { probe: 3.5 }],
    ['degrees as letters', 'Time;Deg F', '38.3', { probe: 3.5 }],
    [
      'a column of the unit of another column',
      'Time;Value;O2_Unit;Temp;Temp_Unit',
      '202.8;µmol/L;3.5;°C',
      { probe: 3.5 },
    ],
    ['a channel beside a temperature', 'Time;Channel;Temp (°C)', '10;3.5', { probe: 3.5 }],
    [
      'what is told of a mean',
      'Time;temp_c_mean;temp_c_num_pts;temp_c_uncert',
      '3.5;180;0.1',
      { probe: 3.5 },
    ],
    ['degC', 'Time;Probe degC', '3.5', { probe: 3.5 }],
    ['degrees in a lost encoding', 'Time;Temperature (\u00f8C)', '3.5', { probe: 3.5 }],
    ['numbers of the instruments', 'Time;Temp (°C) LGR S/N: 20061234,  #20061234', '3.5', { probe: 3.5 }],
    [
      'minimum and maximum beside the mean',
      'Time;Min temp (°C);Avg temp (°C);Max temp (°C)',
      '3;3.5;4',
      { probe: 3.5 },
    ],
    ['the mean beside the plain value', 'Time;Temp avg (°C);Temp (°C)', '3.2;3.5', { probe: 3.5 }],
    ['one sensor in two units', 'Time;Temp (°F);Temp (°C)', '38.3;3.5', { probe: 3.5 }],
    ['a unit in a cell of each row', 'Time;Unit;Value', 'C;3.5', { probe: 3.5 }],
    ['the other unit in a cell of each row', 'Time;Value;Units', '38.3;°F', { probe: 3.5 }],
    ['the number of the sensor', 'Time;Sensor;Temperature (°C)', '7;3.5', { probe: 3.5 }],
    ['all digits of a program', 'Time;Temperature (°F)', '38.299999999999997', { probe: 3.5 }],
    ['an exponent', 'Time;Temperature (°C)', '3.5e0', { probe: 3.5 }],
    ['a heading in another language, by its unit', 'Aika;Lämpötila (°C)', '3.5', { probe: 3.5 }],
  ])('%s', async (_, heading, row, expected) =>
    expect(await reading(table(heading, row))).toEqual({ from: '2026-07-14T11:00', rows: 2, ...expected }),
  );

  it('the unit changes from row to row where its cell does', async () => {
    const { examined, path } = await taken([
      'Time,Value,Unit',
      '2026-07-14 04:00,3.5,C',
      '2026-07-14 04:05,38.3,F',
    ]);
    if (examined.received.kind !== 'unit-log') throw new Error(examined.problems[0]?.message);
    const log = await readUnitLog(path, examined.received.mapping, { evidence, addedSeconds: 0 });
    expect(celsius(log.channels.probe)).toEqual([3.5, 3.5]);
  });

  it('units stand in the line over the headings', async () => {
    const head = ['Site,Air,,Air,', 'yyyy-mm-dd,%,,°C,', 'Date-Time,Value,Grade,Value,Grade'];
    expect(await reading([...head, '2026-07-14 04:00,91,1,3.5,1', '2026-07-14 04:05,92,1,3.6,1'])).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });

  it('a mean, a minimum and a maximum with units under them are one reading', async () => {
    const head = ['Timestamp,Avg,Min,Max', ',°C,°C,°C'];
    expect(await reading([...head, '2026-07-14 04:00,3.5,3.3,3.7', '2026-07-14 04:05,3.6,3.4,3.8'])).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });

  it('rows with nothing but blanks between their values are told of, not passed over', async () => {
    const lines = Array.from({ length: 12 }, (_, i) => `2026-07-14 04:${i + 10}  3.5  91`);
    expect(await reading(lines)).toContain('nothing but blanks or words between them');
  });

  it.each([
    ['a count since 1970', (i: number) => `17840268${i + 10} ${i}.5`],
    ['words', (i: number) => `14/07/26@04:${i + 10}:00 - Temp front :${i}.5 C`],
    ['a month in letters', (i: number) => `14-Jul-26 04:${i + 10}:00 - Current temperature: ${i}.5C`],
    ['words and a count', (i: number) => `17840268${i + 10}.5 Temp=${i}.5 C and humidity=60`],
  ])('rows of %s and a temperature are told of too', async (_, row) => {
    const lines = Array.from({ length: 12 }, (__, i) => row(i));
    expect(await reading(lines)).toContain('nothing but blanks or words between them');
  });

  it('messages with a time and no temperature are none', async () => {
    const lines = Array.from(
      { length: 12 },
      (_, i) => `14/07/2026, 04:${i + 10} - R. Tansy: dock ${i} is free`,
    );
    expect(await reading(lines)).toBe('document: text');
  });

  it('a column of values that nothing names takes no unit from elsewhere in the file', async () => {
    const lines = ['Sensor,°C', 'Time,Value,Grade', '2026-07-14 04:00,91,1', '2026-07-14 04:05,92,1'];
    expect(await reading(lines)).toContain('nothing says whether "Value" is in °F or °C');
  });

  it('degrees written with an ordinal mark, in a column of their own', async () => {
    expect(
      await reading([
        'Fecha;Variable;Valor;Unidad',
        '2026-07-14 04:00;Temperatura a 0.1m;3.5;ºC',
        '2026-07-14 04:05;Temperatura a 0.1m;3.6;ºC',
      ]),
    ).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });

  it('a heading with a comma stands over its own column', async () => {
    const head = '#,Date Time, GMT-05:00,Temp, °C (LGR 1, SEN 2),Note';
    expect(await reading([head, '1,07/14/26 04:00:00 AM,3.5,', '2,07/14/26 04:15:00 AM,3.6,'])).toEqual({
      ...{ from: '2026-07-14T09:00', rows: 2, probe: 3.5 },
    });
  });

  it('numbers in front of the rows that have no heading move no heading', async () => {
    expect(
      await reading(['"Time","Temp_C"', '"1","2026-07-14 04:00",3.5', '"2","2026-07-14 04:05",3.6']),
    ).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });

  it('times are counted from 1970 where they are numbers', async () => {
    expect(await reading(['time,temp_c', '1784026800,3.5', '1784027100,3.6'], inTwoZones)).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
    expect(await reading(['time,temp_c', '1784026800000,3.5', '1784027100250,3.6'])).toMatchObject({
      rows: 2,
    });
  });

  it.each([
    [
      'no temperature at all',
      ['Time,Voltage (mV)', '2026-07-14 04:00,12'],
      'no column is headed as set point',
    ],
    [
      'extremes alone',
      ['Time,Min temp (°C),Max temp (°C)', '2026-07-14 04:00,3,4'],
      'no column is headed as set point',
    ],
    ['no headings', ['2026-07-14 04:00,3.5', '2026-07-14 04:05,3.6'], 'the table has no headings'],
    [
      'a decimal mark that cuts the columns',
      ['Time,Temp (°C),RH (%)', '2026-07-14 04:00,3,5,91,2', '2026-07-14 04:05,3,6,91,3'],
      'decimal mark',
    ],
  ])('%s: refused with the reason', async (_, lines, message) =>
    expect(await reading(lines)).toContain(message),
  );
});

describe('rows of several instruments or quantities are not mixed into one curve', () => {
  const of = (names: readonly string[], heading: string) => [
    `Time,${heading},Temp (°C)`,
    ...Array.from({ length: 24 }, (_, i) => {
      const minute = String(Math.floor(i / names.length)).padStart(2, '0');
      return `2026-07-14 04:${minute},${names[i % names.length]},${i % names.length}.5`;
    }),
  ];
  it.each([
    ['by name', of(['North', 'South'], 'Logger'), '"Logger": North (12 rows), South (12 rows)'],
    ['by place', of(['Dock', 'Box'], 'Location'), '"Location": Dock (12 rows), Box (12 rows)'],
    ['by a word that is not known', of(['A7', 'B2'], 'Wo'), '"Wo": A7 (12 rows), B2 (12 rows)'],
  ])('%s: asked', async (_, lines, message) => expect(await reading(lines)).toContain(message));

  it('of more instruments than are named one by one', async () => {
    const lines = Array.from({ length: 300 }, (_, i) => `2026-07-14 04:0${i % 3},S${Math.floor(i / 3)},3.5`);
    expect(await reading(['Time,Sensor name,Temp (°C)', ...lines])).toContain('"Sensor name": S0 (3 rows)');
    const numbered = Array.from({ length: 59 }, (_, i) => `2026-07-14 04:${i + 10},${i},3.5`.slice(0, 24));
    expect(await reading(['Time,Serial,Temp (°C)', ...numbered.slice(0, 49)])).toMatchObject({ rows: 49 });
  });

  it('by a word that is not known, each at moments of its own', async () => {
    const parts = ['Core', 'Board', 'Sonde'];
    const lines = Array.from({ length: 60 }, (_, i) => {
      const second = `${String(Math.floor(i / 60) + 4).padStart(2, '0')}:${String(i).padStart(2, '0')}`;
      return `2026-07-14 04:${second},${parts[i % 3]},${[24, 12, 3][i % 3]}.${i % 4}`;
    });
    expect(await reading(['Time,Part,Temp (°C)', ...lines])).toContain('"Part": Core (20 rows)');
  });

  it('a word that changes with what the one instrument does is none of several', async () => {
    const lines = Array.from({ length: 60 }, (_, i) => {
      const minute = String(i).padStart(2, '0');
      return `2026-07-14 04:${minute},${i % 10 < 5 ? 'on' : 'off'},${(3 + (i % 10) / 5).toFixed(1)}`;
    });
    expect(await reading(['Time,Fan,Temp (°C)', ...lines])).toMatchObject({ rows: 60 });
  });

  it('a person says which, in a map', async () => {
    const lines = of(['North', 'South'], 'Logger');
    const logMap = { columns: {}, only: [{ column: 'Logger', is: 'South' }] };
    expect(await reading(lines, inOneZone, { logMap })).toEqual({
      from: '2026-07-14T11:00',
      rows: 12,
      probe: 1.5,
    });
  });

  it('a unit that moves from place to place is one', async () => {
    const lines = ['Yuma', 'Yuma', 'Gila Bend', 'Gila Bend', 'Tucson', 'Tucson'].map(
      (place, i) => `2026-07-14 04:0${i},${place},3.5`,
    );
    const table = ['Time,Location,Temp (°C)', ...lines];
    expect(await reading(table)).toMatchObject({ rows: 6 });
    expect((await taken(table)).examined.takenFor).toContain(
      'one instrument that moved, by column "Location": Yuma (2 rows), Gila Bend (2 rows), Tucson (2 rows)',
    );
  });

  it('of rows for temperature and rows for humidity the first are read', async () => {
    const lines = ['04:00', '04:05'].flatMap((time) => [
      `2026-07-14 ${time},temperature,3.5,°C`,
      `2026-07-14 ${time},humidity,91,%`,
    ]);
    expect(await reading(['Time,Quantity,Value,Unit', ...lines])).toEqual({
      ...{ from: '2026-07-14T11:00', rows: 2, probe: 3.5 },
    });
  });

  it('rows of one time with other values that nothing tells apart are asked about', async () => {
    const lines = Array.from({ length: 20 }, (_, i) => `2026-07-14 04:0${i % 5},${i}.5`);
    expect(await reading(['Time,Temp (°C)', ...lines])).toContain('no column says what sets them apart');
  });
});

it('a letter of another encoding late in the file decides for the whole of it', async () => {
  const row = '2026-07-14 04:00;3.5;ok\n';
  const text = `Time;Temp (\u00b0C);Note\n${row.repeat(20_000)}2026-07-14 04:05;3.6;caf\u00e9\n`;
  expect(await reading(Buffer.from(text, 'latin1'))).toMatchObject({ probe: 3.5, rows: 2 });
  const late = `Time;Temp (C);Note\n${row.repeat(20_000)}2026-07-14 04:05;3.6;caf\u00e9\n`;
  const { examined } = await taken(Buffer.from(late, 'latin1'));
  expect(examined.received.kind === 'unit-log' && examined.received.mapping.encoding).toBe('latin1');
});

it('each kind of problem of rows is told, however frequent another one is', async () => {
  const lines = Array.from(
    { length: 300 },
    (_, i) =>
      `2026-07-14 ${String(4 + Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')},${i % 3 === 0 ? 'warm' : '3.5'}`,
  );
  lines.splice(200, 0, '2026-07-14 03:59,3.5');
  const { examined } = await taken(['Time,Temp (°C)', '2026-07-14 03:58,3.4', ...lines]);
  const messages = examined.problems.map(({ message }) => message);
  expect(messages.filter((m) => m.includes('back to 2026-07-14T10:59:00Z'))).toHaveLength(1);
  expect(messages.filter((m) => m.startsWith('and '))).toEqual([
    'and 90 more values that are no temperature',
  ]);
});
