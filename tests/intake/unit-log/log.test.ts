import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { zone } from '../../../src/core/model/time.js';
import type { LogContext } from '../../../src/intake/unit-log/log-context.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { recogniseUnitLog } from '../../../src/intake/unit-log/recognise.js';
import { cases } from '../../properties.js';
import { celsius, evidence, instants, mappingOf, phoenix, read, recognised, source } from './reading.js';

describe('a unit log of any common shape', () => {
  const US =
    'Unit U-1\nTrip,12\n\nDate,Time,Set Point (F),Return Air (F),Discharge Air (F),Op Mode\n07/13/2026,11:00 PM,36.0,37.4,33.8,Continuous\n07/13/2026,11:05 PM,36.0,37.4,,Defrost\n';
  const EUROPEAN =
    'Datum Date;Time;Setpoint °C;Return °C\n13.07.2026;23:00;2,2;3,0\n13.07.2026;23:05;2,2;3,5\n';
  const ISO =
    'timestamp\tset_point_c\treturn_air_c\tamb\n2026-07-14T06:00:00Z\t2.2\t3.0\t31\n2026-07-14T06:05:00Z\t2.2\t3.5\t31\n';
  it.each([
    ['US dates in two columns, preamble, °F', US, ['2026-07-14T06:00', '2026-07-14T06:05'], [3, 3]],
    [
      'European dates, semicolon, decimal comma',
      EUROPEAN,
      ['2026-07-14T06:00', '2026-07-14T06:05'],
      [3, 3.5],
    ],
    ['ISO with offset, tabs, units in the heading', ISO, ['2026-07-14T06:00', '2026-07-14T06:05'], [3, 3.5]],
    [
      'UTF-16',
      Buffer.from(`\ufeff${EUROPEAN}`, 'utf16le'),
      ['2026-07-14T06:00', '2026-07-14T06:05'],
      [3, 3.5],
    ],
    ['Latin-1', Buffer.from(EUROPEAN, 'latin1'), ['2026-07-14T06:00', '2026-07-14T06:05'], [3, 3.5]],
    ['quoted cells', US.replaceAll(/[^,\n]+/g, '"$&"'), ['2026-07-14T06:00', '2026-07-14T06:05'], [3, 3]],
    [
      'pipes and CR',
      ISO.replaceAll('\t', '|').replaceAll('\n', '\r'),
      ['2026-07-14T06:00', '2026-07-14T06:05'],
      [3, 3.5],
    ],
    ['a line of units', 'Time,SP,Ret\n,°F,°F\n2026-07-13 23:00,36,37.4\n', ['2026-07-14T06:00'], [3]],
    ['units in the cells', 'Time,SP,Ret\n2026-07-13 23:00,36 °F,37.4 °F\n', ['2026-07-14T06:00'], [3]],
  ])('%s', async (_, bytes, times, returnAir) => {
    const log = await read(bytes);
    expect(instants(log.times)).toEqual(times);
    expect(celsius(log.channels['return-air'])).toEqual(returnAir);
    expect(log.problemCount).toBe(0);
  });

  it('keeps states as written, a missing value as NaN, and the line of each row', async () => {
    const log = await read(US);
    expect([...(log.states.mode ?? [])]).toEqual(['Continuous', 'Defrost']);
    expect(log.channels['supply-air']?.at(1)).toBeNaN();
    expect([...log.rows]).toEqual([5, 6]);
  });

  it('finds a column of operation by its cells, beside one of the run mode', async () => {
    const words = ['Cool', 'Null', 'Cool', 'Defrost', 'Off', 'Heat'];
    const rows = words.map((word, i) => `2026-07-13 23:0${i},37.4,Continuous,${word},X`);
    const log = await read(['Time,Return (F),Op Mode,Stat 3,Note', ...rows, ''].join('\n'));
    expect([...(log.states.operation ?? [])]).toEqual(words);
    expect(log.states.mode?.at(0)).toBe('Continuous');
  });

  it('says what it took each column for', async () => {
    const mapping = await mappingOf(US);
    expect(mapping.time).toEqual({ columns: [0, 1], order: 'month-day-year', zone: phoenix });
    expect(mapping.headerRow).toBe(4);
    expect(mapping.channels.map((c) => [c.channel, c.column, c.unit])).toEqual([
      ['set-point', 2, '°F'],
      ['return-air', 3, '°F'],
      ['supply-air', 4, '°F'],
    ]);
  });

  it.each([
    [
      'said by a person',
      { logZone: zone.parse('America/Chicago') },
      'Clock zone,America/Denver',
      'America/Chicago',
    ],
    ['stated above the header', { logZone: undefined }, 'Clock zone,America/Denver', 'America/Denver'],
    ['the only one there is', { onlyZone: phoenix, logZone: undefined }, 'Unit,1', 'America/Phoenix'],
  ])('its zone is %s', async (_, said, line, name) => {
    const { logZone, ...others } = said;
    const context = { fileName: 'x', ...others, ...omitUndefined({ logZone }) };
    const found = await recogniseUnitLog(source(`${line}\n\nTime,Return F\n2026-07-13 23:00,36\n`), context);
    expect(found).toMatchObject({ is: 'log', mapping: { time: { zone: name } } });
  });

  it('asks for the zone when nothing states it', async () => {
    const found = await recogniseUnitLog(source('Time,Return F\n2026-07-13 23:00,36\n'), { fileName: 'x' });
    expect(found.is).toBe('zone-needed');
  });
});

describe('what cannot be found out', () => {
  it.each([
    ['no time column', 'Set point F,Return F\n36,37\n', /1 "Set point F", 2 "Return F"/],
    ['times without a date', 'Time,Return F\n23:00,37\n23:05,37\n', /no column has the date/],
    ['unknown headings', 'Time,T1,T2\n2026-07-13 23:00,36,37\n', /2 "T1", 3 "T2"/],
    ['no unit', 'Time,Return air\n2026-07-13 23:00,36\n', /°F or °C/],
    ['dates that can be read two ways', 'Time,Return F\n07/08/2026 23:00,36\n', /month first or day first/],
    ['no rows', 'Time,Return F\n', /no rows/],
    ['nothing', '', /no rows/],
  ])('is a problem that shows it: %s', async (_, text, message) => {
    const found = await recognised(text);
    expect(found.is).toBe('not-a-log');
    if (found.is === 'not-a-log') {
      expect(found.problem.message).toMatch(message);
      expect(found.problem.where.file).toBe('log.csv');
      expect(found.problem.fix).toBeTypeOf('string');
    }
  });

  it('can be said: columns by heading or number, unit, order of dates', async () => {
    const text = 'Wann,T1,T2\n07/08/2026 23:00,36,37\n';
    const log = await read(text, {
      logColumns: { time: 'Wann', 'set-point': 2, 'return-air': 'T2' },
      logUnit: '°C',
      logDates: 'day-month-year',
    });
    expect(instants(log.times)).toEqual(['2026-08-08T06:00']);
    expect(celsius(log.channels['return-air'])).toEqual([37]);
  });
});

describe('bad rows', () => {
  const rows = (...lines: string[]): string => `Time,Return F\n${lines.join('\n')}\n`;
  const problems = async (text: string, context: Partial<LogContext> = {}) => {
    const log = await read(text, context);
    return { log, problems: log.problems.map((p) => [p.row, p.is]) };
  };

  it('are named with their line and kind; the others stay', async () => {
    const { log, problems: found } = await problems(
      rows(
        '2026-07-14 01:00,36',
        ',36',
        'soon,36',
        '2026-07-14 01:05,900',
        '2026-07-14 01:10,warm',
        '2026-07-14 01:15,---',
        '2026-07-14 01:00,37',
        '2026-07-14 01:20,',
      ),
    );
    expect(found).toEqual([
      [3, 'no-time'],
      [4, 'bad-time'],
      [5, 'impossible-value'],
      [6, 'impossible-value'],
      [7, 'sensor-fault'],
      [8, 'duplicate'],
      [8, 'time-steps-back'],
    ]);
    expect(celsius(log.channels['return-air'])).toEqual([
      2.22,
      Number.NaN,
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ]);
    expect(log.rowsLeftOut).toBe(3);
  });

  it('are sorted when the log runs backwards', async () => {
    const log = await read(rows('2026-07-14 02:00,36', '2026-07-14 01:00,37'));
    expect([...log.rows]).toEqual([3, 2]);
  });

  const FOLD = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00'].map((t) => `2026-11-01 ${t},36`);
  it.each([
    ['forwards', FOLD],
    ['backwards', FOLD.toReversed()],
  ])('that happen twice are told apart by their neighbours, %s', async (_, lines) => {
    const { log, problems: found } = await problems(rows(...lines), {
      logZone: zone.parse('America/Chicago'),
    });
    expect(instants(log.times)).toEqual([
      '2026-11-01T05:30',
      '2026-11-01T06:00',
      '2026-11-01T06:30',
      '2026-11-01T07:00',
      '2026-11-01T07:30',
      '2026-11-01T08:00',
    ]);
    expect(found.map(([, is]) => is)).toEqual(Array(4).fill('time-in-fold'));
    expect(log.rowsLeftOut).toBe(0);
  });

  it('that never happened are left out', async () => {
    const { log, problems: found } = await problems(
      rows('2026-03-08 01:55,36', '2026-03-08 02:30,36', '2026-03-08 03:00,36'),
      {
        logZone: zone.parse('America/Chicago'),
      },
    );
    expect(found).toEqual([[3, 'time-in-gap']]);
    expect(instants(log.times)).toEqual(['2026-03-08T07:55', '2026-03-08T08:00']);
  });

  it('more than a thousand are counted, a thousand kept', async () => {
    const log = await read(rows('2026-07-14 01:00,36', ...Array<string>(1500).fill(',36')));
    expect([log.problems.length, log.problemCount, log.rowsLeftOut]).toEqual([1000, 1500, 1500]);
  });
});

describe('laws', () => {
  it('a measured clock error is added to every time', async () => {
    const text = 'Time,Return F\n2026-07-14 01:00,36\n2026-07-14 01:05,36\n';
    const [plain, moved] = [await read(text), await read(text, {}, 90)];
    expect([...moved.times].map((t, i) => t - (plain.times.at(i) ?? 0))).toEqual([90_000, 90_000]);
    expect(moved.addedSeconds).toBe(90);
  });

  it('what is printed is read back', async () => {
    const tenths = fc.integer({ min: -400, max: 800 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(tenths, { minLength: 1, maxLength: 30 }),
        fc.constantFrom('.', ','),
        async (values, mark) => {
          const start = Date.UTC(2026, 6, 14);
          const lines = values.map((v, i) => {
            const at = new Date(start + i * 61_000).toISOString().replace('T', ' ').slice(0, 19);
            return `${at};${(v / 10).toFixed(1).replace('.', mark)}`;
          });
          const log = await read(`Time;Return °C\n${lines.join('\n')}`, { logZone: zone.parse('UTC') });
          expect([...(log.channels['return-air'] ?? [])].map((v) => Math.round(v * 10))).toEqual(
            values.map((v) => v + 0),
          );
          expect([...log.times]).toEqual(values.map((_, i) => start + i * 61_000));
        },
      ),
      { numRuns: cases(60) },
    );
  });

  it('nothing but a DossierError is thrown, whatever the bytes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.uint8Array({ maxLength: 400 }),
          fc.string().map((s) => Buffer.from(`Time,Return F\n${s}`)),
        ),
        async (bytes) => {
          const found = await recognised(bytes).catch((error: { code?: string }) => {
            expect(error.code).toBe('unsupported-file');
            return undefined;
          });
          if (found?.is === 'log')
            await readUnitLog(source(bytes), found.mapping, { evidence, addedSeconds: 0 });
        },
      ),
      { numRuns: cases(150) },
    );
  });
});
