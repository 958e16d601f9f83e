import { omitUndefined } from '../../model/omit-undefined.js';
import type { TrailChange, TrailField } from '../../model/results/trail.js';

/** The fields of a body; nested fields are named by their path, such as `place stop`. */
export function fieldsOf(body: unknown, without: ReadonlySet<string> = new Set()): TrailField[] {
  if (!isObject(body)) return [];
  return Object.entries(body)
    .filter(([name]) => !without.has(name))
    .flatMap(([name, value]) => under(wordsOf(name), value));
}

function under(field: string, value: unknown): TrailField[] {
  if (value === undefined || value === null) return [];
  const quantity = quantityText(value);
  if (quantity !== undefined) return [{ field, value: quantity }];
  if (Array.isArray(value)) {
    if (value.length === 0) return [];
    if (value.every((one) => !isObject(one) || quantityText(one) !== undefined))
      return [{ field, value: value.map((one) => quantityText(one) ?? String(one)).join(', ') }];
    return value.flatMap((one, i) => under(`${field} ${named(one) ?? i + 1}`, one));
  }
  if (isObject(value))
    return Object.entries(value).flatMap(([name, part]) => under(`${field} ${wordsOf(name)}`, part));
  return [{ field, value: String(value) }];
}

/** Items with an id or a name are named by it, so that reordering them is no change. */
function named(value: unknown): string | undefined {
  if (!isObject(value)) return undefined;
  return [value.id, value.name].find((one) => typeof one === 'string');
}

/** A temperature, a difference, a quantity, an amount of money or a known time as one text. */
function quantityText(value: unknown): string | undefined {
  if (!isObject(value)) return undefined;
  const { value: number, difference, unit, amount, currency, date, zone } = value;
  if (value.is === 'known' && typeof value.instant === 'string') return `${value.instant} (${String(zone)})`;
  if (Object.keys(value).length !== 2) return undefined;
  if (typeof unit === 'string' && typeof number === 'number') return `${number} ${unit}`;
  if (typeof unit === 'string' && typeof difference === 'number') return `${difference} ${unit}`;
  if (typeof unit === 'string' && typeof amount === 'string') return `${amount} ${unit}`;
  if (typeof amount === 'string' && typeof currency === 'string') return `${amount} ${currency}`;
  if (typeof date === 'string' && typeof zone === 'string') return `${date} (${zone})`;
  return undefined;
}

/** The fields that differ between two versions. */
export function changesBetween(before: readonly TrailField[], after: readonly TrailField[]): TrailChange[] {
  const was = new Map(before.map(({ field, value }) => [field, value]));
  const is = new Map(after.map(({ field, value }) => [field, value]));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((field): TrailChange[] => {
    const from = was.get(field);
    const to = is.get(field);
    if (from === to) return [];
    return [
      {
        field,
        ...omitUndefined({ before: from, after: to }),
      },
    ];
  });
}

/** `setPoint` is shown as "set point". */
const wordsOf = (name: string) => name.replaceAll(/([A-Z])/g, ' $1').toLowerCase();

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
