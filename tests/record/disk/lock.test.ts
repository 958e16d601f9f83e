import { readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { beforeEach, describe, expect, it } from 'vitest';
import { acquireLock } from '../../../src/record/disk/lock.js';
import { diskFileSystem, type Ports } from '../../../src/record/disk/ports.js';
import { thisMachine } from '../../../src/record/disk/processes.js';
import { portsOf, processesOf, temporaryFolder } from '../make.js';

let folder: string;
beforeEach(async () => {
  folder = await temporaryFolder();
});
const NAME = 'writer-0123456789abcdef.lock';
const locks = async () => (await diskFileSystem.list(folder)).filter((name) => name.endsWith('.lock'));
const claimOf = (pid: number, started = `start-${pid}`, host = 'test-host') =>
  writeFile(join(folder, NAME), JSON.stringify({ pid, host, started, since: '2026-07-14T04:00:00.000Z' }));
const runs = (pid: number, running: readonly number[]): Ports =>
  portsOf({ processes: processesOf(pid, running) });

describe('the lock', () => {
  it('says who holds it and is gone after its release', async () => {
    const lock = await acquireLock(folder, runs(7, [7]));
    const [name = ''] = await locks();
    expect(JSON.parse(await readFile(join(folder, name), 'utf8'))).toEqual({
      pid: 7,
      host: 'test-host',
      started: 'start-7',
      since: '2026-07-14T12:42:08.370Z',
    });
    await lock.release();
    await lock.release();
    expect(await locks()).toEqual([]);
  });

  it('is refused while another live process holds it, naming that process and the file', async () => {
    await claimOf(7);
    await expect(acquireLock(folder, runs(8, [7, 8]), 0)).rejects.toMatchObject({
      code: 'record-locked',
      message: 'the record is being written by process 7 on test-host, since 2026-07-14T04:00:00.000Z',
      where: { file: join(folder, NAME) },
    });
    expect(await locks()).toEqual([NAME]);
  });

  it('waits for the other to finish', async () => {
    const first = await acquireLock(folder, runs(7, [7, 8]));
    const second = acquireLock(folder, runs(8, [7, 8]), 5_000);
    await sleep(100);
    await first.release();
    await (await second).release();
    expect(await locks()).toEqual([]);
  });

  it('holds against the same process too', async () => {
    const ports = runs(7, [7]);
    const lock = await acquireLock(folder, ports);
    await expect(acquireLock(folder, ports, 0)).rejects.toMatchObject({ code: 'record-locked' });
    await lock.release();
  });

  it.each([
    ['whose process is gone', 7, 'start-7', [8]],
    ['whose pid another process has now', 7, 'start-of-the-old-one', [7, 8]],
  ])('is taken over from one %s', async (_name, pid, started, running) => {
    await claimOf(pid, started);
    const lock = await acquireLock(folder, runs(8, running), 0);
    expect(await locks()).toHaveLength(1);
    expect(await locks()).not.toContain(NAME);
    await lock.release();
  });

  it('is respected when it is being written at this moment, and taken over when it stayed empty', async () => {
    await writeFile(join(folder, NAME), '');
    const now = new Date('2026-07-14T12:42:08.370Z');
    await utimes(join(folder, NAME), now, now);
    await expect(acquireLock(folder, runs(8, [8]), 0)).rejects.toThrow(/just begun/);
    const before = new Date(now.getTime() - 11_000);
    await utimes(join(folder, NAME), before, before);
    await (await acquireLock(folder, runs(8, [8]), 0)).release();
  });

  it('is not held up by one that was killed before its lock was whole, and clears that away', async () => {
    const cut = join(folder, NAME.replace('.lock', '.claim'));
    const now = new Date('2026-07-14T12:42:08.370Z');
    for (const [written, age, stays] of [
      ['', 0, true],
      ['{"pid":7', 11_000, false],
    ] as const) {
      await writeFile(cut, written);
      const at = new Date(now.getTime() - age);
      await utimes(cut, at, at);
      await (await acquireLock(folder, runs(8, [8]), 0)).release();
      expect((await diskFileSystem.list(folder)).some((name) => name.endsWith('.claim'))).toBe(stays);
    }
  });

  it('tries again when another took its claim for one that was left behind', async () => {
    const ports = runs(8, [8]);
    let taken = 0;
    const fs = {
      ...ports.fs,
      rename: async (from: string, to: string) => {
        if (taken === 0) await rm(from);
        taken += 1;
        await ports.fs.rename(from, to);
      },
    };
    const lock = await acquireLock(folder, { ...ports, fs });
    expect(taken).toBe(2);
    expect(await locks()).toHaveLength(1);
    await lock.release();
    expect(await diskFileSystem.list(folder)).toEqual([]);
  });

  it('is given to one at a time when many ask for it at once', async () => {
    const pids = [11, 12, 13, 14, 15, 16];
    let inside = 0;
    let turns = 0;
    await Promise.all(
      pids.map(async (pid) => {
        const ports = runs(pid, pids);
        for (let i = 0; i < 3; i += 1) {
          const lock = await acquireLock(folder, ports, 30_000);
          inside += 1;
          expect(inside).toBe(1);
          await sleep(2);
          turns += 1;
          inside -= 1;
          await lock.release();
        }
      }),
    );
    expect(turns).toBe(18);
  });
});

describe('the processes of this machine', () => {
  const machine = thisMachine();

  it('knows that this process runs', () => {
    expect(machine.isRunning(machine.self)).toBe(true);
  });

  it('knows a pid that no process has', () => {
    // Linux gives pids below 2^22 (proc(5), pid_max), so this one is never taken.
    expect(machine.isRunning({ ...machine.self, pid: 2 ** 22 + 1 })).toBe(false);
  });

  it.runIf(process.platform === 'linux')('tells an earlier process of the same pid apart', () => {
    expect(machine.isRunning({ ...machine.self, started: 'another-boot:1' })).toBe(false);
  });

  it('takes a process of another machine for running, because it can’t look', () => {
    expect(machine.isRunning({ ...machine.self, host: 'another', pid: 2 ** 22 + 1 })).toBe(true);
  });
});
