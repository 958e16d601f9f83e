import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ByteShelf } from '../../../src/core/model/columns/kept-blocks.js';
import { packBlock } from '../../../src/core/model/columns/number-block.js';
import { BLOCK, eachBlock, readColumn } from '../../../src/core/model/columns/number-column.js';
import { NumberWriter, PackedNumbers, shelfOf } from '../../../src/core/model/columns/packed-numbers.js';
import { TextWriter } from '../../../src/core/model/columns/text-column.js';
import { withoutRows } from '../../../src/core/model/columns/without-rows.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import { cases } from '../../properties.js';

const MINUTE = 60_000;
const START = Date.UTC(2026, 6, 14);

/** As a cell of so many decimals is read. */
const read = (digits: number, decimals: number, unit: '°F' | '°C') =>
  toCelsius(digits / 10 ** decimals, unit);

const cells = fc.oneof(
  fc.tuple(fc.integer({ min: -1120, max: 1850 }), fc.constant(1), fc.constantFrom('°F', '°C')),
  fc.tuple(fc.integer({ min: -11_200, max: 18_500 }), fc.constant(2), fc.constantFrom('°F', '°C')),
  fc.tuple(fc.integer({ min: -80, max: 85 }), fc.constant(0), fc.constantFrom('°F', '°C')),
);
const values = fc.oneof(
  { weight: 6, arbitrary: cells.map(([digits, decimals, unit]) => read(digits, decimals, unit as '°F') + 0) },
  { weight: 2, arbitrary: fc.constant(Number.NaN) },
  // −0 and 0 are one temperature.
  { weight: 1, arbitrary: fc.double().map((value) => value + 0) },
);

describe('a packed column', () => {
  it('gives back exactly what was put in, in any order of reading', () => {
    fc.assert(
      fc.property(
        fc.array(values, { maxLength: 40 }),
        fc.nat(),
        fc.integer({ min: 1, max: 50 }),
        (all, at, room) => {
          const column = PackedNumbers.from(all);
          expect([...column]).toEqual(all);
          expect(column).toHaveLength(all.length);
          expect(column.at(at)).toEqual(all.at(at) ?? undefined);
          expect(column.at(-1)).toEqual(all.at(-1));
          const into = new Float64Array(room);
          const from = at % (all.length + 1);
          const count = readColumn(column, from, into);
          expect([...into.subarray(0, count)]).toEqual(all.slice(from, from + room));
        },
      ),
    );
  });

  it.each([
    [[-17.77777777777778, Number.POSITIVE_INFINITY]],
    [[Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]],
    [[Number.NEGATIVE_INFINITY, 0]],
    [[-1.7e308, 1.7e308]],
  ])('gives back %j', (all) => {
    expect([...PackedNumbers.from(all)]).toEqual(all);
  });

  it('does so over the ends of its blocks, where forms change', () => {
    const all = Array.from({ length: 3 * BLOCK + 17 }, (_, i) =>
      i < BLOCK ? read(360 + (i % 50), 1, '°F') : i < 2 * BLOCK ? read(i * 3, 2, '°C') : i / 7,
    );
    const column = PackedNumbers.from(all);
    expect([...column]).toEqual(all);
    const into = new Float64Array(BLOCK);
    expect(readColumn(column, BLOCK - 5, into)).toBe(BLOCK);
    expect([...into]).toEqual(all.slice(BLOCK - 5, 2 * BLOCK - 5));
  });

  it.each([
    ['times at even steps', (i: number) => START + i * MINUTE, 0],
    ['times at uneven steps', (i: number) => START + i * MINUTE + (i % 7) * 1000, 4],
    ['a set point that holds', () => read(360, 1, '°F'), 0],
    ['nothing known', () => Number.NaN, 0],
    ['air within 25 °F, in tenths', (i: number) => read(360 + (i % 250), 1, '°F'), 1],
    ['air in hundredths of °C', (i: number) => read(200 + (i % 900), 2, '°C'), 2],
    [
      'air in tenths, with unknown values',
      (i: number) => (i % 9 === 0 ? Number.NaN : read(20 + (i % 99), 1, '°C')),
      1,
    ],
    ['what no form fits', (i: number) => Math.sin(i), 8],
  ])('%s take %#', (_, value, bytes) => {
    const block = packBlock(Float64Array.from({ length: BLOCK }, (_, i) => value(i)));
    const held =
      block.is === 'even' ? 0 : block.is === 'offsets' ? block.offsets.byteLength : block.values.byteLength;
    expect(held / BLOCK).toBe(bytes);
  });
});

describe('a column that is written', () => {
  it('can be changed at any place, and put in another order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat({ max: 2 * BLOCK }), values), { maxLength: 30 }),
        fc.integer({ min: 1, max: 97 }),
        (changes, stride) => {
          const plain = Array.from(
            { length: 2 * BLOCK + 3 },
            (_, i) => read(300 + (i % 90), 1, '°F') as number,
          );
          const writer = new NumberWriter();
          for (const value of plain) writer.push(value);
          for (const [at, value] of changes) {
            writer.set(at, value);
            plain[at] = value;
            expect(writer.at(at)).toEqual(value);
          }
          const order = Uint32Array.from({ length: 500 }, (_, i) => (i * stride) % plain.length);
          expect([...writer.finish(order)]).toEqual(Array.from(order, (i) => plain[i]));
          expect(writer).toHaveLength(0);
        },
      ),
      { numRuns: cases(20) },
    );
  });

  it('knows nothing of rows that it has not', () => {
    const writer = new NumberWriter();
    writer.push(1);
    writer.set(5, 2);
    expect([writer.at(-1), writer.at(1), writer.at(5)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    expect([...writer.finish()]).toEqual([1]);
  });
});

/** Takes the bytes of every block but the first few. */
class Shelf implements ByteShelf {
  readonly taken: Uint8Array[] = [];
  asked = 0;

  put(bytes: Uint8Array): number | undefined {
    this.asked += 1;
    return this.asked <= 2 ? undefined : this.taken.push(bytes.slice()) - 1;
  }

  get(at: number, into: Uint8Array): void {
    const bytes = this.taken[at];
    if (bytes?.length !== into.length) throw new Error('other bytes than were put there');
    into.set(bytes);
  }
}

describe('a column on a shelf', () => {
  const tenths = (i: number): number => read(300 + ((i * 7) % 90), 1, '°F');
  const hundredths = (i: number): number => read((i * 13) % 9000, 2, '°C');
  const uneven = (i: number): number => START + i * MINUTE + (i % 7) * 1000;
  const odd = (i: number): number => Math.sin(i);
  const all = [tenths, hundredths, uneven, odd, tenths].flatMap((value) =>
    Array.from({ length: BLOCK }, (_, i) => value(i)),
  );

  it('gives back what was put in, along its rows and at any place', () => {
    const shelf = new Shelf();
    const column = PackedNumbers.from(all, shelf);
    expect(shelf.taken.map((bytes) => bytes.length / BLOCK)).toEqual([4, 8, 1]);
    expect([...column]).toEqual(all);
    const places = [0, 4 * BLOCK, 3 * BLOCK + 1, 2 * BLOCK - 1, 2 * BLOCK, 4 * BLOCK, all.length - 1];
    expect(places.map((at) => column.at(at))).toEqual(places.map((at) => all[at]));
  });

  it('can be changed while it is written, and put in another order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat({ max: all.length - 1 }), values), { maxLength: 12 }),
        fc.integer({ min: 1, max: 9_999 }),
        fc.boolean(),
        (changes, stride, asList) => {
          const plain = [...all];
          const writer = new NumberWriter(new Shelf());
          for (const value of plain) writer.push(value);
          for (const [at, value] of changes) {
            writer.set(at, value);
            plain[at] = value;
            expect(writer.at(at)).toEqual(value);
          }
          const order = Array.from({ length: 500 }, (_, i) => (i * stride) % plain.length);
          const column = writer.finish(asList ? Uint32Array.from(order) : order);
          expect([...column]).toEqual(order.map((i) => plain[i]));
        },
      ),
      { numRuns: cases(10) },
    );
  });

  it('holds texts too', () => {
    const writer = new TextWriter(new Shelf());
    const words = Array.from({ length: 5 * BLOCK }, (_, i) => ['Cool', 'Defrost', 'Off'][(i * i) % 3] ?? '');
    for (const word of words) writer.push(word);
    expect([...writer.finish()]).toEqual(words);
  });

  it('lends its shelf to columns that are made of it', () => {
    const shelf = new Shelf();
    expect(shelfOf(PackedNumbers.from([1, 2], shelf))).toBe(shelf);
    expect(shelfOf([1, 2])).toBeUndefined();
  });
});

describe('a column without some of its rows', () => {
  it('knows nothing of these and all of the others', () => {
    fc.assert(
      fc.property(
        fc.array(values, { maxLength: 30 }),
        fc.array(fc.nat({ max: 29 })),
        fc.nat(),
        (all, rows, at) => {
          const left = all.map((value, i) => (rows.includes(i) ? Number.NaN : value));
          const column = withoutRows(PackedNumbers.from(all), rows);
          expect([...column]).toEqual(left);
          expect(column).toHaveLength(all.length);
          expect([column.at(at), column.at(-1)]).toEqual([left.at(at), left.at(-1)]);
          const into = new Float64Array(7);
          const from = at % (all.length + 1);
          expect([...into.subarray(0, readColumn(column, from, into))]).toEqual(left.slice(from, from + 7));
        },
      ),
    );
  });
});

describe('blocks of several columns', () => {
  it('come together, and a column that is shorter has no values at its end', () => {
    const seen: number[][] = [];
    eachBlock([Float64Array.of(1, 2, 3), [7]], ([a, b], from, count) => {
      for (let i = 0; i < count; i++) seen.push([from + i, a?.[i] ?? 0, b?.[i] ?? 0]);
    });
    expect(seen).toEqual([
      [0, 1, 7],
      [1, 2, Number.NaN],
      [2, 3, Number.NaN],
    ]);
  });
});

describe('a column of texts', () => {
  it('gives back its texts, cut where they are too long, control characters as marks', () => {
    const writer = new TextWriter();
    const texts = ['Cool', 'Cool', '', 'x'.repeat(300), 'bell\u0007'];
    for (const text of texts) writer.push(text);
    writer.set(1, 'Defrost');
    expect(writer.at(1)).toBe('Defrost');
    expect(writer.at(9)).toBe('');
    expect([...writer.finish(Uint32Array.of(4, 3, 1, 0))]).toEqual([
      'bell\ufffd',
      'x'.repeat(200),
      'Defrost',
      'Cool',
    ]);
  });
});
