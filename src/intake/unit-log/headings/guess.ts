import type { ColumnValues } from './column-values.js';
import { areDates, canBeTemperatures } from './column-values.js';
import type { HeadingReading } from './meaning.js';
import { type Meaning, PROBES } from './words.js';

/** The column that each meaning is given to, and how well its heading says it. */
export type Taken = Map<Meaning, { column: number; strength: number }>;

type ProbeColumn = HeadingReading & { column: number };

/**
 * Gives each meaning the column whose heading says it best and whose cells can be it. `said` is what the headings mean,
 * undefined for a column that is not to be guessed; `values` looks at the cells.
 */
export function guessColumns(
  said: readonly (HeadingReading | undefined)[],
  values: (column: number) => ColumnValues,
  free: (column: number) => boolean,
): Taken {
  const taken: Taken = new Map();
  const probes: ProbeColumn[] = [];
  const plainTemperature = said.some((m) => m?.means === 'probe' && m.weak && m.ofTemperature);
  said.forEach((meaning, column) => {
    if (meaning === undefined || isStatisticBeside(meaning, said)) return;
    const rival = taken.get(meaning.means === 'probe' ? 'probe' : meaning.means);
    // Of two zones, or two sensors, the first counts; the other is told as not read.
    const strength = meaning.strength - (meaning.number ?? 0) / 100;
    if (meaning.means !== 'probe' && rival !== undefined && strength <= rival.strength) return;
    if (isChannel(meaning) && !isMeasured(meaning, values(column), plainTemperature)) return;
    if (meaning.means === 'probe') probes.push({ ...meaning, column });
    else taken.set(meaning.means, { column, strength });
  });
  // `Temperature` alone is a recorder's only column; beside named air it could be anything.
  const strong = probes.filter((p) => !p.weak);
  const named = strong.length > 0 || taken.has('return-air') || taken.has('supply-air');
  placeProbes(onceEach(named ? strong : best(probes)), taken);
  if (!taken.has('time') && !taken.has('date')) byDates(said, values, free, taken);
  return taken;
}

/** Beside a column that is called a temperature, `Value` and `Channel` are of something else, and so is a bare T. */
function best(probes: readonly ProbeColumn[]): readonly ProbeColumn[] {
  const temperatures = probes.filter((p) => p.ofTemperature || p.number !== undefined);
  if (temperatures.some((p) => p.ofTemperature)) return temperatures;
  const plain = probes.filter((p) => p.symbol !== true);
  return plain.length > 0 ? plain : probes;
}

function isChannel({ means }: HeadingReading): boolean {
  return ['set-point', 'return-air', 'supply-air', 'ambient', 'probe'].includes(means);
}

/**
 * Minimum, maximum and spread are no reading of a moment; a mean is one where the plain value has no column.
 */
function isStatisticBeside(meaning: HeadingReading, said: readonly (HeadingReading | undefined)[]): boolean {
  if (meaning.statistic !== 'mean') return meaning.statistic !== undefined;
  return said.some(
    (other) => other !== undefined && other.statistic === undefined && other.plain === meaning.plain,
  );
}

/**
 * Whether a column's cells can be temperatures. `Sensor` over whole numbers, beside a column that is headed as
 * temperature and nothing more, is the number of the sensor.
 */
function isMeasured(meaning: HeadingReading, values: ColumnValues, plainTemperature: boolean): boolean {
  if (!canBeTemperatures(values)) return false;
  // What is counted, or is a time, has no decimals.
  if (meaning.symbol === true) return values.filled === 0 || values.numbers > values.integers;
  const names = meaning.means === 'probe' && !meaning.weak && !meaning.ofTemperature;
  if (!names || meaning.number !== undefined || !plainTemperature) return true;
  return values.filled === 0 || values.integers < values.filled;
}

/** One column of each instrument: what it writes in °C and in °F is one reading. */
function onceEach(probes: readonly ProbeColumn[]): ProbeColumn[] {
  return probes.filter(
    (p, i) =>
      !probes
        .slice(0, i)
        .some(
          (q) => q.plain === p.plain && p.unit !== undefined && q.unit !== undefined && q.unit !== p.unit,
        ),
  );
}

/** Probe 2 is `probe-2`; those without a number, or whose number is taken, take the next that is free. */
function placeProbes(probes: readonly ProbeColumn[], taken: Taken): void {
  const later: number[] = [];
  for (const { column, number } of probes) {
    const own = number === undefined ? undefined : PROBES[number - 1];
    if (own === undefined || taken.has(own)) later.push(column);
    else taken.set(own, { column, strength: 1 });
  }
  for (const column of later) {
    const free = PROBES.find((name) => !taken.has(name));
    if (free !== undefined) taken.set(free, { column, strength: 1 });
  }
}

function isTime(values: ColumnValues): boolean {
  return areDates(values) || (values.filled > 0 && values.counted === values.filled);
}

/** Where no heading says time, the one column of dates, or of counts since 1970, is it. */
function byDates(
  said: readonly (HeadingReading | undefined)[],
  values: (column: number) => ColumnValues,
  free: (column: number) => boolean,
  taken: Taken,
): void {
  // A table without temperatures is no log.
  if (taken.size === 0) return;
  const dates = said.flatMap((_, column) => (free(column) && isTime(values(column)) ? [column] : []));
  const [only, other] = dates;
  if (only === undefined || other !== undefined) return;
  // A column of times of day beside it is the clock.
  const clock = taken.get('clock');
  if (clock !== undefined && values(only).clocks === 0 && clock.column !== only)
    taken.set('date', { column: only, strength: 0.4 });
  else taken.set('time', { column: only, strength: 0.4 });
}
