import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sha256Of } from '../../src/core/ledger/tree.js';
import { diskFileSystem, type Ports } from '../../src/record/disk/ports.js';
import type { Processes } from '../../src/record/disk/processes.js';

/** Processes of a world in which the given pids run, and this one is the first of them. */
export function processesOf(pid: number, running: readonly number[] = [pid]): Processes {
  return {
    self: { pid, host: 'test-host', started: `start-${pid}` },
    isRunning: (who) => running.includes(who.pid) && who.started === `start-${who.pid}`,
  };
}

/** Ports with a fixed clock and random numbers that can be repeated. */
export function portsOf(parts: Partial<Ports> = {}): Ports {
  let drawn = 0;
  return {
    fs: diskFileSystem,
    now: () => new Date('2026-07-14T12:42:08.370Z'),
    random: (bytes) => {
      drawn += 1;
      const digits = sha256Of(Buffer.from(`${parts.processes?.self.pid ?? 1}:${drawn}`));
      return Buffer.from(digits.slice(0, 2 * bytes), 'hex');
    },
    processes: processesOf(1),
    ...parts,
  };
}

export function temporaryFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'record-'));
}
