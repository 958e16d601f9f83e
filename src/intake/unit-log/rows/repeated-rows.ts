import type { NumberWriter } from '../../../core/model/columns/packed-numbers.js';
import type { TextWriter } from '../../../core/model/columns/text-column.js';

interface ValuesOf {
  heading: string;
  values: NumberWriter;
}
interface TextsOf {
  heading: string;
  values: TextWriter;
}

/** One display step of a log that rounds to hundredths: the same reading, converted twice. */
const SAME_KELVIN = 0.011;

/**
 * Holds a row against an earlier one of the same time. Where they agree, or one has what the other left empty
 * (logs that write temperatures and happenings in rows of their own), the earlier row takes what it lacks.
 * Where they differ nothing is changed.
 */
export function repeatedRow(
  channels: readonly ValuesOf[],
  states: readonly TextsOf[],
  index: number,
  kept: number,
): { is: 'repeated' } | { is: 'other'; difference: string } {
  for (const { heading, values } of channels) {
    const [first, second] = [values.at(kept), values.at(index)];
    if (Math.abs(first - second) > SAME_KELVIN)
      return {
        is: 'other',
        difference: `another value in ${heading}: ${second.toFixed(2)} °C after ${first.toFixed(2)} °C`,
      };
  }
  for (const { heading, values } of states) {
    const [first, second] = [values.at(kept), values.at(index)];
    if (first !== '' && second !== '' && first !== second)
      return {
        is: 'other',
        difference: `another text in ${heading}: "${second.slice(0, 40)}" after "${first.slice(0, 40)}"`,
      };
  }
  for (const { values } of channels) if (Number.isNaN(values.at(kept))) values.set(kept, values.at(index));
  for (const { values } of states) if (values.at(kept) === '') values.set(kept, values.at(index));
  return { is: 'repeated' };
}
