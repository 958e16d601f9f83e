// Opening a record against the least that any reader of the same file must do: read it, hash each line, parse each line.
import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { machinePorts } from '../../dist/record/disk/ports.js';
import { createRecord, openRecord } from '../../dist/record/store.js';

export const name = 'Opening a record and folding its state';
export const reference = 'reading, hashing and parsing each line of the same ledger';

const FACTS = {
  delivery: 'BENCH-1',
  parties: { carrier: { name: 'Invented Haulage' } },
  equipment: { trailer: { number: 'T-1' } },
  stops: [
    { id: 'load-1', does: 'load', place: 'Here', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'There', zone: 'America/Chicago' },
  ],
  lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
};

/** @param {number} entries */
async function measure(entries) {
  const folder = mkdtempSync(join(tmpdir(), 'bench-record-'));
  try {
    const sha256 = /** @type {import('../../dist/core/model/evidence.js').Sha256} */ (
      randomBytes(32).toString('hex')
    );
    const record = await createRecord(folder, machinePorts(), { sha256, facts: FACTS, by: 'Bench' });
    for (let left = entries; left > 0; left -= 1000)
      await record.append(
        Array.from({ length: Math.min(left, 1000) }, () => ({
          type: /** @type {const} */ ('reading-recorded'),
          by: 'Bench',
          body: {
            evidence: record.nextEvidenceId(),
            kind: /** @type {const} */ ('pulp'),
            time: { is: /** @type {const} */ ('none'), why: 'bench' },
            source: { is: /** @type {const} */ ('typed') },
            temperature: { value: 36.5, unit: /** @type {const} */ ('°F') },
          },
        })),
      );
    await record.close();
    const own = await best(async () => {
      const opened = await openRecord(folder, machinePorts(), { write: false });
      opened.state();
      await opened.close();
    });
    const bare = await best(async () => {
      for (const line of readFileSync(join(folder, 'ledger.jsonl'), 'utf8').split('\n')) {
        if (line === '') continue;
        createHash('sha256').update(line).digest();
        JSON.parse(line);
      }
    });
    return { what: `${entries} entries`, unit: 'ms', own, reference: bare };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {() => Promise<void>} act */
async function best(act) {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 5; i += 1) {
    const started = performance.now();
    await act();
    least = Math.min(least, performance.now() - started);
  }
  return least;
}

export const run = async () => [await measure(1_000), await measure(10_000), await measure(40_000)];
