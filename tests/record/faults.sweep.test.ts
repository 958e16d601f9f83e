import { describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import type { Ports } from '../../src/record/disk/ports.js';
import { createRecord, type DeliveryRecord, openRecord } from '../../src/record/store.js';
import { documentOf, pulpOf, someFacts } from '../core/ledger/drafts.js';
import { sweepStep } from '../properties.js';
import { checkRecord } from './check-record.js';
import { portsOf, processesOf } from './make.js';
import { CUTS, type Fault, MemoryDisk } from './memory-disk.js';

const FOLDER = '/records/one';
const FAULTS = ['not-done', 'done', 'half-done'] as const;

/** Every session is a process of its own, and all earlier ones have ended. */
function sessions(disk: MemoryDisk): () => Ports {
  let pid = 100;
  return () => {
    pid += 1;
    return portsOf({ fs: disk, processes: processesOf(pid) });
  };
}

async function startedDisk(): Promise<MemoryDisk> {
  const disk = new MemoryDisk();
  await disk.makeFolder('/records');
  return disk;
}

/** What the user was told is done, one more after each act that came back without an error. */
interface Told {
  entries: number;
}

/** A working day: make the record, take in a file with its readings in one write, then a reading, then end. */
async function work(next: () => Ports, told: Told): Promise<void> {
  const record = await createRecord(FOLDER, next(), someFacts());
  told.entries = record.entries.length;
  await inSession(record, async () => {
    const table = await record.addOriginalBytes(Buffer.from('time,value\n'), 'csv');
    const id = record.nextEvidenceId();
    await record.append([
      documentOf(id, table.file),
      pulpOf(record.nextEvidenceId()),
      pulpOf(record.nextEvidenceId()),
    ]);
    told.entries = record.entries.length;
    await record.append([pulpOf(record.nextEvidenceId())]);
    told.entries = record.entries.length;
  });
  const again = await openRecord(FOLDER, next(), { write: true });
  await inSession(again, async () => {
    await again.append([pulpOf(again.nextEvidenceId())]);
    told.entries = again.entries.length;
  });
}

async function inSession(record: DeliveryRecord, action: () => Promise<void>): Promise<void> {
  try {
    await action();
  } finally {
    await record.close();
  }
}

/** Sizes between acts; nothing else may be found, because a write of several entries is all or nothing. */
const WHOLE = [0, 1, 4, 5, 6];

/** Runs the day with its Nth operation failing, brings the disk back, and says what was found; false when N is past the end. */
async function dayWithFault(
  n: number,
  fault: Fault,
  dies: boolean,
  cut: (typeof CUTS)[number],
): Promise<boolean> {
  const disk = await startedDisk();
  const next = sessions(disk);
  const told = { entries: 0 };
  disk.failAt(n, fault, dies);
  const outcome = await work(next, told).then(
    () => 'done' as const,
    (error: unknown) => error,
  );
  if (!disk.failed) {
    expect(outcome).toBe('done');
    return false;
  }
  // A bug would be another kind of error. Failing to give the lock free is no failure, so 'done' may stand here.
  if (outcome !== 'done') expect(outcome).toBeInstanceOf(DossierError);
  disk.restart(cut);

  const reading = await sizeOf(() => openRecord(FOLDER, next(), { write: false }));
  const writing = await sizeOf(() => openRecord(FOLDER, next(), { write: true, wait: 0 }));
  const about = `operation ${n} ${fault}${dies ? ', machine dead' : ''}, ${cut}`;
  expect(writing, `${about}: readers and writers see the same`).toBe(reading);
  expect(WHOLE, `${about}: old or new state`).toContain(writing);
  expect(writing, `${about}: nothing acknowledged is lost`).toBeGreaterThanOrEqual(told.entries);

  const record =
    writing === 0
      ? await createRecord(FOLDER, next(), someFacts())
      : await openRecord(FOLDER, next(), { write: true });
  expect(record.notices, `${about}: nothing left to mend`).toEqual([]);
  await record.append([pulpOf(record.nextEvidenceId())]);
  await record.close();
  const { entries } = await checkRecord(FOLDER, disk);
  expect(entries).toHaveLength(Math.max(writing, 1) + 1);
  return true;
}

async function sizeOf(open: () => Promise<DeliveryRecord>): Promise<number> {
  try {
    const record = await open();
    await record.close();
    return record.entries.length;
  } catch (error) {
    if (error instanceof DossierError && error.code === 'record-missing') return 0;
    throw error;
  }
}

/**
 * Where not all operations are tried, those that are differ from fault to fault and from cut to cut, so that each has
 * its turn.
 */
async function everyOperation(fault: Fault, dies: boolean, cut: (typeof CUTS)[number]): Promise<number> {
  const step = sweepStep(4);
  let n = 1 + ((CUTS.indexOf(cut) + FAULTS.indexOf(fault) + Number(dies)) % step);
  while (await dayWithFault(n, fault, dies, cut)) n += step;
  return n - step;
}

describe('a record whose disk fails at the Nth operation, for every N', () => {
  it.each(FAULTS)('holds the old or the new state when one operation fails (%s)', async (fault) => {
    expect(await everyOperation(fault, false, 'nothing-lost')).toBeGreaterThan(60);
  });

  it.each(CUTS.flatMap((cut) => FAULTS.map((fault) => ({ cut, fault }))))(
    'holds the old or the new state when the machine dies ($fault, $cut)',
    async ({ cut, fault }) => {
      expect(await everyOperation(fault, true, cut)).toBeGreaterThan(60);
    },
  );

  it('is mended by a second opening when the first one dies while mending', async () => {
    const torn = async () => {
      const disk = await startedDisk();
      const next = sessions(disk);
      const record = await createRecord(FOLDER, next(), someFacts());
      const steps = disk.count;
      await record.append([pulpOf('e1'), pulpOf('e2')]);
      return { disk, next, steps };
    };
    // Cut the two-entry write off at each of its steps, then the mending of it at each of its own.
    const { disk: whole, steps } = await torn();
    const length = whole.count - steps;
    for (let first = 1; first <= length; first += 1) {
      for (let second = 1; ; second += 1) {
        const disk = await startedDisk();
        const next = sessions(disk);
        const record = await createRecord(FOLDER, next(), someFacts());
        disk.failAt(first, 'half-done', true);
        await expect(record.append([pulpOf('e1'), pulpOf('e2')])).rejects.toThrow(DossierError);
        disk.restart('nothing-lost');
        disk.failAt(second, 'half-done', true);
        const mended = await openRecord(FOLDER, next(), { write: true }).then(
          () => true,
          () => false,
        );
        const failed = disk.failed;
        disk.restart(second % 2 === 0 ? 'all-lost' : 'nothing-lost');
        const after = await openRecord(FOLDER, next(), { write: true });
        expect([1, 3], `write cut at ${first}, mending at ${second}`).toContain(after.entries.length);
        await after.close();
        await checkRecord(FOLDER, disk);
        if (mended && !failed) break;
      }
    }
  });

  it.each(CUTS)('has nothing to mend when the power goes after an append came back (%s)', async (cut) => {
    const disk = await startedDisk();
    const next = sessions(disk);
    const record = await createRecord(FOLDER, next(), someFacts());
    await record.append([pulpOf('e1'), pulpOf('e2')]);
    disk.restart(cut);
    const again = await openRecord(FOLDER, next(), { write: false });
    expect(again.entries).toHaveLength(3);
    expect(again.notices).toEqual([]);
  });

  it('writes nothing more after a failed write until it is opened again', async () => {
    const disk = await startedDisk();
    const next = sessions(disk);
    const record = await createRecord(FOLDER, next(), someFacts());
    disk.failAt(5, 'half-done', false);
    await expect(record.append([pulpOf('e1')])).rejects.toMatchObject({ code: 'disk' });
    await expect(record.append([pulpOf('e1')])).rejects.toThrow(/earlier write failed/);
    await expect(record.addOriginalBytes(Buffer.from('x'), 'txt')).rejects.toThrow(/earlier write failed/);
    expect(record.entries).toHaveLength(1);
  });
});
