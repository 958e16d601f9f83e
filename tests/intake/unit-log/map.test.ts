import { describe, expect, it } from 'vitest';
import { logMapSchema } from '../../../src/intake/schemas.js';
import { parseLogMap } from '../../../src/intake/unit-log/log-map.js';
import { celsius, instants, read, recognised } from './reading.js';

const map = (text: string) => ({ logMap: parseLogMap(text, 'map.yaml') });

describe('a map file', () => {
  const TABLE = 'Wann;A;B;C;D\n07/08/2026 23:00;2,5;36,4;1;offen\n';
  it('says columns by heading or number, unit, zone, order of dates and decimal mark', async () => {
    const said = map(`
columns: { time: Wann, set-point: 2, return-air: B, probe-3: 4, door: D }
units: { set-point: C, return-air: °F, probe-3: C }
zone: America/Chicago
dates: day-month-year
delimiter: semicolon
decimal: comma
`);
    const log = await read(TABLE, said, 0);
    expect(instants(log.times)).toEqual(['2026-08-08T06:00']);
    expect(celsius(log.channels['set-point'])).toEqual([2.5]);
    expect(celsius(log.channels['return-air'])).toEqual([2.44]);
    expect(celsius(log.channels['probe-3'])).toEqual([1]);
    expect([...(log.states.door ?? [])]).toEqual(['offen']);
  });

  it.each([
    [
      'another column for a meaning',
      'columns: { return-air: Probe F }',
      { 'return-air': [5], probe: undefined },
    ],
    ['a column left out', 'columns: { ignore: [Return F] }', { 'return-air': undefined, probe: [5] }],
    ['a unit that the heading states wrongly', 'units: C', { 'return-air': [36], probe: [41] }],
  ])('overrules the headings: %s', async (_, text, expected) => {
    const log = await read('Time,Return F,Probe F\n2026-07-14 04:00,36,41\n', map(text));
    for (const [channel, values] of Object.entries(expected))
      expect(log.channels[channel as 'probe'] && celsius(log.channels[channel as 'probe'])).toEqual(values);
  });

  it('reads a table without a header', async () => {
    const log = await read(
      '2026-07-14 04:00;36;37,5\n2026-07-14 04:05;36;38,5\n',
      map('header: none\ncolumns: { time: 1, set-point: 2, return-air: 3 }\nunits: F'),
    );
    expect([...log.rows]).toEqual([1, 2]);
    expect(celsius(log.channels['return-air'])).toEqual([3.06, 3.61]);
  });

  it('says which of two header lines counts', async () => {
    const text = 'Time,Set point F,Return F\n\nTime,Return F,Set point F\n2026-07-14 04:00,36,37\n';
    const log = await read(text, map('header: 3'));
    expect(celsius(log.channels['set-point'])).toEqual([2.78]);
  });

  it.each([
    [
      'a heading',
      'columns: { time: When }',
      /there is no column When; the columns are: 1 "Time", 2 "Return F"/,
    ],
    ['a number', 'columns: { time: 7 }', /there is no column 7/],
  ])('that names %s that is not there is a problem with the columns', async (_, text, message) => {
    const found = await recognised('Time,Return F\n2026-07-14 04:00,36\n', map(text));
    expect(found).toMatchObject({ is: 'not-a-log', problem: { message: expect.stringMatching(message) } });
  });

  it.each([
    ['an unknown meaning', 'columns:\n  retrun-air: 3\n', /retrun-air/, 2],
    ['a column 0', 'columns: { time: 0 }\n', /columns\.time|columns/, 1],
    ['an unknown zone', '\nzone: Mars/Base\n', /time zone/, 2],
    ['headings where there are none', 'header: none\ncolumns: { time: When }\n', /by number/, 2],
    ['no YAML', 'columns: [\n', /./, 2],
  ])('with %s is refused with its line', (_, text, message, row) => {
    const refused = () => parseLogMap(text, 'map.yaml');
    expect(refused).toThrow();
    try {
      refused();
    } catch (error) {
      expect(error).toMatchObject({ code: 'bad-usage', where: { file: 'map.yaml', row } });
      expect(
        JSON.stringify(error) + (error as Error).message + JSON.stringify((error as { fix?: string }).fix),
      ).toMatch(message);
    }
  });

  it('has a JSON Schema for editors', () => {
    expect(JSON.stringify(logMapSchema())).toContain('return-air');
  });
});
