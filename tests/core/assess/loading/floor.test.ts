import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  floorUsed,
  palletsThatFit,
  placeRows,
  type RowToPlace,
  rowWidth,
} from '../../../../src/core/assess/loading/floor.js';
import { formatRows } from '../../../../src/core/assess/loading/format-rows.js';
import type { RowPattern } from '../../../../src/core/model/evidence.js';

const IN = 0.0254;
const GROCERY = { short: 40 * IN, long: 48 * IN };
const PRODUCE = { short: 42 * IN, long: 48 * IN };

describe('side room of a row, left and right together', () => {
  // Plane geometry of the footprints; that these are the footprints and widths of the trade is common practice, no source.
  it.each([
    { sides: GROCERY, pattern: 'straight', wide: 98.5, room: 18.5 },
    { sides: GROCERY, pattern: 'pinwheel', wide: 98.5, room: 10.5 },
    { sides: GROCERY, pattern: 'turned', wide: 98.5, room: 2.5 },
    { sides: GROCERY, pattern: 'straight', wide: 100, room: 20 },
    { sides: PRODUCE, pattern: 'straight', wide: 98.5, room: 14.5 },
    { sides: PRODUCE, pattern: 'pinwheel', wide: 98.5, room: 8.5 },
    { sides: PRODUCE, pattern: 'turned', wide: 98.5, room: 2.5 },
    { sides: PRODUCE, pattern: 'pinwheel', wide: 100, room: 10 },
  ] as const)('$pattern in $wide in leaves $room in', ({ sides, pattern, wide, room }) => {
    expect((wide * IN - rowWidth(pattern, sides)) / IN).toBeCloseTo(room, 9);
  });
});

describe('how many pallets of 40 × 48 in a floor of 630 in holds', () => {
  // Geometry; the usable length of a 53 ft trailer is common practice, no source.
  it.each([
    { pattern: 'straight', pallets: 26 },
    { pattern: 'pinwheel', pallets: 28 },
    { pattern: 'turned', pallets: 30 },
  ] as const)('$pattern: $pallets', ({ pattern, pallets }) => {
    expect(palletsThatFit(pattern, GROCERY, { length: 630 * IN, width: 98.5 * IN })).toBe(pallets);
  });

  it('none, where the row is wider than the trailer', () => {
    expect(palletsThatFit('turned', GROCERY, { length: 630 * IN, width: 95 * IN })).toBe(0);
  });
});

const patterns = ['straight', 'turned', 'pinwheel', 'single'] as const;
const anyRows = fc
  .array(
    fc.record({
      pattern: fc.constantFrom<RowPattern>(...patterns),
      sides: fc.constantFrom(GROCERY, PRODUCE, { short: 0.8, long: 1.2 }),
    }),
    { minLength: 1, maxLength: 16 },
  )
  .map((rows): RowToPlace[] => rows.map((row, i) => ({ row: i + 1, ...row })));
const anyWidth = fc.double({ min: 2.4, max: 2.6, noNaN: true });

describe('places on the floor', () => {
  it('no pallet lies on another, and none is ahead of the bulkhead', () => {
    fc.assert(
      fc.property(anyRows, anyWidth, (rows, width) => {
        const placed = placeRows(rows, width);
        placed.forEach((a, i) => {
          expect(a.y).toBeGreaterThanOrEqual(0);
          for (const b of placed.slice(i + 1)) {
            const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
            const along = Math.min(a.y + a.length, b.y + b.length) - Math.max(a.y, b.y);
            expect(Math.min(across, along)).toBeLessThan(1e-6);
          }
        });
      }),
    );
  });

  it('every row has as much room on the left as on the right', () => {
    fc.assert(
      fc.property(anyRows, anyWidth, (rows, width) => {
        const placed = placeRows(rows, width);
        for (const { row } of rows) {
          const here = placed.filter((one) => one.row === row);
          const left = Math.min(...here.map((one) => one.x));
          const right = width - Math.max(...here.map((one) => one.x + one.width));
          expect(left).toBeCloseTo(right, 9);
        }
      }),
    );
  });

  it('rows all alike take the sum of their lengths', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('straight', 'turned', 'single'),
        fc.integer({ min: 1, max: 20 }),
        (pattern, n) => {
          const rows = Array.from({ length: n }, (_, i) => ({ row: i + 1, pattern, sides: GROCERY }));
          const one = pattern === 'turned' ? GROCERY.short : GROCERY.long;
          expect(floorUsed(placeRows(rows, 2.5))).toBeCloseTo(n * one, 9);
        },
      ),
    );
  });

  it('two pinwheel rows take one long and one short side on either hand', () => {
    const rows = [1, 2].map((row) => ({ row, pattern: 'pinwheel' as const, sides: GROCERY }));
    const placed = placeRows(rows, 2.5);
    expect(floorUsed(placed)).toBeCloseTo(88 * IN, 9);
    expect(placed.map(({ side, turned }) => `${side} ${turned}`)).toEqual([
      'left false',
      'right true',
      'left true',
      'right false',
    ]);
  });

  it('the order in which rows are given does not matter', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        expect(placeRows([...rows].reverse(), 2.5)).toEqual(placeRows(rows, 2.5));
      }),
    );
  });
});

describe('row numbers as a person writes them', () => {
  it.each([
    [[1, 2, 3], '1–3'],
    [[9, 1, 2], '1–2, 9'],
    [[4], '4'],
    [[], ''],
  ] as const)('%j: %s', (rows, said) => {
    expect(formatRows(rows)).toBe(said);
  });
});
