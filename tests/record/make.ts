import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sha256Of } from '../../src/core/ledger/tree.js';
import type { NewEntry } from '../../src/core/model/entry.js';
import type { EvidenceId } from '../../src/core/model/evidence.js';
import { diskFileSystem, type Ports } from '../../src/record/disk/ports.js';
import type { Processes } from '../../src/record/disk/processes.js';
import type { WrittenFacts } from '../../src/record/store.js';

/** The smallest delivery that holds. */
export function someFacts(carrier = 'Invented Carrier'): WrittenFacts {
  const facts = {
    delivery: 'TEST 2026-07/A',
    parties: { carrier: { name: carrier } },
    equipment: { trailer: { number: 'T-1' } },
    stops: [
      { id: 'load-1', does: 'load', place: 'Packing house', zone: 'America/Phoenix' },
      { id: 'drop-1', does: 'unload', place: 'Store', zone: 'America/Chicago' },
    ],
    lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
  };
  return { facts, sha256: sha256Of(Buffer.from(JSON.stringify(facts))), by: 'M. Ortega' };
}

export function pulpOf(evidence: EvidenceId | string, value = 34.2): NewEntry {
  return {
    type: 'reading-recorded',
    by: 'M. Ortega',
    body: {
      evidence,
      kind: 'pulp',
      time: { is: 'none', why: 'test' },
      line: 'romaine',
      source: { is: 'typed' },
      temperature: { value, unit: '°F' },
    },
  };
}

export function documentOf(
  evidence: EvidenceId | string,
  file: { bytes: number; sha256: string },
  name = 'bill.txt',
): NewEntry {
  return {
    type: 'evidence-received',
    by: 'M. Ortega',
    body: {
      evidence,
      kind: 'document',
      time: { is: 'none', why: 'test' },
      file: { name, bytes: file.bytes, sha256: file.sha256, type: 'text/plain' },
    },
  };
}

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
