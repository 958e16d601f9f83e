import { createReadStream, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { dryRun } from '../../src/jobs/collect/dry-run.js';
import { type CollectInput, collect, type GivenFile } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { FACTS } from '../cli/a-delivery.js';
import { EVIDENCE } from '../demo/where.js';

const room = mkdtempSync(join(tmpdir(), 'given-'));
afterAll(() => rmSync(room, { recursive: true, force: true }));
const now = () => new Date('2026-07-16T12:00:00Z');
let made = 0;
let folder: string;
beforeEach(async () => {
  made += 1;
  folder = join(room, String(made));
  writeFileSync(join(room, 'facts.yaml'), FACTS);
  await newDelivery({ folder, file: join(room, 'facts.yaml'), by: 'Test', now });
});

const photo = join(EVIDENCE, 'photos/IMG_0412.jpg');
const taking = (given: GivenFile[], paths: string[] = []): CollectInput => ({
  folder,
  by: 'Test',
  now,
  paths,
  given,
  logZone: undefined,
  logUnit: undefined,
});

async function* pieces(...texts: string[]): AsyncGenerator<Uint8Array> {
  for (const text of texts) yield Buffer.from(text);
}

describe('files whose bytes are handed over', () => {
  it('are taken in as those at paths are, from bytes and from streams', async () => {
    const byPath = await collect(taking([], [photo]));
    const same = await collect(taking([{ name: 'IMG_0412.jpg', bytes: readFileSync(photo) }]));
    expect(same.counts).toMatchObject({ taken: 0, held: 1 });
    made += 1;
    folder = join(room, String(made));
    await newDelivery({ folder, file: join(room, 'facts.yaml'), by: 'Test', now });
    const given = await collect(taking([{ name: 'IMG_0412.jpg', bytes: createReadStream(photo) }]));
    expect(given.items).toEqual(byPath.items);
  });

  it('are described by the folders in their names', async () => {
    const { items } = await collect(
      taking([{ name: 'load-1/romaine/note.txt', bytes: Buffer.from('Loaded.') }]),
    );
    expect(items).toMatchObject([{ file: 'load-1/romaine/note.txt', outcome: 'taken-in' }]);
    const ledger = readFileSync(join(folder, 'ledger.jsonl'), 'utf8');
    expect(ledger).toContain('"place":{"stop":"load-1"}');
  });

  it('come after those at paths, and one whose stream breaks off stops no other', async () => {
    const breaking = async function* () {
      yield Buffer.from('half of ');
      throw new Error('connection lost');
    };
    const report = await collect(
      taking(
        [
          { name: 'broken.txt', bytes: breaking() },
          { name: 'whole.txt', bytes: pieces('Called ', 'the dock.') },
        ],
        [photo],
      ),
    );
    expect(report.items.map(({ file, outcome }) => [file, outcome])).toEqual([
      ['IMG_0412.jpg', 'taken-in'],
      ['broken.txt', 'refused'],
      ['whole.txt', 'taken-in'],
    ]);
    expect(report.problems).toMatchObject([
      {
        code: 'unreadable-file',
        message: 'its bytes stopped coming: connection lost',
        where: { file: 'broken.txt' },
      },
    ]);
  });

  it('are only looked at by a dry run', async () => {
    const before = readFileSync(join(folder, 'ledger.jsonl'));
    const report = await dryRun(taking([{ name: 'note.txt', bytes: pieces('Called the dock.') }]));
    expect(report.items).toMatchObject([{ file: 'note.txt', takenFor: 'document: text' }]);
    expect(readFileSync(join(folder, 'ledger.jsonl')).equals(before)).toBe(true);
  });

  it.each(['', '../note.txt', 'a//b.txt', '/etc/passwd', '.hidden', 'captions.csv', 'photos/Captions.CSV'])(
    'are refused by the name "%s", before anything is taken in',
    async (name) => {
      await expect(collect(taking([{ name, bytes: Buffer.from('x') }], [photo]))).rejects.toMatchObject({
        code: 'bad-value',
      });
      expect(readFileSync(join(folder, 'ledger.jsonl'), 'utf8').trim().split('\n')).toHaveLength(1);
    },
  );
});
