import { type AccelerationUnit, accelerationUnitNamed } from '../../core/model/acceleration.js';
import type { ShockAxis } from '../../core/model/evidence.js';
import { withoutAccents } from '../time/months.js';

/** A column of peaks: its unit, where its heading states one, and the way it points. */
export interface PeakColumn {
  column: number;
  heading: string;
  unit?: AccelerationUnit;
  axis?: ShockAxis;
}

/** What the columns of a shock recorder's table, or of a list of hard braking, are. */
export interface ShockColumns {
  /** One column with date and time, or the date and then the time. */
  time: number[];
  peaks: PeakColumn[];
  duration?: { column: number; seconds: boolean };
  axis?: number;
  event?: number;
  threshold?: { column: number; unit?: AccelerationUnit };
}

const plainOf = (heading: string): string =>
  withoutAccents(heading)
    .toLowerCase()
    .replaceAll(/[([{].*?[)\]}]/g, ' ')
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .trim();

const TIME =
  /^(?:date time|datetime|timestamp|date and time|time stamp|fecha y hora|fecha hora|horodatage|time|date|fecha|hora|heure)(?: utc| local)?$/;
const DAY = /^(?:date|fecha)$/;
const PEAK =
  /\b(?:peak|pico|shock|impact|impacto|golpe|choc|acceleration|accel|aceleracion|g ?force|deceleration|vector sum|resultant)\b|^g$/;
const DURATION = /\b(?:duration|duracion|duree|length|lasted)\b/;
const AXIS = /^(?:axis|direction|eje|axe|sentido)$/;
const EVENT = /\b(?:event|evento|type|tipo|alert|alerta|evenement)\b/;
const THRESHOLD = /\b(?:threshold|umbral|seuil|trigger|limit|limite)\b/;

/** Reads the headings; undefined where no column is a time, or none is a peak or an event. */
export function shockColumns(headings: readonly string[]): ShockColumns | undefined {
  const plain = headings.map(plainOf);
  const times = plain.flatMap((heading, i) => (TIME.test(heading) ? [i] : []));
  const [first] = times;
  if (first === undefined) return undefined;
  const date = plain.findIndex((heading) => DAY.test(heading));
  const clock = times.find((i) => i !== date);
  const time = date >= 0 && clock !== undefined ? [date, clock] : [first];
  const columns: ShockColumns = { time, peaks: [] };
  plain.forEach((heading, column) => {
    if (time.includes(column)) return;
    const unit = unitOf(headings[column] ?? '');
    if (THRESHOLD.test(heading)) columns.threshold ??= { column, ...(unit === undefined ? {} : { unit }) };
    else if (DURATION.test(heading))
      columns.duration ??= { column, seconds: /[([{]\s*s(?:ec)?\s*[)\]}]/i.test(headings[column] ?? '') };
    else if (AXIS.test(heading)) columns.axis ??= column;
    else if (PEAK.test(heading) || (unit !== undefined && /^[xyz](?: axis)?$/.test(heading))) {
      const axis = axisIn(heading);
      columns.peaks.push({
        column,
        heading: headings[column] ?? '',
        ...(unit === undefined ? {} : { unit }),
        ...(axis === undefined ? {} : { axis }),
      });
    } else if (EVENT.test(heading)) columns.event ??= column;
  });
  return columns.peaks.length > 0 || columns.event !== undefined ? columns : undefined;
}

/** The unit in brackets, behind a comma, or at the end of a heading. */
export function unitOf(heading: string): AccelerationUnit | undefined {
  const inBrackets = /[([{]\s*([^)\]}]+?)\s*[)\]}]/.exec(heading)?.[1];
  const behind = /[,_]\s*([^,_]+)$/.exec(heading)?.[1] ?? /\s(\S+)$/.exec(heading.trim())?.[1];
  for (const text of [inBrackets, behind, heading]) {
    const unit = text === undefined ? undefined : accelerationUnitNamed(text);
    if (unit !== undefined) return unit;
  }
  return undefined;
}

const AXES: readonly (readonly [RegExp, ShockAxis])[] = [
  [/\bx\b/, 'x'],
  [/\by\b/, 'y'],
  [/\bz\b/, 'z'],
  [/\bvertical\b/, 'vertical'],
  [/\b(?:lateral|transverse|transversal)\b/, 'lateral'],
  [/\blongitudinal\b/, 'longitudinal'],
  [/\b(?:vector sum|resultant|resultante)\b/, 'resultant'],
];

/** The way that a word names. */
export const axisIn = (text: string): ShockAxis | undefined => {
  const plain = withoutAccents(text).toLowerCase();
  return AXES.find(([pattern]) => pattern.test(plain))?.[1];
};
