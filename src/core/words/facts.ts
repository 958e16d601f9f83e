import type { FindingQuantity } from '../model/results.js';
import { formatAmount } from './amounts.js';
import { escapeMarkdown } from './escape.js';
import type { Format } from './format.js';
import type { Labels } from './labels.js';
import { showPublished } from './published.js';

/** Markdown made by our own templates, with what a person wrote already escaped: printed as it is. */
export class MarkdownText {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
  toString(): string {
    return this.text;
  }
}

export type FactValue =
  | string
  | number
  | boolean
  | FindingQuantity
  | MarkdownText
  | readonly MarkdownText[]
  | undefined;
export type Facts = Readonly<Record<string, FactValue>>;

/** Names of lines and stops in this delivery. */
export interface FactNames {
  line: (id: string) => string;
  stop: (id: string) => string;
}

/** A fact as a template sees it: printed as escaped words; `raw` is the key for looking up its words. */
export class ShownFact {
  readonly #shown: string;
  readonly raw: string;
  /** False for a quantity of zero. */
  readonly some: boolean;
  /** Of a difference: its unsigned size in words, and its printed direction. */
  readonly moved: { by: string; way: 'up' | 'down' | 'none' } | undefined;
  constructor(shown: string, some = true, moved?: ShownFact['moved']) {
    this.raw = shown;
    this.some = some;
    this.moved = moved;
    this.#shown = escapeMarkdown(shown);
  }
  toString(): string {
    return this.#shown;
  }
}
export type ShownFacts = Record<
  string,
  ShownFact | number | boolean | MarkdownText | readonly MarkdownText[] | undefined
>;

/** Converts facts to what templates may print: every value in the reader's units, nothing that could be markup. */
export function showFacts(facts: Facts, format: Format, names: FactNames, labels: Labels): ShownFacts {
  return Object.fromEntries(
    Object.entries(facts).map(([name, value]) => {
      if (value === undefined || typeof value === 'number' || typeof value === 'boolean')
        return [name, value];
      if (typeof value === 'string') return [name, value === '' ? undefined : new ShownFact(value)];
      if (!('is' in value)) return [name, value];
      return [
        name,
        new ShownFact(showQuantity(value, format, names, labels), !isNothing(value), movedBy(value, format)),
      ];
    }),
  );
}

/** A difference that rounds to zero in print has no direction. */
function movedBy(value: FindingQuantity, format: Format): ShownFact['moved'] {
  if (value.is !== 'difference') return undefined;
  const by = format.difference(Math.abs(value.kelvin));
  if (by === format.difference(0)) return { by, way: 'none' };
  return { by, way: value.kelvin > 0 ? 'up' : 'down' };
}

/** One quantity in words. */
function showQuantity(value: FindingQuantity, format: Format, names: FactNames, labels: Labels): string {
  switch (value.is) {
    case 'temperature':
      return format.temperature(value.celsius);
    case 'difference':
      return format.difference(value.kelvin);
    case 'duration':
      return format.duration(value.seconds);
    case 'time':
      return format.time(value.at, value.zone);
    case 'degree-hours':
      return format.degreeHours(value.kelvinHours);
    case 'share':
      return format.share(value.of);
    case 'length':
      return format.length(value.metres);
    case 'weight':
      return format.weight(value.kilograms);
    case 'acceleration':
      return format.acceleration(value);
    case 'published':
      return showPublished(value, format);
    case 'line':
      return names.line(value.line);
    case 'stop':
      return names.stop(value.stop);
    case 'amount':
      return formatAmount(labels, format, value);
  }
}

function isNothing(value: FindingQuantity): boolean {
  switch (value.is) {
    case 'difference':
      return value.kelvin === 0;
    case 'duration':
      return value.seconds === 0;
    case 'degree-hours':
      return value.kelvinHours === 0;
    case 'share':
      return value.of === 0;
    case 'length':
      return value.metres === 0;
    case 'weight':
      return value.kilograms === 0;
    case 'acceleration':
      return value.value === 0;
    case 'published':
      return value.by.length === 0;
    case 'temperature':
    case 'time':
    case 'line':
    case 'stop':
    case 'amount':
      return false;
  }
}
