import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { sha256 } from '../../src/core/model/evidence.js';
import { parseDeliveryFile } from '../../src/intake/delivery-file.js';
import type { FoundFile } from '../../src/intake/file-scan.js';

/** An invented delivery with stops in two zones. */
export const DELIVERY_YAML = `delivery: T-1
parties: { carrier: { name: Invented Haulage } }
equipment: { trailer: { number: "118" } }
stops:
  - { id: load-1, does: load, place: Nowhere Field, zone: America/Phoenix, at: [32.69, -114.62], planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Paper Moon, zone: America/Chicago, at: [41.25, -95.93], planned: 2026-07-16T06:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1, instruction: { setPoint: 36 °F } }
`;
export const delivery = parseDeliveryFile(DELIVERY_YAML, 'delivery.yaml').facts;

export const someHash = sha256.parse('a'.repeat(64));

/** A folder that is gone after the tests of the file. */
export async function emptyFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'intake-'));
  afterAll(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

export async function put(folder: string, name: string, bytes: string | Uint8Array): Promise<FoundFile> {
  const path = join(folder, name);
  await writeFile(path, bytes);
  return { path, name, bytes: bytes.length };
}
