import type { RowPattern } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { PlacedPallet } from '../../model/results.js';

/** A pallet's two sides in metres. */
export interface PalletSides {
  short: number;
  long: number;
}

/** A row before it is placed on the floor. */
export interface RowToPlace {
  row: number;
  pattern: RowPattern;
  sides: PalletSides;
  line?: string;
  /** Distance of the bulkhead in front of its compartment from the front wall, m. */
  behind?: number;
}

/** Lengths in inches that meet exactly on paper differ in binary by less than this. Metres. */
const NOTHING = 1e-9;

/**
 * Width of a row's pallets side by side, metres. Straight: both short sides across; turned: both long sides;
 * pinwheel: one of each; single: one short side.
 */
export function rowWidth(pattern: RowPattern, { short, long }: PalletSides): number {
  switch (pattern) {
    case 'straight':
      return 2 * short;
    case 'turned':
      return 2 * long;
    case 'pinwheel':
      return short + long;
    case 'single':
      return short;
  }
}

/**
 * Places rows on the floor from the nose, in the order of their numbers: each row centred, each pallet pushed
 * forward until it meets the front wall (y = 0), the bulkhead of its compartment or another pallet. Successive pinwheel rows alternate between turning
 * the left and the right pallet. A pattern does not say whether the row is centred; side clearance is therefore
 * given for both sides together.
 * @param width inside width in metres; wider rows stick out on both sides, so that the drawing shows it
 */
export function placeRows(rows: readonly RowToPlace[], width: number): PlacedPallet[] {
  const placed: PlacedPallet[] = [];
  let turnLeft = false;
  let before: RowToPlace | undefined;
  for (const row of [...rows].sort((a, b) => a.row - b.row)) {
    turnLeft = row.pattern === 'pinwheel' && before?.pattern === 'pinwheel' ? !turnLeft : false;
    before = row;
    let x = (width - rowWidth(row.pattern, row.sides)) / 2;
    const put: PlacedPallet[] = [];
    for (const { side, turned } of palletsOf(row.pattern, turnLeft)) {
      const [across, along] = turned ? [row.sides.long, row.sides.short] : [row.sides.short, row.sides.long];
      put.push({
        row: row.row,
        side,
        turned,
        ...omitUndefined({ line: row.line }),
        x,
        y: Math.max(row.behind ?? 0, frontOf(placed, x, x + across)),
        width: across,
        length: along,
      });
      x += across;
    }
    placed.push(...put);
  }
  return placed;
}

type Stance = Pick<PlacedPallet, 'side' | 'turned'>;

function palletsOf(pattern: RowPattern, turnLeft: boolean): Stance[] {
  switch (pattern) {
    case 'single':
      return [{ side: 'middle', turned: false }];
    case 'straight':
    case 'turned':
      return (['left', 'right'] as const).map((side) => ({ side, turned: pattern === 'turned' }));
    case 'pinwheel':
      return [
        { side: 'left', turned: turnLeft },
        { side: 'right', turned: !turnLeft },
      ];
  }
}

/** Rearmost face of placed pallets between two distances from the left wall. */
function frontOf(placed: readonly PlacedPallet[], from: number, to: number): number {
  return placed
    .filter((one) => one.x < to - NOTHING && one.x + one.width > from + NOTHING)
    .reduce((rear, one) => Math.max(rear, one.y + one.length), 0);
}

/** Distance from the bulkhead to the rear face of the last pallet, metres. */
export const floorUsed = (pallets: readonly PlacedPallet[]): number =>
  pallets.reduce((rear, one) => Math.max(rear, one.y + one.length), 0);

/** Pallets of one footprint that fit on a floor in one pattern. Metres. */
export function palletsThatFit(
  pattern: 'straight' | 'pinwheel' | 'turned',
  sides: PalletSides,
  floor: { length: number; width: number },
): number {
  if (rowWidth(pattern, sides) > floor.width + NOTHING) return 0;
  let rows = 0;
  while (rows < MOST_ROWS) {
    const more = Array.from({ length: rows + 1 }, (_, i) => ({ row: i + 1, pattern, sides }));
    if (floorUsed(placeRows(more, floor.width)) > floor.length + NOTHING) break;
    rows += 1;
  }
  return rows * 2;
}

/** More rows than any trailer holds: a bound for floors and pallets mistyped by a factor. */
const MOST_ROWS = 60;
