import type { Delivery, Line } from '../../model/delivery.js';
import { type Footprint, type Length, metres } from '../../model/length.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { FloorCompartment, LoadPlan, LoadRow, PlacedPallet } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { compartmentOf } from '../compartment-of.js';
import {
  floorUsed,
  type PalletSides,
  palletsThatFit,
  placeRows,
  type RowToPlace,
  rowWidth,
} from './floor.js';

/** Footprint of a grocery pallet, where a line states none: 40 × 48 in. Common practice, no source. */
export const USUAL_FOOTPRINT: Footprint = {
  short: { value: 40, unit: 'in' },
  long: { value: 48, unit: 'in' },
};
/** Inside width for the drawing only, where none is stated: no number is computed from it. */
const DRAWN_WIDTH: Length = { value: 99, unit: 'in' };

const sidesOf = ({ short, long }: Footprint): PalletSides => ({ short: metres(short), long: metres(long) });
const footprintOf = (line: Line | undefined): PalletSides => sidesOf(line?.pallet ?? USUAL_FOOTPRINT);

/**
 * The load plan from the recorded rows: places, side clearance, length used, other clearances, and how many pallets
 * the floor would hold. Undefined without recorded rows. Lengths in metres.
 */
export function loadPlan(state: RecordState): LoadPlan | undefined {
  const { delivery } = state;
  const noted = notedRows(state);
  if (noted.length === 0) return undefined;
  const { trailer } = delivery.equipment;
  const width = trailer.insideWidth === undefined ? undefined : metres(trailer.insideWidth);
  const length = lengthOf(delivery);
  const floors = floorsOf(delivery, length?.metres);
  const toPlace = noted.map(({ row, item }): RowToPlace => {
    const line = lineOf(item, delivery);
    return {
      row,
      pattern: item.pattern,
      sides: footprintOf(line),
      ...omitUndefined({ line: line?.id, behind: floors.find(isOf(compartmentOf(item, delivery)))?.from }),
    };
  });
  const unknownRows = missingRows(noted.map(({ row }) => row));
  const pallets = placeAll(toPlace, unknownRows, width ?? metres(DRAWN_WIDTH));
  const used = unknownRows.length > 0 ? undefined : floorUsed(pallets);
  const rows = noted.map(({ row, item }, i) => ({
    ...rowOf(row, item, toPlace[i], width),
    ...omitUndefined({ compartment: compartmentOf(item, delivery) }),
  }));
  const onBoard = delivery.lines.filter((line) => toPlace.some((row) => row.line === line.id));
  const counts = delivery.lines.map((line) => line.pallets);
  return {
    rows,
    pallets,
    ...omitUndefined({
      palletsOnBill: counts.every((count) => count !== undefined)
        ? counts.reduce((sum, count) => sum + count, 0)
        : undefined,
      insideWidth: width,
      insideLength: length?.metres,
      lengthFrom: length?.from,
      floorUsed: used,
      rearGap: used === undefined || length === undefined ? undefined : length.metres - used,
    }),
    assumedFootprint: onBoard.filter((line) => line.pallet === undefined).map((line) => line.id),
    ceilings: ceilingsOf(delivery),
    fits:
      width === undefined || length === undefined
        ? []
        : (['straight', 'pinwheel', 'turned'] as const).map((pattern) => ({
            pattern,
            pallets: palletsThatFit(pattern, footprintOf(onBoard[0]), { length: length.metres, width }),
          })),
    unknownRows,
    ...omitUndefined({ compartments: floors.length === 0 ? undefined : withUse(floors, rows, pallets) }),
  };
}

/** Unrecorded rows keep the floor of a straight row free, so that later rows are drawn in their places. */
function placeAll(toPlace: readonly RowToPlace[], unknown: readonly number[], width: number): PlacedPallet[] {
  const empty = unknown.map(
    (row): RowToPlace => ({ row, pattern: 'straight', sides: sidesOf(USUAL_FOOTPRINT) }),
  );
  return placeRows([...toPlace, ...empty], width).filter((one) => !unknown.includes(one.row));
}

interface NotedRow {
  row: number;
  item: ItemOf<'pattern'>;
}

/** The reading that holds for each row: the last in the ledger, without readings at unloading. */
function notedRows(state: RecordState): NotedRow[] {
  const unloading = new Set(
    state.delivery.stops.filter((stop) => stop.does === 'unload').map(({ id }) => id),
  );
  const rows = new Map<number, ItemOf<'pattern'>>();
  for (const item of state.evidence) {
    if (item.kind !== 'pattern' || unloading.has(item.place?.stop ?? '')) continue;
    for (let row = item.rows.from; row <= item.rows.to; row += 1) rows.set(row, item);
  }
  return [...rows].map(([row, item]) => ({ row, item })).sort((a, b) => a.row - b.row);
}

function lineOf(item: ItemOf<'pattern'>, { lines }: Delivery): Line | undefined {
  const named = lines.find((line) => line.id === item.line);
  if (named !== undefined) return named;
  const { compartment } = item.place ?? {};
  const possible = lines.filter((line) => compartment === undefined || line.compartment === compartment);
  return possible.length === 1 ? possible[0] : undefined;
}

const isOf = (compartment: string | undefined) => (one: FloorCompartment) => one.compartment === compartment;

/** The floors of compartments up to the first whose bulkhead is not stated. */
function floorsOf({ equipment }: Delivery, length: number | undefined): FloorCompartment[] {
  const floors: FloorCompartment[] = [];
  let from = 0;
  const all = equipment.trailer.compartments ?? [];
  for (const [i, { id, bulkhead }] of all.entries()) {
    const to = i === all.length - 1 ? length : bulkhead && metres(bulkhead);
    floors.push({ compartment: id, from, ...omitUndefined({ to }) });
    if (to === undefined) break;
    from = to;
  }
  return floors;
}

function withUse(
  floors: readonly FloorCompartment[],
  rows: readonly LoadRow[],
  pallets: readonly PlacedPallet[],
): FloorCompartment[] {
  return floors.map((floor) => {
    const own = new Set(rows.filter(isOfFloor(floor)).map(({ row }) => row));
    const here = pallets.filter(({ row }) => own.has(row));
    return { ...floor, ...omitUndefined({ used: here.length === 0 ? undefined : floorUsed(here) }) };
  });
}

const isOfFloor =
  ({ compartment }: FloorCompartment) =>
  (row: LoadRow) =>
    row.compartment === compartment;

function lengthOf({ equipment: { trailer } }: Delivery) {
  if (trailer.insideLength !== undefined)
    return { metres: metres(trailer.insideLength), from: 'inside' as const };
  return trailer.length === undefined
    ? undefined
    : { metres: metres(trailer.length), from: 'outside' as const };
}

function rowOf(
  row: number,
  item: ItemOf<'pattern'>,
  placed: RowToPlace | undefined,
  width: number | undefined,
): LoadRow {
  const across = rowWidth(item.pattern, placed?.sides ?? sidesOf(USUAL_FOOTPRINT));
  return {
    row,
    pattern: item.pattern,
    ...omitUndefined({ line: placed?.line }),
    evidence: item.evidence,
    across,
    ...omitUndefined({ sideRoom: width === undefined ? undefined : width - across }),
    blocks: item.blocks,
  };
}

function ceilingsOf({ lines, equipment }: Delivery): LoadPlan['ceilings'] {
  const { insideHeight } = equipment.trailer;
  return lines.flatMap((line) => {
    if (line.stackHeight === undefined) return [];
    const stack = metres(line.stackHeight);
    const clearance = omitUndefined({ clearance: insideHeight && metres(insideHeight) - stack });
    return [{ line: line.id, stack, ...clearance }];
  });
}

function missingRows(rows: readonly number[]): number[] {
  const known = new Set(rows);
  const last = rows.at(-1) ?? 0;
  return Array.from({ length: last }, (_, i) => i + 1).filter((row) => !known.has(row));
}
