import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zone } from '../../../src/core/model/time.js';
import { cases } from '../../properties.js';
import { celsius, instants, mappingOf, read } from './reading.js';

/** The ways in which downloads write one and the same log. */
interface Shape {
  language: 'en' | 'es' | 'fr';
  delimiter: ',' | ';' | '\t' | '|';
  decimal: '.' | ',';
  unit: 'F' | 'C';
  unitIn: 'heading' | 'line below' | 'cells';
  dates: 'iso' | 'us' | 'european' | 'named' | 'compact' | 'offset' | 'day number';
  clock: 'same column' | 'own column';
  newline: '\n' | '\r\n' | '\r';
  encoding: 'utf8' | 'utf8-mark' | 'utf16le' | 'utf16be';
  quotes: boolean;
  preamble: boolean;
  backwards: boolean;
  lastNewline: boolean;
}

const shapes: fc.Arbitrary<Shape> = fc
  .record({
    language: fc.constantFrom('en', 'es', 'fr'),
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    decimal: fc.constantFrom('.', ','),
    unit: fc.constantFrom('F', 'C'),
    unitIn: fc.constantFrom('heading', 'line below', 'cells'),
    dates: fc.constantFrom('iso', 'us', 'european', 'named', 'compact', 'offset', 'day number'),
    clock: fc.constantFrom('same column', 'own column'),
    newline: fc.constantFrom('\n', '\r\n', '\r'),
    encoding: fc.constantFrom('utf8', 'utf8-mark', 'utf16le', 'utf16be'),
    quotes: fc.boolean(),
    preamble: fc.boolean(),
    backwards: fc.boolean(),
    lastNewline: fc.boolean(),
  } as const)
  // A comma for both needs quotation marks.
  .map((s) => ({ ...s, quotes: s.quotes || s.delimiter === s.decimal }));

const WORDS = {
  en: {
    both: 'Date time',
    date: 'Date',
    clock: 'Time',
    set: 'Set point',
    ret: 'Return air',
    probe: 'Probe 2',
    mode: 'Mode',
  },
  es: {
    both: 'Fecha y hora',
    date: 'Fecha',
    clock: 'Hora',
    set: 'Temperatura de consigna',
    ret: 'Aire de retorno',
    probe: 'Sonda 2',
    mode: 'Modo de operación',
  },
  fr: {
    both: 'Horodatage',
    date: 'Date',
    clock: 'Heure',
    set: 'Température de consigne',
    ret: 'Air de retour',
    probe: 'Sonde 2',
    mode: 'Régime',
  },
} as const;
const MONTH = { en: 'Jul', es: 'julio', fr: 'juil.' } as const;

interface Row {
  minute: number;
  /** Tenths of the shape's unit; undefined is an empty cell. */
  set: number | undefined;
  ret: number | undefined;
  probe: number | undefined;
  mode: string;
}

const START = Date.UTC(2026, 6, 14, 6);
/** Wall time of the log: Phoenix is seven hours behind UTC all year. */
const BEHIND = 7 * 3_600_000;

function timeCells(minute: number, { dates, clock, language }: Shape): string[] {
  const wall = new Date(START + minute * 60_000 - BEHIND);
  const iso = wall.toISOString();
  const [y, m, d, time] = [iso.slice(0, 4), iso.slice(5, 7), iso.slice(8, 10), iso.slice(11, 16)];
  const hour = wall.getUTCHours();
  const half = `${((hour + 11) % 12) + 1}:${iso.slice(14, 16)} ${hour < 12 ? 'AM' : 'PM'}`;
  const days = wall.getTime() / 86_400_000 + 25_569;
  const [date, at] = {
    iso: [`${y}-${m}-${d}`, time],
    us: [`${m}/${d}/${y}`, half],
    european: [`${d}.${m}.${y}`, time],
    named: [`${d} ${MONTH[language]} ${y}`, time],
    compact: [`${y}${m}${d}`, time],
    offset: [`${y}-${m}-${d}`, `${time}-07:00`],
    'day number': [String(Math.floor(days)), (days % 1).toFixed(10)],
  }[dates] as [string, string];
  if (clock === 'own column') return [date, at];
  if (dates === 'compact') return [`${date} ${time.replace(':', '')}`];
  if (dates === 'day number') return [days.toFixed(10)];
  return [`${date} ${at}`];
}

function print(rows: readonly Row[], shape: Shape): Uint8Array {
  const words = WORDS[shape.language];
  const number = (tenths: number | undefined): string =>
    tenths === undefined
      ? ''
      : (tenths / 10).toFixed(1).replace('.', shape.decimal) +
        (shape.unitIn === 'cells' ? ` °${shape.unit}` : '');
  const times = shape.clock === 'own column' ? [words.date, words.clock] : [words.both];
  const unit = shape.unitIn === 'heading' ? ` (°${shape.unit})` : '';
  const table = [
    [...times, words.set + unit, words.ret + unit, words.probe + unit, words.mode],
    ...(shape.unitIn === 'line below'
      ? [[...times.map(() => ''), ...Array<string>(3).fill(`°${shape.unit}`), '']]
      : []),
    ...(shape.backwards ? rows.toReversed() : rows).map((row) => [
      ...timeCells(row.minute, shape),
      number(row.set),
      number(row.ret),
      number(row.probe),
      row.mode,
    ]),
  ];
  const cell = (text: string): string => (shape.quotes ? `"${text.replaceAll('"', '""')}"` : text);
  const lines = table.map((cells) => cells.map(cell).join(shape.delimiter));
  if (shape.preamble) lines.unshift('Invented download', `Trailer${shape.delimiter}T-7`, '');
  const text = lines.join(shape.newline) + (shape.lastNewline ? shape.newline : '');
  switch (shape.encoding) {
    case 'utf8':
      return Buffer.from(text);
    case 'utf8-mark':
      return Buffer.from(`\ufeff${text}`);
    case 'utf16le':
      return Buffer.from(`\ufeff${text}`, 'utf16le');
    case 'utf16be':
      return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
  }
}

const tenths = fc.option(fc.integer({ min: -300, max: 800 }), { nil: undefined });
const aRow = fc.record({
  step: fc.integer({ min: 1, max: 240 }),
  set: fc.integer({ min: -300, max: 800 }),
  ret: tenths,
  probe: tenths,
  mode: fc.constantFrom('Cool', 'Defrost', 'Null mode'),
});
const logs = fc.array(aRow, { minLength: 1, maxLength: 12 }).map((rows) => {
  let minute = 0;
  return rows.map(({ step, ...row }): Row => {
    minute += step;
    return { ...row, minute };
  });
});

describe('a log in any shape', () => {
  it('is read as the log it is', async () => {
    await fc.assert(
      fc.asyncProperty(logs, shapes, async (rows, shape) => {
        const log = await read(print(rows, shape));
        const degrees = (pick: (row: Row) => number | undefined) =>
          rows.map((row) => {
            const value = pick(row);
            if (value === undefined) return Number.NaN;
            return shape.unit === 'C' ? value / 10 : ((value / 10 - 32) * 5) / 9;
          });
        expect([...log.times]).toEqual(rows.map((row) => START + row.minute * 60_000));
        expect([...(log.channels['set-point'] ?? [])]).toEqual(degrees((row) => row.set));
        expect([...(log.channels['return-air'] ?? [])]).toEqual(degrees((row) => row.ret));
        expect([...(log.channels['probe-2'] ?? [])]).toEqual(degrees((row) => row.probe));
        expect([...(log.states.mode ?? [])]).toEqual(rows.map((row) => row.mode));
        expect([log.problemCount, log.rowsLeftOut]).toEqual([0, 0]);
        expect(log.stated).toEqual(shape.preamble ? { trailer: 'T-7' } : undefined);
      }),
      { numRuns: cases(400) },
    );
  });
});

describe('dates', () => {
  it.each([
    ['14 julio 2026 04:10', '2026-07-14T11:10'],
    ['14 de julio de 2026 04:10', '2026-07-14T11:10'],
    ['14-ago-2026 04:10', '2026-08-14T11:10'],
    ['1er août 2026 04h10', '2026-08-01T11:10'],
    ['mardi 14 juil. 2026 04:10', '2026-07-14T11:10'],
    ['14/déc/2026 04:10', '2026-12-14T11:10'],
    ['14/07/2026 4:10 p. m.', '2026-07-14T23:10'],
    ['46217.173611111', '2026-07-14T11:10'],
    ['Jul 14, 2026 4:10 AM', '2026-07-14T11:10'],
  ])('%s', async (written, instant) => {
    expect(instants((await read(`Time;Return F\n${written};36\n`)).times)).toEqual([instant]);
  });

  it('a month that could be two is not guessed', async () => {
    await expect(mappingOf('Time;Return F\n14 jui 2026 04:10;36\n')).rejects.toThrow(
      /no date that can be read/,
    );
  });
});

describe('headings', () => {
  it('may hold line ends, units of their own and a line above them', async () => {
    const text =
      '"Report, ""August"""\n"Date\ntime","Set\npoint (F)","Return\nair (C)"\n2026-07-14 04:00,36,2.5\n';
    const log = await read(text);
    expect(celsius(log.channels['set-point'])).toEqual([2.22]);
    expect(celsius(log.channels['return-air'])).toEqual([2.5]);
    expect([...log.rows]).toEqual([6]);
  });

  it('that are not needed are named', async () => {
    const { recogniseUnitLog } = await import('../../../src/intake/unit-log/recognise.js');
    const { source, phoenix } = await import('./reading.js');
    const found = await recogniseUnitLog(
      source('Time,Return F,Battery volts,RH\n2026-07-14 04:00,36,12.1,80\n'),
      {
        fileName: 'x',
        logZone: phoenix,
      },
    );
    expect(found).toMatchObject({ is: 'log', unused: ['Battery volts', 'RH'] });
  });
});

describe('the hour that happens twice', () => {
  it('is told apart by the order of the rows, and the values stay with their rows', async () => {
    const rows = ['00:45,1', '01:15,2', '01:45,3', '01:15,4', '01:45,5', '02:15,6'];
    const log = await read(`Time,Return C\n${rows.map((row) => `2026-11-01 ${row}`).join('\n')}\n`, {
      logZone: zone.parse('America/Chicago'),
    });
    expect(celsius(log.channels['return-air'])).toEqual([1, 2, 3, 4, 5, 6]);
    expect(instants(log.times)).toEqual([
      '2026-11-01T05:45',
      '2026-11-01T06:15',
      '2026-11-01T06:45',
      '2026-11-01T07:15',
      '2026-11-01T07:45',
      '2026-11-01T08:15',
    ]);
    expect(log.counts).toEqual({ 'time-in-fold': 4 });
  });
});
