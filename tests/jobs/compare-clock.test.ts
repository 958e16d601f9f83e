import { readFileSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type PhotoFacts, withExif } from '../../fixtures/demo/make/exif.js';
import { DossierError } from '../../src/core/model/error.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { toInstant } from '../../src/core/model/time.js';
import { assessDelivery } from '../../src/jobs/assess.js';
import { collect } from '../../src/jobs/collect.js';
import { type ClockComparisonInput, recordClock } from '../../src/jobs/compare-clock.js';
import { withDelivery } from '../../src/jobs/delivery.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { DELIVERY_YAML } from '../intake/a-delivery.js';

const root = await mkdtemp(join(tmpdir(), 'clock-'));
afterAll(() => rm(root, { recursive: true, force: true }));
const facts = join(root, 'facts.yaml');
const now = () => new Date('2026-07-17T12:00:00Z');
const by = 'R. Quill';

let made = 0;
async function deliveryWith(files: Record<string, string | Uint8Array>) {
  made += 1;
  const folder = join(root, `d${made}`);
  await writeFile(facts, DELIVERY_YAML);
  await newDelivery({ folder, file: facts, by, now });
  const inbox = join(root, `in${made}`);
  await mkdir(inbox);
  for (const [name, bytes] of Object.entries(files)) await writeFile(join(inbox, name), bytes);
  const options = { logZone: undefined, logUnit: undefined, progress: () => undefined };
  const report = await collect({ folder, by, now, paths: [inbox], ...options });
  return { folder, report };
}
const clocksOf = (folder: string) =>
  withDelivery({ folder, by, now }, false, async (record) => record.state().clocks);

const plain = readFileSync('fixtures/photos/no-exif.jpg');
const DOCK = { latitude: 32.69, longitude: -114.62, altitude: 80 };
/** A photo at the dock; `fast` seconds the camera is ahead of the true time. */
function photo(utc: string, { fast = 0, gps = true, offset = true } = {}): Uint8Array {
  const true_ = new Date(utc);
  const wall = new Date(true_.getTime() + fast * 1000 - 7 * 3_600_000).toISOString();
  const tags: PhotoFacts = {
    make: 'Demo',
    model: 'Phone A',
    orientation: 1,
    width: 480,
    height: 360,
    taken: wall.slice(0, 19).replaceAll('-', ':').replace('T', ' '),
    ...omitUndefined({
      offset: offset ? '-07:00' : undefined,
      gps: gps ? { ...DOCK, utc: true_ } : undefined,
    }),
  };
  return withExif(plain, tags);
}

const LOG = `Clock zone,America/Phoenix
Date time,Set point (°F),Return air (°F)
2026-07-14 05:00,36.0,36.4
2026-07-14 05:05,36.0,36.2
2026-07-14 05:10,36.0,36.1
2026-07-14 05:15,36.0,36.3
`;

describe('collecting photos of a camera whose clock is off', () => {
  it('measures it, writes it down once, and corrects what is computed, not what is kept', async () => {
    const { folder, report } = await deliveryWith({
      'IMG_1.jpg': photo('2026-07-14T11:00:00Z', { fast: 1200 }),
      'IMG_2.jpg': photo('2026-07-14T11:20:00Z', { fast: 1200 }),
      'IMG_3.jpg': photo('2026-07-14T11:40:00Z', { fast: 1200 }),
      'IMG_4.jpg': photo('2026-07-14T12:00:00Z', { fast: 1200, gps: false }),
    });
    const clocks = await clocksOf(folder);
    expect(clocks).toMatchObject([
      {
        clock: { is: 'camera', camera: 'Demo Phone A' },
        addSeconds: -1200,
        how: 'satellite-time',
        from: expect.stringContaining('in 3 photos (e1, e2, e3)'),
      },
    ]);
    expect(report.notices.join()).toContain('The clock of Demo Phone A is 20 min fast');
    const { state, assessment } = await assessDelivery({ folder, by, now, at: toInstant(now().getTime()) });
    expect(state.evidence[3]?.time).toMatchObject({
      instant: '2026-07-14T12:00:00.000Z',
      stated: '2026-07-14T05:20:00-07:00',
      correction: { addedSeconds: -1200, comparedAt: clocks[0]?.seq },
    });
    expect(assessment.timeline.items.find((item) => item.evidence === 'e4')?.at).toBe(
      Date.parse('2026-07-14T12:00:00Z'),
    );
    const kept = await withDelivery({ folder, by, now }, false, async (record) => record.state().evidence[3]);
    expect(kept?.time).toMatchObject({ instant: '2026-07-14T12:20:00.000Z' });
    await collect({
      folder,
      by,
      now,
      paths: [join(root, `in${made}`)],
      logZone: undefined,
      logUnit: undefined,
      progress: () => undefined,
    });
    expect(await clocksOf(folder)).toHaveLength(1);
  });

  it('says nothing of a clock that is right', async () => {
    const { folder } = await deliveryWith({
      'IMG_1.jpg': photo('2026-07-14T11:00:00Z'),
      'IMG_2.jpg': photo('2026-07-14T11:20:00Z'),
      'IMG_3.jpg': photo('2026-07-14T11:40:00Z'),
    });
    expect(await clocksOf(folder)).toEqual([]);
  });
});

describe('dossier record clock', async () => {
  const { folder } = await deliveryWith({
    'a.jpg': photo('2026-07-14T12:04:00Z'),
    'b.jpg': photo('2026-07-14T12:15:00Z', { offset: false, gps: false }),
    'log.csv': LOG,
  });
  const record = (display: string, more: Partial<ClockComparisonInput> = {}) =>
    recordClock({
      folder,
      by,
      now,
      display,
      photo: undefined,
      true: undefined,
      log: undefined,
      camera: undefined,
      zone: undefined,
      ...more,
    });

  // The photo e1 was taken at 12:04:00 UTC, 05:04:00 in Phoenix.
  it.each<[string, Partial<ClockComparisonInput>, number, number]>([
    // A display of minutes shows its minute from :00 to :59, so its middle is meant.
    ['05:04', { photo: 'e1' }, -30, 31],
    ['05:01', { photo: 'e1' }, 150, 31],
    ['5:01am', { photo: 'e1' }, 150, 31],
    ['05:02:10', { photo: 'e1' }, 110, 2],
    ['2026-07-14 05:02:10', { photo: 'e1' }, 110, 2],
    ['05:02:10', { true: '2026-07-14T05:03:10-07:00' }, 60, 2],
    ['23:59:00', { true: '2026-07-14T00:01:00-07:00' }, 120, 61],
    ['07:04:00', { photo: 'e1', zone: 'America/Chicago' }, 0, 2],
    ['07:04:00', { photo: 'e1', zone: 'America/Phoenix' }, -7200, 2],
    ['05:02:10', { photo: 'e1', camera: 'demo phone a' }, 110, 2],
  ])('%s %o: add %d s', async (display, more, addSeconds, uncertaintySeconds) => {
    const compared = await record(display, more);
    expect(compared).toMatchObject({ addSeconds, uncertaintySeconds });
    const last = (await clocksOf(folder)).at(-1);
    expect(last).toMatchObject({
      seq: compared.entry,
      addSeconds,
      how: more.photo ? 'display-photo' : 'told',
    });
    expect(last?.photo).toBe(more.photo);
  });

  it.each<[string, string, Partial<ClockComparisonInput>, string, RegExp]>([
    ['no true time', '05:04', {}, '--photo', /nothing says what time/],
    ['a photo that states neither', '05:04', { photo: 'e2' }, '--photo', /neither on satellite time nor/],
    ['no such photo', '05:04', { photo: 'e77' }, '--photo', /no photo e77/],
    ['no such log', '05:04', { photo: 'e1', log: 'e77' }, '--log', /no unit log e77/],
    ['no such camera', '05:04', { photo: 'e1', camera: 'Box' }, '--camera', /no photo was taken with/],
    ['no time', 'noon', { photo: 'e1' }, 'display-time', /not a time/],
    ['an abbreviation', '05:04', { photo: 'e1', zone: 'MST' }, '--zone', /part of the year/],
    ['what looks like another zone', '07:04', { photo: 'e1' }, 'display-time', /another zone/],
    ['what looks like the afternoon', '17:04', { photo: 'e1' }, 'display-time', /half of the day/],
  ])('refuses %s', async (_, display, more, field, message) => {
    const before = (await clocksOf(folder)).length;
    const error = await record(display, more).catch((cause: unknown) => cause);
    if (!(error instanceof DossierError)) throw error;
    expect(error).toMatchObject({
      code: 'bad-value',
      where: { field },
      message: expect.stringMatching(message),
    });
    expect(await clocksOf(folder)).toHaveLength(before);
  });

  it('corrects the log by what was measured last at a moment, and follows a drift', async () => {
    const { folder: own } = await deliveryWith({
      'a.jpg': photo('2026-07-14T12:00:00Z'),
      'b.jpg': photo('2026-07-14T12:20:00Z'),
      'log.csv': LOG,
    });
    const at = { by, now, folder: own, true: undefined, log: undefined, camera: undefined, zone: undefined };
    await recordClock({ ...at, display: '04:00:00', photo: 'e1', zone: 'America/Phoenix' });
    await recordClock({ ...at, display: '05:00:00', photo: 'e1' });
    await recordClock({ ...at, display: '05:18:00', photo: 'e2' });
    const { logs } = await assessDelivery({ folder: own, by, now, at: toInstant(now().getTime()) });
    const start = Date.parse('2026-07-14T12:00:00Z');
    // From 0 s at 05:00 to 120 s at 05:18 by the clock: 5 minutes are 33.333 s.
    expect([...(logs[0]?.times ?? [])].map((time) => (time - start) / 1000)).toEqual([
      0, 333.333, 666.667, 1000,
    ]);
    expect(logs[0]?.clock).toHaveLength(2);
  });
});
