import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { appendFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { diskFileSystem, machinePorts } from '../../../src/record/disk/ports.js';
import { createRecord, openRecord } from '../../../src/record/store.js';
import { pulpOf, someFacts } from '../../core/ledger/drafts.js';
import { checkRecord } from '../check-record.js';
import { temporaryFolder } from '../make.js';

/** The record as it was built, for processes of their own. */
const BUILT = pathToFileURL(join(import.meta.dirname, '../../../dist/record')).href;

/** Appends to a record, in batches of three, and says each confirmed size on a line of its own. */
const WRITER = `
import { openRecord } from '${BUILT}/store.js';
import { machinePorts } from '${BUILT}/disk/ports.js';
const [folder, batches, each] = process.argv.slice(2);
const reading = (evidence) => ({ type: 'reading-recorded', by: String(process.pid), body: {
  evidence, kind: 'pulp', time: { is: 'none', why: 'test' }, source: { is: 'typed' },
  temperature: { value: 34, unit: '°F' } } });
const one = async (record) => {
  await record.append([1, 2, 3].map(() => reading(record.nextEvidenceId())));
  process.stdout.write(record.entries.length + '\\n');
};
if (each === 'reopen')
  for (let i = 0; i < Number(batches); i += 1) {
    const record = await openRecord(folder, machinePorts(), { write: true, wait: 50_000 });
    await one(record);
    await record.close();
  }
else {
  const record = await openRecord(folder, machinePorts(), { write: true });
  for (let i = 0; i < Number(batches); i += 1) await one(record);
  await record.close();
}
`;

let script: string;
beforeAll(async () => {
  script = join(await temporaryFolder(), 'writer.mjs');
  await writeFile(script, WRITER);
});

let folder: string;
beforeEach(async () => {
  folder = join(await temporaryFolder(), 'delivery');
  await (await createRecord(folder, machinePorts(), someFacts())).close();
});

function writer(batches: number, each: 'reopen' | 'keep-open'): { child: ChildProcess; sizes: number[] } {
  const child = spawn(process.execPath, [script, folder, String(batches), each], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const sizes: number[] = [];
  createInterface({ input: child.stdout ?? expect.fail('no output') }).on('line', (line) =>
    sizes.push(Number(line)),
  );
  return { child, sizes };
}

async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await sleep(5);
}

describe('real processes', () => {
  it('killed in the middle of writing lose nothing that they had confirmed, and the next takes the lock over', async () => {
    let before = 1;
    for (const wait of [1, 3, 6]) {
      const { child, sizes } = writer(100_000, 'keep-open');
      await until(() => sizes.length >= wait);
      child.kill('SIGKILL');
      await once(child, 'close');
      const confirmed = sizes.at(-1) ?? expect.fail('it confirmed nothing');
      expect(confirmed).toBeGreaterThan(before);
      const record = await openRecord(folder, machinePorts(), { write: true });
      expect(record.entries.length).toBeGreaterThanOrEqual(confirmed);
      // Facts and whole batches of three.
      expect(record.entries.length % 3).toBe(1);
      before = record.entries.length;
      await record.close();
      await checkRecord(folder, diskFileSystem);
    }
  });

  it('that write at the same time take turns, and no entry is lost', async () => {
    const writers = [writer(5, 'reopen'), writer(5, 'reopen'), writer(5, 'reopen')];
    const codes = await Promise.all(writers.map(async ({ child }) => (await once(child, 'close'))[0]));
    expect(codes).toEqual([0, 0, 0]);
    const { entries } = await checkRecord(folder, diskFileSystem);
    expect(entries).toHaveLength(1 + 3 * 5 * 3);
    const confirmed = writers.flatMap(({ sizes }) => sizes).sort((a, b) => a - b);
    expect(confirmed).toEqual(Array.from({ length: 15 }, (_, i) => 4 + 3 * i));
  });

  it('that write are waited for, and then named; readers need not wait', async () => {
    const { child, sizes } = writer(100_000, 'keep-open');
    await until(() => sizes.length > 0);
    await expect(openRecord(folder, machinePorts(), { write: true, wait: 50 })).rejects.toMatchObject({
      code: 'record-locked',
      message: expect.stringContaining(`process ${child.pid} on `),
    });
    for (let i = 0; i < 20; i += 1) {
      const record = await openRecord(folder, machinePorts(), { write: false });
      expect(record.entries.length % 3).toBe(1);
    }
    child.kill('SIGKILL');
    await once(child, 'close');
  });
});

describe('a long record', () => {
  it('of 10,000 entries opens, mends a torn line and takes more in', async () => {
    const record = await openRecord(folder, machinePorts(), { write: true });
    for (let i = 0; i < 10; i += 1)
      await record.append(Array.from({ length: 1_000 }, () => pulpOf(record.nextEvidenceId())));
    await record.close();
    const again = await openRecord(folder, machinePorts(), { write: false });
    expect(again.state().evidence).toHaveLength(10_000);
    await appendFile(join(folder, 'ledger.jsonl'), 'x');
    const more = await openRecord(folder, machinePorts(), { write: true });
    await more.append([pulpOf(more.nextEvidenceId())]);
    await more.close();
    expect((await checkRecord(folder, diskFileSystem)).entries).toHaveLength(10_002);
  });
});
