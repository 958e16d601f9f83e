import { describe, expect, it } from 'vitest';
import { sameNumber } from '../../../src/core/model/delivery-flags.js';
import { zone } from '../../../src/core/model/time.js';
import { parseDeliveryFile } from '../../../src/intake/delivery-file.js';
import { examineFile } from '../../../src/intake/examine.js';
import { DELIVERY_YAML, emptyFolder, put, someHash } from '../a-delivery.js';

const { facts: delivery } = parseDeliveryFile(
  DELIVERY_YAML.replace('trailer: { number: "118" }', 'trailer: { number: "118" }, unit: { number: U-7 }'),
  'delivery.yaml',
);
const folder = await emptyFolder();
async function examined(text: string, logZone = 'America/Phoenix') {
  const file = await put(folder, 'log.csv', text);
  return examineFile({
    path: file.path,
    name: file.name,
    file: { name: file.name, bytes: file.bytes, sha256: someHash },
    delivery,
    options: { logZone: zone.parse(logZone) },
  });
}
const TABLE = 'Time,Return F\n2026-07-14 05:00,36\n2026-07-14 05:05,36\n';

describe('a log of another trailer is called out', () => {
  it.each([
    ['Trailer,T-118', []],
    ['Trailer no.: 0118', []],
    ['Remolque;118', []],
    ['Trailer,119', ['other-trailer']],
    ['Remorque : R-9', ['other-trailer']],
    ['Unit,U-8', ['other-trailer']],
    ['Unit number,U7', []],
    // Some number the unit as its trailer.
    ['Unit,118', []],
    ['Units,Fahrenheit', []],
    ['Unit serial number,99887', []],
    ['Interval,5', []],
  ])('%s', async (line, flags) => {
    const { received, problems } = await examined(`${line}\n\n${TABLE}`);
    expect(received.flags?.map((flag) => flag.is)).toEqual(flags);
    expect(problems).toEqual([]);
  });

  it('with both numbers', async () => {
    const { received } = await examined(`Trailer,119\n${TABLE}`);
    expect(received.flags?.[0]?.detail).toBe('the log is of trailer 119, the delivery of 118');
  });

  it.each([
    ['T-118', '118', true],
    ['t118', 'T-118', true],
    ['00118', '118', true],
    ['A118', 'B118', false],
    ['1118', '118', false],
    ['118', '118A', false],
  ])('%s and %s: the same is %s', (a, b, same) => {
    expect([sameNumber(a, b), sameNumber(b, a)]).toEqual([same, same]);
  });
});

describe('a log of another time is called out', () => {
  it.each([
    ['in the time of the delivery', '2026-07-14', []],
    ['a day before the first stop', '2026-07-13', []],
    ['days before', '2026-07-10', ['outside-delivery-time']],
    ['the same days of another year', '2025-07-14', ['outside-delivery-time']],
  ])('%s', async (_, day, flags) => {
    const { received } = await examined(`Time,Return F\n${day} 12:00,36\n${day} 12:05,36\n`);
    expect(received.flags?.map((flag) => flag.is)).toEqual(flags);
  });
});

describe('what is settled without loss is told, and is no problem', () => {
  it('sensor faults and repeated rows are counted', async () => {
    const { problems, takenFor } = await examined(`${TABLE}2026-07-14 05:05,36\n2026-07-14 05:10,---\n`);
    expect(problems).toEqual([]);
    expect(takenFor).toMatch(/1 sensor fault left out; 1 row of a time that another row has too, joined/);
  });

  it('the hour that happened twice is a flag', async () => {
    const rows = ['00:30', '01:30', '01:30', '02:30'].map((t) => `2026-11-01 ${t},36`).join('\n');
    const { received, problems } = await examined(`Time,Return F\n${rows}\n`, 'America/Chicago');
    expect(problems).toEqual([]);
    expect(received.flags?.map((flag) => flag.is)).toContain('time-happened-twice');
  });

  it('rows that disagree are a problem', async () => {
    const { problems } = await examined(`${TABLE}2026-07-14 05:05,50\n`);
    expect(problems).toMatchObject([
      { where: { file: 'log.csv', row: 4 }, message: expect.stringMatching(/row 3/) },
    ]);
  });
});

it('a preview shows the mapping and the first rows in UTC and local time, °F and °C', async () => {
  const { log } = await examined(TABLE);
  expect(log).toMatchObject({ zone: 'America/Phoenix', unused: [] });
  expect(log?.rows[0]).toMatchObject({
    row: 2,
    utc: '2026-07-14T12:00:00.000Z',
    local: '2026-07-14 05:00:00 -07:00',
    temperatures: [
      { channel: 'return-air', celsius: expect.closeTo(2.222, 3), fahrenheit: expect.closeTo(36, 9) },
    ],
  });
});
