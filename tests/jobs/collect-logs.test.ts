import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { toInstant } from '../../src/core/model/time.js';
import { assessDelivery } from '../../src/jobs/assess.js';
import { dryRun } from '../../src/jobs/collect/dry-run.js';
import { type CollectInput, collect } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';

const FACTS = `delivery: 2026-0714-A
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix, planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Phoenix, planned: 2026-07-14T12:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1, instruction: { setPoint: 36 °F, tolerance: 2 °F } }
`;
const who = { by: 'Test', now: () => new Date() };
const rooms: string[] = [];
afterAll(() => {
  for (const room of rooms) rmSync(room, { recursive: true, force: true });
});

let room = '';
let folder = '';
beforeEach(async () => {
  room = mkdtempSync(join(tmpdir(), 'logs-'));
  rooms.push(room);
  folder = join(room, 'delivery');
  await newDelivery({ folder, file: put('facts.yaml', FACTS), ...who });
});
function put(name: string, text: string): string {
  writeFileSync(join(room, name), text);
  return join(room, name);
}
const input = (paths: string[], more: Partial<CollectInput> = {}): CollectInput => ({
  folder,
  paths,
  progress: () => undefined,
  ...who,
  ...more,
});
const ledger = () => readFileSync(join(folder, 'ledger.jsonl'), 'utf8');

/** Rows every five minutes from 04:00, numbers of the five minutes. */
const download = (from: number, to: number, value = (i: number) => 36 + (i % 7) / 10): string =>
  `Time,Return F\n${Array.from({ length: to - from }, (_, k) => {
    const i = from + k;
    const clock = `${String(4 + Math.floor(i / 12)).padStart(2, '0')}:${String((i % 12) * 5).padStart(2, '0')}`;
    return `2026-07-14 ${clock},${value(i).toFixed(1)}`;
  }).join('\n')}\n`;

describe('a dry run', () => {
  it('shows the mapping and the first rows, and takes nothing in', async () => {
    const before = ledger();
    const report = await dryRun(input([put('log.csv', download(0, 3))]));
    expect(report.items).toMatchObject([
      {
        file: 'log.csv',
        log: { mapping: { headerRow: 1 }, rows: [{ row: 2, utc: '2026-07-14T11:00:00.000Z' }, {}, {}] },
      },
    ]);
    expect(report.problems).toEqual([]);
    expect(ledger()).toBe(before);
  });

  it('names what is held already, and what a map lacks', async () => {
    const log = put('log.csv', 'Wann;A\n2026-07-14 05:00;36\n');
    await collect(input([log]));
    const { items, problems } = await dryRun(input([log]));
    expect(items).toMatchObject([{ heldAs: 'e1' }]);
    expect(problems).toMatchObject([
      { message: expect.stringMatching(/1 "Wann", 2 "A"/), fix: expect.stringMatching(/--map/) },
    ]);
    const map = put('map.yaml', 'columns: { time: 1, return-air: A }\nunits: F\n');
    expect((await dryRun(input([log], { map }))).items).toMatchObject([{ log: { rows: [{ row: 2 }] } }]);
  });
});

describe('a log that could not be read', () => {
  it('is read when a map says what it lacked', async () => {
    const log = put('log.csv', 'Wann;A\n07/08/2026 05:00;36\n');
    const first = await collect(input([log]));
    expect(first.problems).toHaveLength(1);
    const map = put('map.yaml', 'columns: { time: 1, return-air: A }\nunits: F\ndates: month-day-year\n');
    const second = await collect(input([log], { map }));
    expect(second.items).toMatchObject([
      { outcome: 'taken-in', takenFor: expect.stringMatching(/^unit log: 1 row/) },
    ]);
  });

  it('is read when the order of its dates is said', async () => {
    const log = put('log.csv', 'Time;Return F\n03/04/2026 05:00;36\n');
    expect((await collect(input([log]))).problems).toHaveLength(1);
    const { items } = await collect(input([log], { logDates: 'day-month-year' }));
    expect(items).toMatchObject([{ outcome: 'taken-in', flags: [{ is: 'outside-delivery-time' }] }]);
    await expect(collect(input([log], { logDates: 'year-first' }))).rejects.toMatchObject({
      code: 'bad-usage',
    });
  });
});

describe('a log that seems to be of another trailer or time', () => {
  const log = (day: string) =>
    put('log.csv', `Trailer;119\nTime;Return F\n${day} 05:00;36\n${day} 05:05;36\n`);
  const flags = async () => {
    const { state } = await assessDelivery({ folder, at: toInstant(Date.UTC(2026, 6, 20)), ...who });
    const items = [...state.evidence, ...state.notCounted];
    return [
      items.flatMap((item) => ('flags' in item ? item.flags.map(({ is }) => is) : [])),
      state.notCounted.length,
    ];
  };
  const rewrite = (from: string, to: string) => {
    const file = join(folder, 'delivery.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace(from, to));
  };

  it('is flagged by the facts as they are now: a corrected trailer and time take the flags away', async () => {
    await collect(input([log('2026-08-14')]));
    expect(await flags()).toEqual([['other-trailer', 'outside-delivery-time'], 1]);
    rewrite('number: T-7', 'number: "119"');
    expect(await flags()).toEqual([['outside-delivery-time'], 1]);
    rewrite('planned: 2026-07-14T12:00', 'planned: 2026-08-14T12:00');
    expect(await flags()).toEqual([[], 0]);
  });
});

describe('two downloads of one unit', () => {
  const at = toInstant(Date.UTC(2026, 6, 15));
  it('are one log in what is computed, and time is counted once', async () => {
    await collect(input([put('a.csv', download(0, 60)), put('b.csv', download(40, 96))]));
    const { logs, overlaps, assessment } = await assessDelivery({ folder, at, ...who });
    expect(logs).toHaveLength(1);
    expect(logs[0]?.times).toHaveLength(96);
    expect(overlaps).toMatchObject({
      overlaps: [{ sharedRows: 20, agreeingRows: 20, joined: true }],
      disagreementCount: 0,
    });
    expect(assessment.temperatures).toHaveLength(1);
  });

  it('that disagree in a row name it', async () => {
    const changed = download(40, 96, (i) => (i === 50 ? 40 : 36 + (i % 7) / 10));
    await collect(input([put('a.csv', download(0, 60)), put('b.csv', changed)]));
    const { overlaps } = await assessDelivery({ folder, at, ...who });
    expect(overlaps.disagreements).toMatchObject([
      { counts: { log: 'e1', row: 52 }, other: { log: 'e2', row: 12 } },
    ]);
  });
});
