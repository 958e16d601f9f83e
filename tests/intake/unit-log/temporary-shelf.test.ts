import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { TemporaryShelf } from '../../../src/intake/unit-log/temporary-shelf.js';
import { evidence, mappingOf, source } from './reading.js';

const before = process.env.TMPDIR;
let folder = '';

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shelf-'));
  process.env.TMPDIR = folder;
});

afterEach(async () => {
  if (before === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = before;
  await rm(folder, { recursive: true, force: true });
});

const bytes = (length: number, first: number) => Uint8Array.from({ length }, (_, i) => (first + i) % 256);
const taken = (shelf: TemporaryShelf, at: number, length: number) => {
  const into = new Uint8Array(length);
  shelf.get(at, into);
  return into;
};

describe('a temporary shelf', () => {
  it('leaves what is little in memory and makes no file', async () => {
    const shelf = new TemporaryShelf(100);
    expect([shelf.put(bytes(60, 0)), shelf.put(bytes(40, 0))]).toEqual([undefined, undefined]);
    await rm(folder, { recursive: true });
    // Nothing has been opened there so far, so only now it can't be.
    expect(shelf.put(bytes(1, 0))).toBeUndefined();
  });

  it('gives back what is more, in any order', () => {
    const shelf = new TemporaryShelf(100);
    shelf.put(bytes(90, 0));
    const places = [bytes(50, 1), bytes(70, 2), bytes(20, 3)].map((some) => shelf.put(some) ?? Number.NaN);
    const [first = 0, second = 0, third = 0] = places;
    expect(taken(shelf, third, 20)).toEqual(bytes(20, 3));
    expect(taken(shelf, first, 50)).toEqual(bytes(50, 1));
    expect(taken(shelf, second, 70)).toEqual(bytes(70, 2));
  });

  it('leaves no file that anyone could find', async () => {
    const shelf = new TemporaryShelf(0);
    const at = shelf.put(bytes(50, 1)) ?? Number.NaN;
    expect(await readdir(folder)).toEqual([]);
    expect(taken(shelf, at, 50)).toEqual(bytes(50, 1));
  });

  it('leaves all in memory where no file can be made', async () => {
    process.env.TMPDIR = join(folder, 'is not there');
    await expect(stat(process.env.TMPDIR)).rejects.toThrow();
    const shelf = new TemporaryShelf(0);
    expect([shelf.put(bytes(50, 1)), shelf.put(bytes(50, 2))]).toEqual([undefined, undefined]);
  });

  it('says so when bytes are not there', () => {
    const shelf = new TemporaryShelf(0);
    expect(() => taken(shelf, 0, 1)).toThrow('nothing lies on this shelf');
    shelf.put(bytes(3, 0));
    expect(() => taken(shelf, 0, 4)).toThrow('shorter');
  });
});

/** Rows by the minute with marks of a fault among them, in this order. */
function logOf(order: readonly number[]): string {
  const rows = order.map((i) => {
    const at = new Date(Date.UTC(2026, 0, 1) + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    const air = i % 701 === 5 ? '----' : (36 + Math.sin(i / 50) * 3).toFixed(1);
    return `${at},36.0,${air},${(35 + Math.cos(i / 30) * 30).toFixed(2)},${i % 360 < 15 ? 'Defrost' : 'Cool'}`;
  });
  return `Date time,Set point (F),Return air (F),Supply air (F),Mode\n${rows.join('\n')}\n`;
}

describe('a log that lies on a shelf', () => {
  const rows = Array.from({ length: 13_000 }, (_, i) => i);

  it.each([
    ['in order of time', rows],
    ['with rows twice', rows.flatMap((i) => (i % 1_000 === 7 ? [i, i] : [i]))],
    ['newest first', rows.toReversed()],
    ['newest first with rows twice', rows.toReversed().flatMap((i) => (i % 1_000 === 7 ? [i, i] : [i]))],
    ['the second half first', [...rows.slice(6_500), ...rows.slice(0, 6_500)]],
  ])('is the same as in memory: %s', async (_, order) => {
    const text = logOf(order);
    const mapping = await mappingOf(text);
    const readOn = async (most: number) => {
      const shelf = new TemporaryShelf(most);
      const log = await readUnitLog(source(text), mapping, { evidence, addedSeconds: 60, shelf });
      const { times, channels, states, rows: lines, ...rest } = log;
      return {
        ...rest,
        times: [...times],
        lines: [...lines],
        channels: Object.entries(channels).map(([name, values]) => [name, ...values]),
        states: Object.entries(states).map(([name, texts]) => [name, ...texts]),
      };
    };
    const onShelf = await readOn(0);
    expect(onShelf.times).toHaveLength(rows.length);
    expect(onShelf).toEqual(await readOn(Number.POSITIVE_INFINITY));
  });
});
