/** A column under its heading, in the order of the file. */
interface Column<T> {
  heading: string;
  values: T[];
}

/** One display step of a log that rounds to hundredths: the same reading, converted twice. */
const SAME_KELVIN = 0.011;

/** In what two rows differ; undefined where they agree, or one has what the other left empty. */
export function rowDifference(
  channels: readonly Column<number>[],
  states: readonly Column<string>[],
  index: number,
  kept: number,
): string | undefined {
  for (const { heading, values } of channels) {
    const [first = Number.NaN, second = Number.NaN] = [values[kept], values[index]];
    if (Math.abs(first - second) > SAME_KELVIN)
      return `another value in ${heading}: ${second.toFixed(2)} °C after ${first.toFixed(2)} °C`;
  }
  for (const { heading, values } of states) {
    const [first = '', second = ''] = [values[kept], values[index]];
    if (first !== '' && second !== '' && first !== second)
      return `another text in ${heading}: "${second.slice(0, 40)}" after "${first.slice(0, 40)}"`;
  }
  return undefined;
}

/**
 * Compares a row with an earlier one of the same time. Where they agree, or one has what the other left empty
 * (logs that write temperatures and happenings in rows of their own), the earlier row takes what it lacks.
 * Where they differ nothing is changed.
 */
export function repeatedRow(
  channels: readonly Column<number>[],
  states: readonly Column<string>[],
  index: number,
  kept: number,
): { is: 'repeated' } | { is: 'other'; difference: string } {
  const difference = rowDifference(channels, states, index, kept);
  if (difference !== undefined) return { is: 'other', difference };
  for (const { values } of channels)
    if (Number.isNaN(values[kept])) values[kept] = values[index] ?? Number.NaN;
  for (const { values } of states) values[kept] ||= values[index] ?? '';
  return { is: 'repeated' };
}
