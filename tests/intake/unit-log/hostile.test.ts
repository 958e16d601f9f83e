import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { recogniseUnitLog } from '../../../src/intake/unit-log/recognise.js';
import { cases } from '../../properties.js';
import { celsius, evidence, mappingOf, phoenix, read, recognised, source } from './reading.js';

const HEADER = 'Time,Return F,Supply F,Mode\n';
const ROW = '2026-07-14 04:00,36,35,Cool\n';

describe('a row that does not fit is left out or read as far as it goes, and named with its line', () => {
  const notes = async (text: string | Uint8Array) => {
    const log = await read(text);
    return { log, notes: log.problems.map((p) => [p.row, p.is]) };
  };

  it.each([
    ['more cells than the header', '2026-07-14 04:05,36,5,35,2,Cool\n', [[3, 'ragged']], 1],
    [
      'one cell too few for a temperature',
      '2026-07-14 04:05,37\n2026-07-14 04:10,38,36,Cool\n',
      [[3, 'ragged']],
      3,
    ],
    ['the file ending within it', '2026-07-14 04:05,3', [[3, 'ragged']], 1],
    ['a formula', '2026-07-14 04:05,=B2+1,35,Cool\n', [[3, 'impossible-value']], 2],
    ['zero bytes in its time', '2026-07\0-14 04:05,36,35,Cool\n', [[3, 'bad-time']], 1],
    ['zero bytes in a value', '2026-07-14 04:05,3\0\0\x006,35,Cool\n', [[3, 'not-text']], 2],
    ['a time of day alone', '04:05,36,35,Cool\n', [[3, 'bad-time']], 1],
  ])('%s', async (_, row, expected, rows) => {
    const { log, notes: found } = await notes(HEADER + ROW + row);
    expect(found).toEqual(expected);
    expect(log.times).toHaveLength(rows);
  });

  it('states alone may be missing at its end', async () => {
    const { log, notes: found } = await notes(
      `${HEADER}2026-07-14 04:00,36,35\n${ROW.replace('04:00', '04:05')}`,
    );
    expect([found, [...(log.states.mode ?? [])]]).toEqual([[], ['', 'Cool']]);
  });

  it('a recorder that lost power: zero bytes to the end of the file', async () => {
    const { log, notes: found } = await notes(
      Buffer.concat([Buffer.from(HEADER + ROW), Buffer.alloc(3_000_000)]),
    );
    expect(found).toEqual([[3, 'ragged']]);
    expect(log.times).toHaveLength(1);
  });

  it('UTF-16 with a byte too many', async () => {
    const bytes = Buffer.concat([Buffer.from(`\ufeff${HEADER}${ROW}`, 'utf16le'), Buffer.from([0x41])]);
    const { log } = await notes(bytes);
    expect(log.times).toHaveLength(1);
    expect(log.problems.map((p) => p.row)).toEqual([3]);
  });

  it('a text that was kept from being a formula is its text', async () => {
    const { log } = await notes(`${HEADER}"=""2026-07-14 04:00""","=""36""",35,Cool\n`);
    expect(celsius(log.channels['return-air'])).toEqual([2.22]);
  });

  it('a state is kept as text, without control characters', async () => {
    const { log } = await notes(`${HEADER}2026-07-14 04:00,36,35,=HYPERLINK("x")\x1b[31m\n`);
    expect([...(log.states.mode ?? [])]).toEqual(['=HYPERLINK("x")\ufffd[31m']);
  });

  it('a state is cut after 200 characters', async () => {
    const long = 'alarm '.repeat(50);
    const { log } = await notes(
      `${HEADER}${ROW}2026-07-14 04:05,36,35,${long}\n2026-07-14 04:10,36,35,${long}\n`,
    );
    expect(log.states.mode).toEqual(['Cool', long.slice(0, 200), long.slice(0, 200)]);
  });
});

describe('rows of one moment', () => {
  const mode = async (...rows: string[]) => {
    const log = await read(`Time,Return F,Mode\n${rows.map((row) => `2026-07-14 ${row}`).join('\n')}\n`);
    return {
      rows: celsius(log.channels['return-air']),
      mode: [...(log.states.mode ?? [])],
      counts: log.counts,
      problems: log.problems,
    };
  };

  it('that say the same are one, and nobody has to mend it', async () => {
    expect(await mode('04:00,36,Cool', '04:05,37,Cool', '04:00,36,Cool')).toMatchObject({
      rows: [2.22, 2.78],
      counts: { repeated: 1 },
      problems: [{ row: 4, is: 'repeated', detail: 'the same moment as row 2' }],
    });
  });

  it('that complete each other are one: temperatures and happenings in rows of their own', async () => {
    expect(await mode('04:00,36,', '04:00,,Defrost', '04:05,37,')).toMatchObject({
      rows: [2.22, 2.78],
      mode: ['Defrost', ''],
      counts: { repeated: 1 },
    });
  });

  it('that disagree: the first counts and the other is named with what it says', async () => {
    const found = await mode('04:00,36,Cool', '04:00,46.4,Cool', '04:05,37,Cool', '04:05,37,Off');
    expect(found.rows).toEqual([2.22, 2.78]);
    expect(found.problems.map((p) => [p.row, p.is])).toEqual([
      [3, 'duplicate'],
      [5, 'duplicate'],
    ]);
    expect(found.problems[0]?.detail).toMatch(/row 2.*Return F: 8\.00 °C after 2\.22 °C/);
    expect(found.problems[1]?.detail).toMatch(/Mode: "Off" after "Cool"/);
  });
});

describe('what stops reading names its row, and reading stops in bounded memory', () => {
  it.each([
    [
      'a quotation mark that never closes',
      `${HEADER}${ROW}2026-07-14 04:05,"36,35,Cool\n${ROW.repeat(600)}`,
      3,
    ],
    [
      'a quotation mark that never closes in a short file',
      `${HEADER}${ROW}2026-07-14 04:05,"36,35,Cool\n`,
      3,
    ],
    ['a line without an end', `${HEADER}${ROW}${'1'.repeat(1_200_000)}`, 3],
  ])('%s', async (_, text, row) => {
    const mapping = await mappingOf(HEADER + ROW);
    await expect(
      readUnitLog(source(text, 65_536), mapping, { evidence, addedSeconds: 0 }),
    ).rejects.toMatchObject({
      code: 'unsupported-file',
      where: { row },
    });
  });

  it('more rows than are read, with what to do', async () => {
    const mapping = await mappingOf(HEADER + ROW);
    const rows = Array.from({ length: 4 }, (_, i) => ROW.replace('04:00', `04:0${i}`)).join('');
    const reading = (mostRows: number) =>
      readUnitLog(source(HEADER + rows), mapping, { evidence, addedSeconds: 0, mostRows });
    expect((await reading(4)).times).toHaveLength(4);
    await expect(reading(3)).rejects.toMatchObject({
      code: 'file-too-large',
      message: 'more than 3 rows',
      where: { row: 5 },
      fix: expect.stringMatching(/in parts, by date/),
    });
  });

  it('one line of a gigabyte', async () => {
    const chunk = Buffer.alloc(1 << 20, '7');
    let sent = 0;
    const endless = async function* () {
      yield Buffer.from(HEADER + ROW);
      for (; sent < 1024; sent++) yield chunk;
    };
    const mapping = await mappingOf(HEADER + ROW);
    await expect(readUnitLog(endless, mapping, { evidence, addedSeconds: 0 })).rejects.toMatchObject({
      code: 'unsupported-file',
      where: { row: 3 },
    });
    expect(sent).toBeLessThan(4);
  });
});

describe('tables that are no log', () => {
  it.each([
    ['a header alone', HEADER, /no rows/],
    [
      'a hundred thousand columns',
      `Time${',Return F'.repeat(100_000)}\n2026-07-14 04:00${',36'.repeat(100_000)}\n`,
      /more than 1000 columns/,
    ],
  ])('%s', async (_, text, message) => {
    const found = await recognised(text);
    expect(found).toMatchObject({
      is: 'not-a-log',
      problem: { message: expect.stringMatching(message), where: { file: 'log.csv' } },
    });
  });

  it('a thousand columns, half of them probes, take four', async () => {
    const found = await mappingOf(`Time${',Probe F'.repeat(999)}\n2026-07-14 04:00${',36'.repeat(999)}\n`);
    expect(found.channels.map((c) => c.channel)).toEqual(['probe', 'probe-2', 'probe-3', 'probe-4']);
  });
});

it('nothing but a DossierError is thrown, whatever the bytes after a header', async () => {
  const bit = fc.constantFrom(
    '"',
    ',',
    '\n',
    '\r',
    '\0',
    '\ufeff',
    '2026-07-14 04:00',
    '36',
    '=',
    '-',
    '99.9',
    '\t',
    'é',
  );
  await fc.assert(
    fc.asyncProperty(
      fc.array(bit, { maxLength: 80 }).map((bits) => HEADER + bits.join('')),
      fc.constantFrom('utf8', 'utf16le', 'latin1'),
      fc.integer({ min: 1, max: 50 }),
      async (text, encoding, size) => {
        const bytes = Buffer.from(text, encoding as BufferEncoding);
        try {
          const found = await recogniseUnitLog(source(bytes), { fileName: 'x', logZone: phoenix });
          if (found.is !== 'log') return;
          const log = await readUnitLog(source(bytes, size), found.mapping, { evidence, addedSeconds: 0 });
          for (let i = 1; i < log.times.length; i++)
            expect((log.times.at(i) ?? 0) > (log.times.at(i - 1) ?? 0)).toBe(true);
        } catch (error) {
          expect((error as { code?: string }).code).toBe('unsupported-file');
        }
      },
    ),
    { numRuns: cases(300) },
  );
});
