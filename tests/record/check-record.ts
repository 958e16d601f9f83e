import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { FileSystem } from '../../src/record/disk/ports.js';

const sha = (...parts: (string | Uint8Array)[]): Buffer => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
};

/** MTH as RFC 9162 §2.1.1 writes it down, split by split: slow, and shares nothing with the code under test. */
function slowTreeHash(entries: readonly Uint8Array[]): Buffer {
  if (entries.length === 0) return sha('');
  const [only] = entries;
  if (entries.length === 1 && only !== undefined) return sha(Uint8Array.of(0), only);
  let k = 1;
  while (2 * k < entries.length) k *= 2;
  return sha(Uint8Array.of(1), slowTreeHash(entries.slice(0, k)), slowTreeHash(entries.slice(k)));
}

/**
 * Derives everything about a closed record again from its files alone: every line and its number, the checkpoint's
 * size and root, every original's hash, and that nothing is left over from writing.
 */
export async function checkRecord(folder: string, fs: FileSystem): Promise<{ entries: unknown[] }> {
  const ledger = Buffer.from(await fs.readFile(join(folder, 'ledger.jsonl'))).toString('utf8');
  expect(ledger.endsWith('\n')).toBe(true);
  const lines = ledger.split('\n').slice(0, -1);
  const entries = lines.map((line, i) => {
    const read: unknown = JSON.parse(line);
    expect(read).toMatchObject({ seq: i });
    return read;
  });
  const [origin, size, root, ...rest] = Buffer.from(await fs.readFile(join(folder, 'checkpoint')))
    .toString('utf8')
    .split('\n');
  expect(origin).toBe('load-dossier/TEST 2026-07/A');
  expect(size).toBe(String(lines.length));
  expect(root).toBe(slowTreeHash(lines.map((line) => Buffer.from(line))).toString('base64'));
  expect(rest).toEqual(['']);

  const stored = await fs.list(join(folder, 'originals'));
  for (const name of stored) {
    const bytes = await fs.readFile(join(folder, 'originals', name));
    expect(name.slice(0, 64)).toBe(sha(bytes).toString('hex'));
  }
  const wanted = [...ledger.matchAll(/"sha256":"([0-9a-f]{64})","type":"text\/plain"/g)].map((m) => m[1]);
  for (const hash of wanted) expect(stored.map((name) => name.slice(0, 64))).toContain(hash);

  const left = (await fs.list(folder)).filter(
    (name) => !/^(ledger\.torn-.*|originals|ledger\.jsonl|checkpoint)$/.test(name),
  );
  expect(left).toEqual([]);
  return { entries };
}
