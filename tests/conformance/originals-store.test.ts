import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkOriginalsStore } from '../../src/conformance.js';
import type { OriginalsStore } from '../../src/core/ports/originals-store.js';
import { openOriginals } from '../../src/record/originals-folder.js';
import { portsOf } from '../record/make.js';
import { brokenRules } from './broken-rules.js';

const room = await mkdtemp(join(tmpdir(), 'originals-'));
afterAll(() => rm(room, { recursive: true, force: true }));
let made = 0;

/** The store in a folder, and how it is opened again. */
async function ours(): Promise<{ store: OriginalsStore; again: () => Promise<OriginalsStore> }> {
  made += 1;
  const folder = join(room, String(made));
  await mkdir(folder);
  const again = () => openOriginals(folder, portsOf());
  return { store: await again(), again };
}

const KEPT = 'What is added is kept byte for byte, under its hash';
const NAMED = 'A file is named by the hash, with a plain ending';
const EQUAL = 'Equal bytes are one original';
const MENDED = 'Adding again mends a damaged one';
const AT_ONCE = 'Several may be added at once';
const FAILING = 'A stream that fails leaves nothing, and its own error comes out';
const TOO_LARGE = 'More bytes than may be are refused as file-too-large, and leave nothing';
const FOUND = 'After flush, opening it anew finds everything';
const REMOVED = 'What is removed is gone, and can be added again; removing what is not there is nothing';

describe('the contract of a store of originals', () => {
  it('is kept by the folder of a delivery', async () => {
    const { store, again } = await ours();
    const results = await checkOriginalsStore(store, again);
    expect(brokenRules(results)).toEqual([]);
    expect(results).toHaveLength(10);
  });

  /** The pieces as a store gets them that holds on to them instead of using them up. */
  async function* heldOnTo(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
    const all: Uint8Array[] = [];
    for await (const piece of bytes) all.push(piece);
    yield* all;
  }

  it.each<[string, (store: OriginalsStore) => Partial<OriginalsStore>, string[]]>([
    [
      'that holds on to pieces',
      (store) => ({ add: (bytes, order) => store.add(heldOnTo(bytes), order) }),
      [KEPT, NAMED, MENDED, AT_ONCE, FOUND, REMOVED],
    ],
    [
      'that says that everything is new',
      (store) => ({ add: async (bytes, order) => ({ ...(await store.add(bytes, order)), isNew: true }) }),
      [EQUAL],
    ],
    [
      'that knows no limit',
      (store) => ({ add: (bytes, order) => store.add(bytes, { ...order, most: Number.MAX_SAFE_INTEGER }) }),
      [TOO_LARGE],
    ],
    [
      'that turns a stream’s error into its own',
      (store) => ({
        add: async (bytes, order) => {
          try {
            return await store.add(bytes, order);
          } catch (cause) {
            throw new Error('it could not be kept', { cause });
          }
        },
      }),
      [FAILING, TOO_LARGE],
    ],
    [
      'that lays its files under names of its own',
      (store) => ({
        file: async (of) => {
          const file = await store.file(of);
          if (file === undefined) return undefined;
          const copy = join(room, 'laid-here');
          await writeFile(copy, await import('node:fs/promises').then(({ readFile }) => readFile(file)));
          return copy;
        },
      }),
      [NAMED],
    ],
    ['that removes nothing', () => ({ remove: async () => undefined }), [REMOVED]],
  ])('is not kept by one %s', async (_, change, rules) => {
    const { store, again } = await ours();
    const other = { ...store, ...change(store) };
    expect(brokenRules(await checkOriginalsStore(other, again))).toEqual(rules);
  });
});
