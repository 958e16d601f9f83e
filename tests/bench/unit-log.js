// A unit log read and everything computed of it, at the sizes that deliveries have: 20,000 rows, and the largest that
// is reckoned with, sixty days by the minute in ten columns.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { leastOf, measure } from './measuring/measure.js';

export const name = 'A unit log of 8 temperatures and 2 states by the minute, read and all computed of it';
export const reference = 'a bare parse of the same file into numbers, in a process of its own';

const WORKER = new URL('unit-log.worker.js', import.meta.url).pathname;
const ROUNDS = 5;

/** Noise, marks of a fault, defrosts, open doors, and excursions. @param {number} rows */
function logOf(rows) {
  let seed = 7;
  const chance = () => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed / 2_147_483_648;
  };
  const near = (/** @type {number} */ value) => (value + (chance() - 0.5) * 0.6).toFixed(1);
  const start = Date.UTC(2026, 4, 15, 11);
  const lines = [
    'Date time,Set point (F),Return air (F),Supply air (F),Ambient (F),Probe 1 (F),Probe 2 (F),Probe 3 (F),Probe 4 (F),Mode,Door',
  ];
  for (let i = 0; i < rows; i++) {
    const at = new Date(start + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    const swing = Math.sin(i / 120) * 1.6;
    const air = chance() < 0.001 ? '----' : near(36.6 + swing);
    const others = [35.2 + swing, 80 + 6 * swing, 36.5, 36.2 + swing / 5, 36.8 + swing / 3, 36.1].map(near);
    lines.push(
      [
        at,
        '36.0',
        air,
        ...others,
        i % 360 < 15 ? 'Defrost' : 'Cool',
        i % 5000 < 20 ? 'Open' : 'Closed',
      ].join(),
    );
  }
  return `${lines.join('\n')}\n`;
}

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'bench-unit-log-'));
  try {
    return [20_000, 86_400].flatMap((rows) => {
      const file = join(folder, `${rows}.csv`);
      writeFileSync(file, logOf(rows));
      const least = { read: Number.POSITIVE_INFINITY, computed: Number.POSITIVE_INFINITY };
      let bareRead = Number.POSITIVE_INFINITY;
      const { own, bare } = leastOf(
        {
          own: () => {
            const took = measure([WORKER, 'own', file]);
            const { read, computed } = JSON.parse(took.out);
            least.read = Math.min(least.read, read);
            least.computed = Math.min(least.computed, computed);
            return took;
          },
          bare: () => {
            const took = measure([WORKER, 'bare', file]);
            bareRead = Math.min(bareRead, JSON.parse(took.out).read);
            return took;
          },
        },
        ROUNDS,
      );
      const what = `${rows.toLocaleString('en-US')} rows`;
      return [
        { what: `${what}, time`, unit: 's', own: own.seconds, reference: bare.seconds },
        { what: `${what}, processor time`, unit: 's', own: own.cpuSeconds, reference: bare.cpuSeconds },
        { what: `${what}, of which reading`, unit: 's', own: least.read, reference: bareRead },
        { what: `${what}, of which computing`, unit: 's', own: least.computed, reference: bareRead },
        { what: `${what}, peak memory`, unit: 'MB', own: own.megabytes, reference: bare.megabytes },
      ];
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
