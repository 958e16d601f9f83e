import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cases } from '../../properties.js';
import { read } from './reading.js';

/** Cells that are plain numbers, and such as want a closer look. */
const cell = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: -1000, max: 1500 }).map((tenths) => (tenths / 10).toFixed(1)) },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      '',
      ' 36.5 ',
      '+36',
      '−2.5',
      '---',
      '-99.9',
      '-99',
      '999.9',
      '36.5F',
      '1e3',
      '36.',
      '.5',
      'open',
      '3\u0007',
      '36,5',
    ),
  },
);
const mode = fc.constantFrom('Cool', 'Cool', 'Cool', 'Défrost', ' Cool', '');
/** Mostly the next minutes; sometimes another day, the time before once more, or no time. */
const time = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: 0, max: 1439 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '2026-07-15 24:00',
      '2026-03-08 02:30',
      '2026-11-01 01:30',
      'noon',
      '',
      '2026-07-14T05:00:30',
    ),
  },
);
const stamp = (at: number | string, i: number) =>
  typeof at === 'string'
    ? at
    : `2026-07-${14 + (i > 20 ? 1 : 0)} ${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;

const HEADER = ['Date time', 'Set point (F)', 'Return air (F)', 'Note', 'Mode'];
const row = fc.tuple(time, cell, cell, fc.constantFrom('', 'x', 'a b', 'é'), mode);

describe('rows', () => {
  it('are the same with every cell in quotation marks', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { minLength: 1, maxLength: 40 }),
        fc.constantFrom('\n', '\r\n'),
        fc.integer({ min: 0, max: 3 }),
        async (list, end, ragged) => {
          const rows = list.map(([at, ...cells], i) => {
            const all = [stamp(at, i), ...cells];
            return i % 11 === ragged ? (ragged % 2 === 0 ? all.slice(0, 3) : [...all, 'more']) : all;
          });
          // The first row settles the order of dates and the unit in both.
          rows.unshift(['2026-07-14 00:00', '36.0', '36.0', '', 'Cool']);
          // A cell with a comma in it is two cells where it stands without quotation marks.
          fc.pre(!rows.flat().some((one) => one.includes(',')));
          const table = (quote: string) =>
            [HEADER, ...rows]
              .map((cells) => cells.map((one) => `${quote}${one}${quote}`).join(','))
              .join(end) + end;
          const context = { logMap: { columns: {}, decimal: '.' as const, delimiter: ',' as const } };
          const [plain, quoted] = [await read(table(''), context), await read(table('"'), context)];
          const seen = (log: typeof plain) => ({
            times: [...log.times],
            channels: Object.entries(log.channels).map(([name, values]) => [name, [...values]]),
            states: Object.entries(log.states).map(([name, texts]) => [name, [...texts]]),
            rows: [...log.rows],
            problems: log.problems,
            counts: log.counts,
            rowsLeftOut: log.rowsLeftOut,
          });
          expect(seen(plain)).toEqual(seen(quoted));
        },
      ),
      { numRuns: cases(150) },
    );
  });

  it.each([
    [
      'a date column and a clock column',
      'Date,Time,Return F\n2026-07-14,04:00,36\n2026-07-14,04:01:30,37\n2026-07-15,00:00,38\n',
      [36, 37, 38],
    ],
    [
      'semicolons and a decimal comma',
      'Date time;Return F\n2026-07-14 04:00;36,5\n2026-07-14 04:01;37,25\n',
      [36.5, 37.25],
    ],
  ])('may have %s', async (_, text, fahrenheit) => {
    const log = await read(text);
    expect([...log.times]).toHaveLength(fahrenheit.length);
    expect([...(log.channels['return-air'] ?? [])]).toEqual(fahrenheit.map((f) => ((f - 32) * 5) / 9));
  });
});
