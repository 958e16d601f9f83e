import { DateOrderEvidence, type OrderVerdict } from '../../time/date-order.js';
import { type DateOrder, readWall } from '../../time/wall-time.js';
import { unwrapped } from '../cells/cell-value.js';
import type { FoundTable } from '../headings/find-table.js';
import type { LogContext } from '../log-context.js';

/** Hands over each row of a whole table, with its times whole; `onRow` returns false to stop. */
export type EveryRow = (onRow: (cells: readonly string[]) => boolean) => Promise<void>;

/**
 * The order of the numbers in the dates of a table: what a map says, the numbers themselves, what a person says, how the
 * rows of the whole file follow each other, the planned times.
 */
export async function weighDateOrder(
  everyRow: EveryRow,
  table: FoundTable,
  { logMap, logDates, near }: LogContext,
): Promise<OrderVerdict> {
  const [column = 0, clock] = table.columns.time;
  if (logMap?.dates !== undefined) return { is: 'order', order: logMap.dates };
  const evidence = new DateOrderEvidence();
  const take = (to: DateOrderEvidence, cells: readonly string[]) =>
    to.add(unwrapped(cells[column] ?? ''), clock === undefined ? undefined : unwrapped(cells[clock] ?? ''));
  for (const row of table.sample) take(evidence, row);
  if (!evidence.settled && logDates !== undefined) return { is: 'order', order: logDates };
  if (evidence.settled) return evidence.verdict();
  const whole = new DateOrderEvidence();
  await everyRow((cells) => {
    take(whole, cells);
    return !whole.settled;
  });
  return whole.verdict(near);
}

/** The earliest and the latest wall time of a table, milliseconds as if the wall clock were UTC. */
export async function wallSpan(
  everyRow: EveryRow,
  table: FoundTable,
  order: DateOrder,
): Promise<{ from: number; to: number } | undefined> {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  const [column = 0, clock] = table.columns.time;
  await everyRow((cells) => {
    const text = `${unwrapped(cells[column] ?? '')} ${clock === undefined ? '' : unwrapped(cells[clock] ?? '')}`;
    const wall = readWall(text.trim(), order)?.wall;
    if (wall !== undefined) {
      from = Math.min(from, wall);
      to = Math.max(to, wall);
    }
    return true;
  });
  return from <= to ? { from, to } : undefined;
}
