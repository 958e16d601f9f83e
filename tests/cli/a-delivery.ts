import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dossier, dossierHere, type Ran } from './run.js';

export const FACTS = `delivery: 2026-0714-A
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Chicago }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1, instruction: { setPoint: 36 °F, tolerance: 2 °F } }
  - { id: celery, goods: celery, from: load-1, to: drop-1 }
`;

/** A folder that holds deliveries, and the command line in it. */
export interface Yard {
  folder: string;
  at: (...names: string[]) => string;
  put: (name: string, text: string | Uint8Array) => string;
  /** One command line, inside the process of the test. */
  dossier: (...args: string[]) => Promise<Ran>;
  /** One command line as a process of its own. */
  process: (...args: string[]) => Promise<Ran>;
  /** Makes a delivery of few facts and gives its folder. */
  delivery: (name?: string, facts?: string) => Promise<string>;
  /** Records when the doors were closed at load-1 and opened at drop-1, in local time of each. */
  aboard: (delivery: string, from: string, to: string) => Promise<void>;
  /** Types of the ledger's entries, or their bodies. */
  entries: (delivery: string) => { type: string; body: Record<string, unknown> }[];
  end: () => void;
}

export function yard(): Yard {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const at = (...names: string[]) => join(folder, ...names);
  const put = (name: string, text: string | Uint8Array) => {
    writeFileSync(at(name), text);
    return at(name);
  };
  const env = { DOSSIER_IDENTITY: at('identity'), DOSSIER_PASSPHRASE: 'of-a-test-that-forgets-it' };
  const run = (...args: string[]) => dossierHere(args, env, folder);
  return {
    folder,
    at,
    put,
    dossier: run,
    process: (...args) => dossier(args, env, folder),
    delivery: async (name = 'delivery', facts = FACTS) => {
      const made = await run('new', name, '--file', put(`facts-of-${name}.yaml`, facts));
      if (made.code !== 0) throw new Error(made.err);
      return at(name);
    },
    aboard: async (delivery, from, to) => {
      for (const [event, stop, when] of [
        ['doors-closed', 'load-1', from],
        ['doors-opened', 'drop-1', to],
      ] as const) {
        const recorded = await run('record', 'event', event, '--stop', stop, '--at', when, '-d', delivery);
        if (recorded.code !== 0) throw new Error(recorded.err);
      }
    },
    entries: (delivery) =>
      readFileSync(join(delivery, 'ledger.jsonl'), 'utf8')
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
    end: () => rmSync(folder, { recursive: true, force: true }),
  };
}
