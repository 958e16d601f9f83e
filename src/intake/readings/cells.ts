import {
  type EvidenceId,
  evidenceId,
  type ReadingBody,
  type Signatory,
  signingParty,
} from '../../core/model/evidence.js';
import { parseTradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import { parseRowSpan } from '../../core/model/row-span.js';
import { parseTemperature, type Temperature } from '../../core/model/temperature.js';
import { roleOf } from '../roles.js';
import { nearestWord } from '../settings/did-you-mean.js';
import { parseSignatory } from '../signatory.js';
import { type ReadingColumn, UnreadableRow } from './columns.js';

/** The cells of one row that are not empty, by the heading of their column. */
export type Cells = ReadonlyMap<string, string>;

export function missing(column: ReadingColumn, what: string): never {
  throw new UnreadableRow(`${column} is missing`, column, `write ${what}`);
}

export function short(text: string, column: ReadingColumn, most: number): string {
  if (text.length > most) throw new UnreadableRow(`${text.length} characters; at most ${most} fit`, column);
  return text;
}

/** A word of a closed list, in any case, with blanks for dashes. */
export function chosen<T extends string>(
  cells: Cells,
  column: ReadingColumn,
  list: { options: readonly T[] },
): T | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  const plain = text.toLowerCase().replaceAll(/[\s_]+/g, '-');
  return list.options.find((option) => option === plain) ?? refuse(text, column, list.options);
}

/** The same for the parts that others play: `consignee` is the receiver. */
export function chosenRole<T extends string>(
  cells: Cells,
  column: ReadingColumn,
  list: { options: readonly T[] },
): T | undefined {
  const text = cells.get(column);
  return text === undefined ? undefined : (roleOf(text, list.options) ?? chosen(cells, column, list));
}

export function known(cells: Cells, column: ReadingColumn, names: readonly string[]): string | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  return names.find((name) => name.toLowerCase() === text.toLowerCase()) ?? refuse(text, column, names);
}

export function refuse(text: string, column: ReadingColumn, names: readonly string[]): never {
  const close = nearestWord(text, names);
  throw new UnreadableRow(
    `"${text.slice(0, 60)}" is not a known ${column}; known are: ${names.join(', ')}`,
    column,
    close === undefined ? `use one of: ${names.join(', ')}` : `did you mean ${close}?`,
  );
}

/** A number with the unit in its own cell or in the column `unit`. */
export function temperatureIn(cells: Cells, column: ReadingColumn): Temperature | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  const bare = /^[+\-−]?\d+(?:[.,]\d+)?$/.test(text);
  const unit = cells.get('unit');
  if (bare && unit === undefined)
    throw new UnreadableRow(
      `nothing says whether ${text} is in °F or °C`,
      'unit',
      'write F or C in the column unit',
    );
  const written = bare ? `${text} ${unit}` : text;
  const read = parseTemperature(written);
  if (read !== undefined) return read;
  if (bare && parseTemperature(`0 ${unit}`) === undefined)
    throw new UnreadableRow(`"${unit}" is not a unit of temperature`, 'unit', 'write F or C');
  throw new UnreadableRow(
    bare || /\d\s*°?\s*[CF]$/i.test(text)
      ? `${written} is not a temperature that air or produce can have (−80 to 85 °C, −112 to 185 °F)`
      : `"${text.slice(0, 60)}" is not a temperature`,
    column,
    'write a number, such as 34.2, and F or C in the column unit',
  );
}

/** `8 pallets`, `8` with its unit in the column `unit`, or `all`; empty for what no other outcome speaks of. */
export function howMuchIn(cells: Cells): Pick<Extract<ReadingBody, { kind: 'outcome' }>, 'quantity' | 'all'> {
  const text = cells.get('value');
  if (text === undefined) return {};
  if (text.toLowerCase() === 'all') return { all: true };
  const quantity = parseTradeQuantity(/[a-z]/i.test(text) ? text : `${text} ${cells.get('unit') ?? ''}`);
  if (quantity === undefined)
    throw new UnreadableRow(
      `"${text.slice(0, 60)}" is not a quantity with its unit`,
      'value',
      `write a number, and one of ${tradeUnit.options.join(', ')} in the column unit`,
    );
  return { quantity };
}

/** Words of a closed list with `;` between them. */
export function listIn<T extends string>(
  cells: Cells,
  column: ReadingColumn,
  list: { options: readonly T[] },
): T[] {
  return partsIn(cells, column, /[;|,]/).map(
    (one) => chosen(new Map([[column, one]]), column, list) ?? refuse(one, column, list.options),
  );
}

function partsIn(cells: Cells, column: ReadingColumn, between: RegExp): string[] {
  return (cells.get(column) ?? '')
    .split(between)
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

/** Who signed, with `;` between them: `shipper J. Ortiz; driver`. */
export function signatoriesIn(
  cells: Cells,
  column: 'written-by' | 'signed-by' | 'with' | 'owner',
): Signatory[] {
  return partsIn(cells, column, /[;|]/).map((text) => {
    const read = parseSignatory(text);
    if (read !== undefined) return read;
    throw new UnreadableRow(
      `"${text.slice(0, 60)}" does not say for whom`,
      column,
      `write the part before the name, such as shipper J. Ortiz; parts are ${signingParty.options.join(', ')}`,
    );
  });
}

/** The paper in the column `on`: evidence by its id, or the paper in words. */
export function papersIn(cells: Cells): { documents: EvidenceId[]; document?: string } {
  const text = cells.get('on');
  if (text === undefined) return { documents: [] };
  const paper = evidenceId.safeParse(text.toLowerCase());
  return paper.success ? { documents: [paper.data] } : { documents: [], document: short(text, 'on', 400) };
}

/** `1-13` or `4`, counted from the nose. */
export function rowsIn(cells: Cells): { from: number; to: number } {
  const text = cells.get('rows') ?? missing('rows', 'the rows from the nose, such as 1-13');
  const read = parseRowSpan(text);
  if (read === undefined || read.from < 1 || read.to > 60 || read.from > read.to)
    throw new UnreadableRow(`"${text.slice(0, 60)}" are not rows`, 'rows', 'write them like 1-13 or 4');
  return read;
}

/** `3/4`, `0.75` or `75 %`. */
export function fuelIn(cells: Cells): number | undefined {
  const text = cells.get('fuel');
  if (text === undefined) return undefined;
  const words: Record<string, number> = { full: 1, empty: 0, half: 0.5 };
  const [, a, b] = /^(\d+)\s*\/\s*(\d+)$/.exec(text) ?? [];
  const [, percent] = /^(\d+(?:[.,]\d+)?)\s*%$/.exec(text) ?? [];
  const fraction =
    words[text.toLowerCase()] ??
    (a !== undefined
      ? Number(a) / Number(b)
      : percent !== undefined
        ? Number(percent.replace(',', '.')) / 100
        : Number(text.replace(',', '.')));
  if (!(fraction >= 0 && fraction <= 1))
    throw new UnreadableRow(`"${text.slice(0, 60)}" is not a fuel level`, 'fuel', 'write 3/4, 0.75 or 75 %');
  return fraction;
}
