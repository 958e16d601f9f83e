import {
  type Acceleration,
  type AccelerationUnit,
  inGravities,
  parseAcceleration,
} from '../../core/model/acceleration.js';
import type { Place, ReadingBody, ShockEvent } from '../../core/model/evidence.js';
import { parseMilliseconds } from '../../core/model/milliseconds.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { axisIn, type ShockColumns } from './headings.js';

/** What holds for every row of a table. */
export interface ShockRowContext {
  columns: ShockColumns;
  unit: AccelerationUnit | undefined;
  threshold: Acceleration | undefined;
  instrument: string | undefined;
  place: Place | undefined;
}

type Shock = Omit<Extract<ReadingBody, { kind: 'shock' }>, 'time'>;

/** The shock of a row, or why there is none. */
export function shockOf(cells: readonly string[], context: ShockRowContext): Shock | string {
  const { columns, unit, instrument, place } = context;
  const event = columns.event === undefined ? undefined : eventIn(cells[columns.event] ?? '');
  const peaks = columns.peaks.flatMap((one) => {
    const peak = accelerationIn(cells[one.column] ?? '', one.unit ?? unit);
    return peak === undefined ? [] : [{ ...one, peak }];
  });
  const [first, ...others] = peaks;
  const strongest =
    peaks.find(({ axis }) => axis === 'resultant') ??
    others.reduce(
      (most, one) => (most === undefined || inGravities(one.peak) > inGravities(most.peak) ? one : most),
      first,
    );
  if (strongest === undefined && event === undefined)
    return 'neither a peak with its unit nor an event that is known';
  const lasted = columns.duration === undefined ? '' : (cells[columns.duration.column] ?? '').trim();
  const axisCell = columns.axis === undefined ? undefined : axisIn(cells[columns.axis] ?? '');
  const { threshold } = columns;
  return {
    kind: 'shock',
    what: event ?? 'shock',
    ...omitUndefined({
      peak: strongest?.peak,
      milliseconds: lasted === '' ? undefined : parseMilliseconds(durationText(lasted, columns)),
      axis: axisCell ?? strongest?.axis,
      threshold:
        (threshold === undefined
          ? undefined
          : accelerationIn(cells[threshold.column] ?? '', threshold.unit ?? unit)) ?? context.threshold,
      instrument,
      place,
    }),
  };
}

const durationText = (text: string, { duration }: ShockColumns): string =>
  duration?.seconds === true && /^[\d.,]+$/.test(text) ? `${text}s` : text;

function accelerationIn(text: string, unit: AccelerationUnit | undefined): Acceleration | undefined {
  const number = numberIn(text);
  if (number === undefined) return parseAcceleration(text);
  return unit === undefined ? undefined : parseAcceleration(`${number} ${unit}`);
}

/** A bare number, with a point or a comma. */
export function numberIn(text: string | undefined): number | undefined {
  const plain = (text ?? '').trim().replace('−', '-').replace(',', '.');
  return /^[+-]?\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

const EVENTS: readonly (readonly [RegExp, ShockEvent])[] = [
  [/brak|decel|frenad|frenazo|freinage/i, 'hard-braking'],
  [/accel|acelera/i, 'hard-acceleration'],
  [/turn|corner|giro|curva|virage/i, 'hard-turn'],
  [/tilt|inclina|lean/i, 'tilt'],
  [/shock|impact|bump|golpe|choc/i, 'shock'],
];

/** What the word of an event means. */
export function eventIn(text: string): ShockEvent | undefined {
  return EVENTS.find(([pattern]) => pattern.test(text))?.[1];
}
