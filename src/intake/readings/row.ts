import type { z } from 'zod';
import { type Delivery, runMode } from '../../core/model/delivery.js';
import {
  airBlock,
  bracing,
  contact,
  eventName,
  outcomeHow,
  outcomeReason,
  outcomeTold,
  outcomeVerdict,
  type Place,
  position,
  type ReadingBody,
  readingFrom,
  readingKind,
  rowPattern,
  seal,
  setPointSource,
} from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { parseTradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import { parseRowSpan } from '../../core/model/row-span.js';
import { parseTemperature, type Temperature } from '../../core/model/temperature.js';
import { roleOf, roleOfName } from '../roles.js';
import { nearestWord } from '../settings/did-you-mean.js';
import type { DateOrder } from '../time/wall-time.js';
import { type ReadingColumn, type RowNote, UnreadableRow } from './columns.js';
import { readRowTime } from './time.js';

type Cells = ReadonlyMap<string, string>;

/** Parses one row. Throws UnreadableRow with the column at fault. */
export function readReadingRow(
  cells: Cells,
  delivery: Delivery,
  order: DateOrder | undefined,
): { reading: ReadingBody; notes: RowNote[] } {
  const kind = kindIn(cells);
  const stop = known(
    cells,
    'stop',
    delivery.stops.map((s) => s.id),
  );
  const line = known(
    cells,
    'line',
    delivery.lines.map((l) => l.id),
  );
  const part = chosen(cells, 'position', position);
  const by = cells.get('by');
  const { time, notes } = readRowTime(cells.get('time'), delivery, stop, order);
  const place: Place = {
    ...omitUndefined({ stop, position: part }),
  };
  const common = {
    time,
    ...omitUndefined({
      place: Object.keys(place).length === 0 ? undefined : place,
      line,
      by: by === undefined ? undefined : short(by, 'by', 200),
    }),
  };
  return { reading: readingOf(kind, common, cells), notes };
}

/** Kinds in a table: a unit check is stored as `round`, and that word is accepted too. */
const KINDS = { options: readingKind.options.map((kind) => (kind === 'round' ? 'check' : kind)) };

function kindIn(cells: Cells): z.infer<typeof readingKind> {
  if (cells.get('kind')?.toLowerCase() === 'round') return 'round';
  const kind = chosen(cells, 'kind', KINDS) ?? missing('kind', `one of ${KINDS.options.join(', ')}`);
  return kind === 'check' ? 'round' : kind;
}

type Common = Pick<ReadingBody, 'time' | 'place' | 'line' | 'by'>;

function readingOf(kind: z.infer<typeof readingKind>, common: Common, cells: Cells): ReadingBody {
  const note = cells.get('note');
  const captioned = {
    ...common,
    ...omitUndefined({ caption: note === undefined ? undefined : short(note, 'note', 2000) }),
  };
  const noted = {
    ...common,
    ...omitUndefined({ note: note === undefined ? undefined : short(note, 'note', 2000) }),
  };
  const run = chosen(cells, 'run', runMode);
  switch (kind) {
    case 'pulp': {
      const instrument = cells.get('instrument');
      return {
        kind,
        ...captioned,
        temperature: temperatureIn(cells, 'value') ?? missing('value', 'a temperature'),
        from:
          chosenRole(cells, 'from', readingFrom) ??
          roleOfName(cells.get('by') ?? '', readingFrom.options) ??
          'driver',
        ...omitUndefined({
          instrument: instrument === undefined ? undefined : short(instrument, 'instrument', 100),
        }),
      };
    }
    case 'set-point':
      return {
        kind,
        ...captioned,
        temperature: temperatureIn(cells, 'value') ?? missing('value', 'a temperature'),
        shownBy: chosen(cells, 'from', setPointSource) ?? 'display',
        ...omitUndefined({ run }),
      };
    case 'round': {
      const boxAir = temperatureIn(cells, 'value');
      const setPoint = temperatureIn(cells, 'set-point');
      const fuel = fuelIn(cells);
      return {
        kind,
        ...captioned,
        ...omitUndefined({ boxAir, setPoint, fuel }),
        alarms: (cells.get('alarms') ?? '')
          .split(/[;|]/)
          .map((alarm) => alarm.trim())
          .filter((alarm) => alarm !== '')
          .map((alarm) => short(alarm, 'alarms', 200)),
      };
    }
    case 'seal':
      return {
        kind,
        ...captioned,
        number: short(cells.get('value') ?? missing('value', 'the seal number'), 'value', 60),
        state:
          chosen(cells, 'state', seal.shape.state) ?? missing('state', seal.shape.state.options.join(', ')),
      };
    case 'bracing':
      return {
        kind,
        ...noted,
        device:
          chosen(cells, 'value', bracing.shape.device) ??
          missing('value', bracing.shape.device.options.join(', ')),
      };
    case 'pattern':
      return {
        kind,
        ...noted,
        pattern: chosen(cells, 'value', rowPattern) ?? missing('value', rowPattern.options.join(', ')),
        rows: rowsIn(cells),
        blocks: (cells.get('blocks') ?? '')
          .split(/[;|]/)
          .map((one) => one.trim())
          .filter((one) => one !== '')
          .map((one) => chosen(new Map([['blocks', one]]), 'blocks', airBlock) ?? refuse(one, 'blocks', [])),
      };
    case 'event':
      return {
        kind,
        ...noted,
        event:
          chosen(cells, 'event', eventName) ??
          chosen(cells, 'value', eventName) ??
          missing('event', 'what happened'),
      };
    case 'outcome':
      return {
        kind,
        ...common,
        outcome:
          chosen(cells, 'state', outcomeVerdict) ?? missing('state', outcomeVerdict.options.join(', ')),
        ...howMuchIn(cells),
        reasons: (cells.get('reason') ?? '')
          .split(/[;|,]/)
          .map((one) => one.trim())
          .filter((one) => one !== '')
          .map(
            (one) => chosen(new Map([['reason', one]]), 'reason', outcomeReason) ?? refuse(one, 'reason', []),
          ),
        documents: [],
        ...omitUndefined({
          words: note === undefined ? undefined : short(note, 'note', 2000),
          told: chosen(cells, 'with', outcomeTold),
          how: chosen(cells, 'how', outcomeHow),
        }),
      };
    case 'contact':
      return {
        kind,
        ...common,
        with:
          chosenRole(cells, 'with', contact.shape.with) ??
          chosenRole(cells, 'value', contact.shape.with) ??
          missing('with', 'who was told'),
        how: chosen(cells, 'how', contact.shape.how) ?? missing('how', contact.shape.how.options.join(', ')),
        about: short(note ?? 'not stated', 'note', 2000),
      };
    case 'statement':
      return {
        kind,
        ...(cells.has('value') ? captioned : common),
        text: short(cells.get('value') ?? note ?? missing('note', 'what the person says'), 'note', 20_000),
      };
  }
}

function missing(column: ReadingColumn, what: string): never {
  throw new UnreadableRow(`${column} is missing`, column, `write ${what}`);
}

function short(text: string, column: ReadingColumn, most: number): string {
  if (text.length > most) throw new UnreadableRow(`${text.length} characters; at most ${most} fit`, column);
  return text;
}

/** A word of a closed list, in any case, with blanks for dashes. */
function chosen<T extends string>(
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
function chosenRole<T extends string>(
  cells: Cells,
  column: ReadingColumn,
  list: { options: readonly T[] },
): T | undefined {
  const text = cells.get(column);
  return text === undefined ? undefined : (roleOf(text, list.options) ?? chosen(cells, column, list));
}

function known(cells: Cells, column: ReadingColumn, names: readonly string[]): string | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  return names.find((name) => name.toLowerCase() === text.toLowerCase()) ?? refuse(text, column, names);
}

function refuse(text: string, column: ReadingColumn, names: readonly string[]): never {
  const close = nearestWord(text, names);
  throw new UnreadableRow(
    `"${text.slice(0, 60)}" is not a known ${column}; known are: ${names.join(', ')}`,
    column,
    close === undefined ? `use one of: ${names.join(', ')}` : `did you mean ${close}?`,
  );
}

/** A number with the unit in its own cell or in the column `unit`. */
function temperatureIn(cells: Cells, column: ReadingColumn): Temperature | undefined {
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
function howMuchIn(cells: Cells): Pick<Extract<ReadingBody, { kind: 'outcome' }>, 'quantity' | 'all'> {
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

/** `1-13` or `4`, counted from the nose. */
function rowsIn(cells: Cells): { from: number; to: number } {
  const text = cells.get('rows') ?? missing('rows', 'the rows from the nose, such as 1-13');
  const read = parseRowSpan(text);
  if (read === undefined || read.from < 1 || read.to > 60 || read.from > read.to)
    throw new UnreadableRow(`"${text.slice(0, 60)}" are not rows`, 'rows', 'write them like 1-13 or 4');
  return read;
}

/** `3/4`, `0.75` or `75 %`. */
function fuelIn(cells: Cells): number | undefined {
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
