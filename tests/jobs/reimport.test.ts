import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { evidenceId } from '../../src/core/model/evidence.js';
import { toInstant } from '../../src/core/model/time.js';
import { assessDelivery } from '../../src/jobs/assess.js';
import { dryRun } from '../../src/jobs/collect/dry-run.js';
import { type CollectInput, collect } from '../../src/jobs/collect.js';
import { recordClock } from '../../src/jobs/compare-clock.js';
import { withDelivery } from '../../src/jobs/delivery.js';
import { describe as say } from '../../src/jobs/describe.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { readLogs } from '../../src/jobs/read-logs.js';
import { zipOf } from '../intake/archive/make-zip.js';

const FACTS = `delivery: 2026-0714-A
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix, planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Phoenix, planned: 2026-07-14T12:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1, instruction: { setPoint: 36 °F, tolerance: 2 °F } }
`;
/** Two columns that could both be the air that returns. */
const LOG = 'Time,A,B\n2026-07-14 05:00,50,36\n2026-07-14 05:15,50,36\n2026-07-14 05:30,50,36\n';
const who = { by: 'Test', now: () => new Date() };
const rooms: string[] = [];
afterAll(() => {
  for (const room of rooms) rmSync(room, { recursive: true, force: true });
});

let room = '';
let folder = '';
let log = '';
let [wrong, right] = ['', ''];
beforeEach(async () => {
  room = mkdtempSync(join(tmpdir(), 'anew-'));
  rooms.push(room);
  folder = join(room, 'delivery');
  await newDelivery({ folder, file: put('facts.yaml', FACTS), ...who });
  log = put('log.csv', LOG);
  wrong = put('wrong.yaml', 'columns: { time: 1, return-air: A }\nunits: F\n');
  right = put('right.yaml', 'columns: { time: 1, return-air: B }\nunits: F\n');
});
function put(name: string, text: string | Uint8Array): string {
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
const open = {
  get folder() {
    return folder;
  },
  ...who,
};
const logsNow = () =>
  withDelivery(open, false, async (record) => (await readLogs(record, record.state())).joined);
const stateNow = () => withDelivery(open, false, async (record) => record.state());

describe('a log that was read with a wrong map', () => {
  beforeEach(async () => {
    await collect(input([log], { map: wrong }));
  });

  it('is read anew with the right one, says so, and counts once', async () => {
    const { items, counts, problems } = await collect(input([log], { map: right }));
    expect(items).toMatchObject([
      { outcome: 'taken-in', evidence: 'e2', takenFor: expect.stringMatching(/read anew, in place of e1/) },
    ]);
    expect([counts.taken, problems]).toEqual([1, []]);
    const logs = await logsNow();
    expect(logs.map(({ evidence }) => evidence)).toEqual(['e2']);
    expect(logs[0]?.channels['return-air']?.at(0)).toBeCloseTo(2.22, 2);
    const { evidence } = await stateNow();
    expect(evidence).toMatchObject([
      {
        evidence: 'e1',
        replacedBy: 'e2',
        caption: expect.stringMatching(/read anew in e2; this reading no longer counts/),
      },
      { evidence: 'e2', replaces: 'e1' },
    ]);
    const { assessment, overlaps } = await assessDelivery({ ...open, folder, at: toInstant(Date.now()) });
    expect(overlaps.overlaps).toEqual([]);
    const temperatures = JSON.stringify(assessment.temperatures);
    expect(temperatures).toContain('"e2"');
    expect(temperatures).not.toContain('"e1"');
  });

  it('keeps what was said of it', async () => {
    await say({
      ...open,
      ...who,
      evidence: ['e1'],
      act: 'say',
      says: { caption: 'Left rear sensor', stop: 'drop-1', by: 'R. Dunlow' },
    });
    await collect(input([log], { map: right }));
    const { evidence } = await stateNow();
    expect(evidence[1]).toMatchObject({
      evidence: 'e2',
      caption: 'Left rear sensor',
      place: { stop: 'drop-1' },
      by: 'R. Dunlow',
    });
    // Back again: what was said of the first is not lost, and its note on having been read anew is not taken over.
    await collect(input([log], { map: wrong }));
    expect((await stateNow()).evidence[2]?.caption).toBe('Left rear sensor');
  });

  it('is one original all the same', async () => {
    await collect(input([log], { map: right }));
    expect(readdirSync(join(folder, 'originals'))).toHaveLength(1);
  });

  it('is not read anew by the same words again', async () => {
    const before = readFileSync(join(folder, 'ledger.jsonl'), 'utf8');
    const { items, counts } = await collect(input([log], { map: wrong }));
    expect(items).toMatchObject([
      { outcome: 'already-held', takenFor: 'the same bytes as e1, read in this way already; nothing added' },
    ]);
    expect(counts).toMatchObject({ taken: 0, held: 1 });
    expect(readFileSync(join(folder, 'ledger.jsonl'), 'utf8')).toBe(before);
  });

  it('can go back and forth: the last word counts', async () => {
    await collect(input([log], { map: right }));
    await collect(input([log], { map: wrong }));
    expect((await logsNow()).map(({ evidence }) => evidence)).toEqual(['e3']);
  });

  it('is left as it is by a map that does not fit, which is named', async () => {
    const map = put('other.yaml', 'columns: { time: 1, return-air: C }\nunits: F\n');
    const { items, problems } = await collect(input([log], { map }));
    expect(items).toMatchObject([{ outcome: 'already-held' }]);
    expect(problems).toHaveLength(1);
    expect((await logsNow()).map(({ evidence }) => evidence)).toEqual(['e1']);
  });

  it('that lies there twice is read anew once', async () => {
    const again = put('copy-of-log.csv', LOG);
    const { counts } = await collect(input([log, again], { map: right }));
    expect(counts).toMatchObject({ taken: 1, held: 1 });
  });

  it('stays withheld where it was', async () => {
    await withDelivery(open, true, (record) =>
      record.append([
        { type: 'evidence-withheld', by: 'Test', body: { evidence: evidenceId.parse('e1'), why: 'theirs' } },
      ]),
    );
    await collect(input([log], { map: right }));
    expect((await stateNow()).evidence).toMatchObject([{ withheld: 'theirs' }, { withheld: 'theirs' }]);
  });

  it.each([
    ['keeps what was measured of its clock', undefined, -330],
    ['in another zone does not: the clock was compared in the first', 'America/Chicago', 0],
  ])('%s', async (_, logZone, added) => {
    await recordClock({
      ...open,
      folder,
      // To the minute, so half a minute later on average.
      display: '2026-07-14 05:05',
      true: '2026-07-14T12:00:00Z',
      photo: undefined,
      log: 'e1',
      camera: undefined,
      zone: undefined,
    });
    await collect(input([log], { map: right, logZone }));
    const [now] = await logsNow();
    expect([now?.evidence, now?.addedSeconds]).toEqual(['e2', added]);
  });

  it('is told before by a dry run', async () => {
    const { items } = await dryRun(input([log], { map: right }));
    expect(items).toMatchObject([
      { heldAs: 'e1', takenFor: expect.stringMatching(/would be read anew, in place of e1/) },
    ]);
    expect((await dryRun(input([log], { map: wrong }))).items[0]?.takenFor).not.toMatch(/anew/);
    expect((await dryRun(input([log]))).items[0]?.takenFor).not.toMatch(/anew/);
  });
});

describe('a dry run of what is inside other files', () => {
  const mail = (attached: Uint8Array) =>
    [
      'From: dispatch@example.com',
      'Subject: papers',
      'Date: Tue, 14 Jul 2026 05:00:00 -0700',
      'MIME-Version: 1.0',
      'Content-Type: multipart/mixed; boundary=part',
      '',
      '--part',
      'Content-Type: text/plain',
      '',
      'See attached.',
      '--part',
      'Content-Type: application/octet-stream; name="load.zip"',
      'Content-Disposition: attachment; filename="load.zip"',
      'Content-Transfer-Encoding: base64',
      '',
      Buffer.from(attached).toString('base64'),
      '--part--',
      '',
    ].join('\r\n');
  const zip = zipOf([
    { name: 'captions.csv', bytes: 'file,caption\nnote.txt,by the dock\n' },
    { name: 'note.txt', bytes: 'The drains were open.\n' },
    { name: '.hidden', bytes: 'x' },
    { name: 'again.txt', bytes: 'The drains were open.\n' },
    { name: 'log.csv', bytes: 'Time,Return F\n2026-07-14 05:00,36\n' },
    { name: '../out.txt', bytes: 'x' },
  ]);

  it('shows what collect then takes it for, and leaves nothing behind', async () => {
    const file = put('papers.eml', mail(zip));
    const lying = new Set(readdirSync(tmpdir()).filter((name) => name.startsWith('dossier-look-')));
    const looked = await dryRun(input([file]));
    expect(
      readdirSync(tmpdir()).filter((name) => name.startsWith('dossier-look-') && !lying.has(name)),
    ).toEqual([]);
    expect(readdirSync(join(folder, 'originals'))).toEqual([]);
    const taken = await collect(input([file]));
    expect(looked.items.map(({ file: name, when }) => [name, when])).toEqual(
      taken.items.map(({ file: name, when }) => [name, when]),
    );
    expect(looked.items.map(({ file: name, within, sameAs }) => [name, within, sameAs])).toEqual([
      ['papers.eml', undefined, undefined],
      ['papers.eml/load.zip', 'papers.eml', undefined],
      ['papers.eml/load.zip/captions.csv', 'papers.eml/load.zip', undefined],
      ['papers.eml/load.zip/note.txt', 'papers.eml/load.zip', undefined],
      ['papers.eml/load.zip/again.txt', 'papers.eml/load.zip', 'papers.eml/load.zip/note.txt'],
      ['papers.eml/load.zip/log.csv', 'papers.eml/load.zip', undefined],
    ]);
    expect(looked.items[5]?.log?.rows).toHaveLength(1);
    expect(looked.problems.map(({ message }) => message)).toEqual(
      taken.problems.map(({ message }) => message),
    );
    expect(looked.notices.join()).toMatch(/Would be left out: .*\.hidden/);
    expect((await dryRun(input([file]))).items.map(({ heldAs }) => heldAs)).not.toContain(undefined);
  });

  it('goes no deeper than collect does', async () => {
    let inner = zipOf([{ name: 'deep.txt', bytes: 'deep' }]);
    for (let i = 0; i < 4; i += 1) inner = zipOf([{ name: `inner-${i}.zip`, bytes: inner }]);
    const file = put('nested.zip', inner);
    const looked = await dryRun(input([file]));
    const taken = await collect(input([file]));
    expect(looked.problems.map(({ message }) => message)).toEqual(
      taken.problems.map(({ message }) => message),
    );
    expect(looked.problems.map(({ message }) => message).join()).toMatch(/nested too deep/);
    expect(looked.items).toHaveLength(taken.items.length);
  });

  it('a damaged file in an archive is a problem with its name', async () => {
    const file = put(
      'bad.zip',
      zipOf([
        { name: 'a.txt', bytes: 'a', claims: { crc: 1 } },
        { name: 'b.txt', bytes: 'b' },
      ]),
    );
    const { items, problems } = await dryRun(input([file]));
    expect(items.map(({ file: name }) => name)).toEqual(['bad.zip', 'bad.zip/b.txt']);
    expect(problems).toMatchObject([
      { where: { file: 'bad.zip/a.txt' }, message: expect.stringMatching(/checksum/) },
    ]);
  });
});
