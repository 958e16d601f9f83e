import { DossierError } from '../../model/error.js';
import type { EvidenceId, LogMapping } from '../../model/evidence.js';
import { HIGHEST_CELSIUS, LOWEST_CELSIUS, toCelsius } from '../../model/temperature.js';
import type { RowProblem, UnitLog } from '../../model/unit-log.js';
import type { ByteSource } from '../table/bytes.js';
import { eachRow } from '../table/rows.js';
import { GrowingNumbers, GrowingTexts } from './growing.js';
import { readNumber, readWithUnit } from './numbers.js';
import { type FoldedRow, resolveFolds, sortedOnce } from './order-rows.js';
import { RowTimes } from './row-times.js';
import { FAULT_WORDS } from './words.js';

export interface LogReadOptions {
  evidence: EvidenceId;
  /** Seconds to add to the log's clock, from a measured comparison. */
  addedSeconds: number;
}

/** A unit log, and how many rows could not be placed in time or stood twice. */
export interface ReadLog extends UnitLog {
  rowsLeftOut: number;
  /** Cells that the unit itself marked as a sensor fault; they are among the problems. */
  faultCount: number;
}

const MOST_ROWS = 5_000_000;
const KEPT_PROBLEMS = 1_000;

/**
 * Reads a log as its mapping says: times to UTC, temperatures to °C, rows sorted by time. Streams, with
 * memory for the columns alone. A value that is missing is NaN; so is one that is a fault mark, a text or
 * impossible, which is also a row problem. A row without a readable time, in the hour that daylight saving
 * skips, or with the time of an earlier row is left out, and a row problem. Throws DossierError only when
 * reading cannot go on (too many rows, an endless line, an unreadable file).
 */
export async function readUnitLog(
  source: ByteSource,
  mapping: LogMapping,
  { evidence, addedSeconds }: LogReadOptions,
): Promise<ReadLog> {
  const problems: RowProblem[] = [];
  let problemCount = 0;
  let faultCount = 0;
  const problem = (row: number, is: RowProblem['is'], detail: string): void => {
    problemCount += 1;
    if (is === 'sensor-fault') faultCount += 1;
    if (problems.length < KEPT_PROBLEMS) problems.push({ row, is, detail });
  };

  const times = new GrowingNumbers();
  const rows = new GrowingNumbers();
  const folded: FoldedRow[] = [];
  const channels = mapping.channels.map((c) => ({ ...c, values: new GrowingNumbers() }));
  const states = mapping.states.map((s) => ({ ...s, values: new GrowingTexts() }));
  const rowTimes = new RowTimes(mapping.time);
  const [first = 0, second] = mapping.time.columns;
  let leftOut = 0;

  await eachRow(source, mapping, (cells, line) => {
    if (line <= mapping.headerRow) return true;
    if (times.length >= MOST_ROWS)
      throw new DossierError('file-too-large', `more than ${MOST_ROWS} rows`, { where: { row: line } });
    const time = rowTimes.read(cells[first] ?? '', second === undefined ? undefined : (cells[second] ?? ''));
    if (typeof time !== 'number') {
      if (time.is !== 'twice') {
        leftOut += 1;
        problem(line, time.is, time.detail);
        return true;
      }
      folded.push({ index: times.length, earlier: time.earlier, later: time.later });
      times.push(time.earlier);
    } else times.push(time);
    rows.push(line);
    for (const c of channels) {
      const text = cells[c.column] ?? '';
      const value = readNumber(text, mapping.decimal);
      const celsius = toCelsius(value, c.unit);
      if (celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS) c.values.push(celsius);
      else
        c.values.push(
          oddValue(text, value, mapping.decimal, (is, detail) =>
            problem(line, is, `${c.heading}: ${detail}`),
          ),
        );
    }
    for (const s of states) s.values.push((cells[s.column] ?? '').trim());
    return true;
  });

  for (const { index, which } of resolveFolds(times, folded))
    problem(
      rows.at(index),
      'time-in-fold',
      `this wall time happened twice; read as the ${which} by its neighbours`,
    );
  const { order, repeated } = sortedOnce(times);
  for (const index of repeated) problem(rows.at(index), 'duplicate', 'the time of an earlier row');
  leftOut += repeated.length;

  const picked = times.pick(order);
  if (addedSeconds !== 0)
    for (let i = 0; i < picked.length; i++) picked[i] = (picked[i] ?? 0) + addedSeconds * 1000;
  return {
    evidence,
    zone: mapping.time.zone,
    times: picked,
    channels: Object.fromEntries(channels.map((c) => [c.channel, c.values.pick(order)])),
    states: Object.fromEntries(states.map((s) => [s.state, s.values.pick(order)])),
    rows: Uint32Array.from(rows.pick(order)),
    problems: problems.sort((a, b) => a.row - b.row),
    problemCount,
    addedSeconds,
    rowsLeftOut: leftOut,
    faultCount,
  };
}

/** What a cell that is not a plain possible temperature gives: °C or NaN. */
function oddValue(
  text: string,
  value: number,
  decimal: LogMapping['decimal'],
  problem: (is: RowProblem['is'], detail: string) => void,
): number {
  const shown = text.trim();
  if (shown === '') return Number.NaN;
  const withUnit = readWithUnit(shown, decimal);
  if (withUnit !== undefined) {
    const celsius = toCelsius(withUnit.value, withUnit.unit);
    if (celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS) return celsius;
  }
  if (FAULT_WORDS.has(shown.toLowerCase())) problem('sensor-fault', `marked ${shown}`);
  else if (withUnit !== undefined || !Number.isNaN(value))
    problem('impossible-value', `${shown.slice(0, 40)} is not a temperature that air or produce can have`);
  else problem('impossible-value', `"${shown.slice(0, 40)}" is not a number`);
  return Number.NaN;
}
