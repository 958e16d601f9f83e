import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { EVIDENCE } from './where.js';

/**
 * The demonstration's figures once more, straight from its two tables, in °F and by other means than the
 * code under test: plain text splitting, an offset written down by hand, and sums over seconds.
 * Nothing of src/ is imported here, on purpose.
 */
/** Arizona keeps UTC−7 all year; Nebraska is at UTC−5 in July. */
const OFFSET: Record<string, string> = { 'load-1': '-07:00', 'drop-1': '-05:00' };
/** The bill: 36 °F, 2 °F either way. */
export const LOW = 34;
export const HIGH = 38;

/** A line of CSV, with quoted cells. */
function cells(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, bare]) =>
    quoted === undefined ? (bare ?? '') : quoted.replaceAll('""', '"'),
  );
}

const lines = (path: string) => readFileSync(join(EVIDENCE, path), 'utf8').trimEnd().split(/\r?\n/);

export interface Note {
  at: number;
  kind: string;
  value: string;
  line: string;
  stop: string;
  position: string;
  from: string;
}
const [, ...noteLines] = lines('notes/readings.csv');
export const notes: Note[] = noteLines.map((text) => {
  const [time = '', kind = '', value = '', , line = '', position = '', stop = '', , , from = ''] =
    cells(text);
  const zoned = /[+-]\d\d:\d\d$/.test(time) ? time : `${time}${OFFSET[stop]}`;
  return { at: Date.parse(zoned), kind, value, line, stop, position, from };
});

function eventAt(value: string, stop: string): number {
  const found = notes.find((note) => note.kind === 'event' && note.value === value && note.stop === stop);
  if (found === undefined) throw new Error(`no ${value} at ${stop}`);
  return found.at;
}
export const custody = { from: eventAt('doors-closed', 'load-1'), to: eventAt('doors-opened', 'drop-1') };
export const refusedAt = eventAt('refused', 'drop-1');

export type Sample = [at: number, fahrenheit: number];
const logLines = lines('unit/unit-download.csv');
const header = logLines.findIndex((text) => text.startsWith('Date time,'));
const headings = cells(logLines[header] ?? '');
const rows = logLines.slice(header + 1).map(cells);

/** A column of the log, without the rows that a sensor fault marks. */
export function channel(heading: string): Sample[] {
  const column = headings.indexOf(heading);
  return rows
    .map((row): Sample => [Date.parse(`${row[0]?.replace(' ', 'T')}:00-07:00`), Number(row[column])])
    .filter(([, value]) => !Number.isNaN(value));
}

/** The value at a moment, on the straight line between the samples around it; undefined outside of them. */
function valueAt(samples: readonly Sample[], at: number): number | undefined {
  const i = samples.findIndex(([t]) => t >= at);
  const [after, before] = [samples[i], samples[i - 1]];
  if (after === undefined) return undefined;
  if (after[0] === at) return after[1];
  if (before === undefined) return undefined;
  return before[1] + ((after[1] - before[1]) * (at - before[0])) / (after[0] - before[0]);
}

export interface Summary {
  mean: number;
  min: number;
  max: number;
  /** Hours. */
  known: number;
  within: number;
  above: number;
  below: number;
  /** °F·h outside of the band. */
  degreesAbove: number;
  degreesBelow: number;
}

/** Sums over the middles of one-second steps: no crossing is solved, no line integrated. */
export function summary(samples: readonly Sample[]): Summary {
  const step = 1_000;
  const h = step / 3_600_000;
  const ends = [valueAt(samples, custody.from), valueAt(samples, custody.to)].filter((v) => v !== undefined);
  const inside = samples.filter(([at]) => at >= custody.from && at <= custody.to).map(([, value]) => value);
  const sum: Summary = {
    mean: 0,
    min: Math.min(...inside, ...ends),
    max: Math.max(...inside, ...ends),
    known: 0,
    within: 0,
    above: 0,
    below: 0,
    degreesAbove: 0,
    degreesBelow: 0,
  };
  let from = 0;
  for (let at = custody.from + step / 2; at < custody.to; at += step) {
    // Samples before this one are behind us; the search starts where it ended.
    while ((samples[from + 1]?.[0] ?? Number.POSITIVE_INFINITY) < at) from += 1;
    const value = valueAt(samples.slice(from, from + 2), at);
    if (value === undefined) continue;
    sum.known += h;
    sum.mean += value * h;
    if (value > HIGH) sum.above += h;
    else if (value < LOW) sum.below += h;
    else sum.within += h;
    sum.degreesAbove += Math.max(0, value - HIGH) * h;
    sum.degreesBelow += Math.max(0, LOW - value) * h;
  }
  sum.mean /= sum.known;
  return sum;
}

export interface Rise {
  from: number;
  to: number;
  peak: number;
  peakAt: number;
  degreeHours: number;
}

/** Times above the band within custody, each end where the line between two samples meets 38 °F. */
export function rises(samples: readonly Sample[]): Rise[] {
  const start = valueAt(samples, custody.from) ?? Number.NaN;
  const end = valueAt(samples, custody.to) ?? Number.NaN;
  const points: Sample[] = [
    [custody.from, start],
    ...samples.filter(([at]) => at > custody.from && at < custody.to),
    [custody.to, end],
  ];
  const found: Rise[] = [];
  let open: Sample[] = [];
  const meets = ([t0, v0]: Sample, [t1, v1]: Sample): Sample => [
    t0 + ((HIGH - v0) / (v1 - v0)) * (t1 - t0),
    HIGH,
  ];
  const close = () => {
    const [first, last] = [open[0], open.at(-1)];
    if (first === undefined || last === undefined) return;
    const top = open.reduce((a, b) => (b[1] > a[1] ? b : a));
    const area = open
      .slice(1)
      .map(
        ([t, v], i) =>
          ((t - (open[i]?.[0] ?? t)) * (v - HIGH + ((open[i]?.[1] ?? v) - HIGH))) / 2 / 3_600_000,
      );
    found.push({
      from: first[0],
      to: last[0],
      peak: top[1],
      peakAt: top[0],
      degreeHours: area.reduce((a, b) => a + b, 0),
    });
    open = [];
  };
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before !== undefined && before[1] <= HIGH && point[1] > HIGH) open = [meets(before, point)];
    if (before !== undefined && before[1] > HIGH && point[1] <= HIGH) {
      open.push(meets(before, point));
      close();
    }
    if (point[1] > HIGH) open.push(point);
  });
  close();
  return found;
}

export interface Pulps {
  line: string;
  stop: string;
  values: number[];
  mean: number;
  within: number;
}
/** Pulps by line and stop. */
export function pulps(): Pulps[] {
  const groups = new Map<string, Note[]>();
  for (const note of notes)
    if (note.kind === 'pulp')
      groups.set(`${note.line} ${note.stop}`, [...(groups.get(`${note.line} ${note.stop}`) ?? []), note]);
  return [...groups.values()].map((group) => {
    const values = group.map((note) => Number(note.value));
    return {
      line: group[0]?.line ?? '',
      stop: group[0]?.stop ?? '',
      values,
      mean: values.reduce((a, b) => a + b, 0) / values.length,
      within: values.filter((value) => value >= LOW && value <= HIGH).length,
    };
  });
}
