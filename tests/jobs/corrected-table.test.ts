import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { collect } from '../../src/jobs/collect.js';
import { withDelivery } from '../../src/jobs/delivery.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';

const FIXTURES = join(import.meta.dirname, '../../fixtures');
let place: string;
beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'corrected-'));
});
afterAll(() => rm(place, { recursive: true, force: true }));

it('a table that comes again with one row corrected adds that row alone', async () => {
  const who = { folder: join(place, 'delivery'), by: 'Test', now: () => new Date('2026-07-17T09:00:00Z') };
  await newDelivery({ ...who, file: join(FIXTURES, 'demo/delivery.yaml') });
  const table = join(place, 'readings.csv');
  await cp(join(FIXTURES, 'bad/reading-900.csv'), table);
  const take = () => collect({ ...who, paths: [table], progress: () => undefined });

  const first = await take();
  expect(first.problems.map(({ where }) => where.row)).toHaveLength(1);
  await writeFile(table, (await readFile(table, 'utf8')).replace('900', '40.0'));
  const second = await take();

  expect(second.counts).toMatchObject({ taken: 1, readings: 1 });
  expect(second.items[0]?.takenFor).toContain(`${first.counts.readings} of them recorded before`);
  const pulps = await withDelivery(who, false, async (record) =>
    record.state().evidence.flatMap((item) => (item.kind === 'pulp' ? [item.temperature.value] : [])),
  );
  expect(pulps.filter((value, i) => pulps.indexOf(value) !== i)).toEqual([]);
  expect(pulps).toContain(40);
});
