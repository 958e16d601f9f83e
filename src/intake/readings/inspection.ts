import { type InspectedDefect, inspection, type ReadingBody } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { parseTradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import type { EventTime } from '../../core/model/time.js';
import { parseDefect, parseShares, parseTemperatureRange, splitDefects } from '../inspection-words.js';
import { type Cells, chosen, missing, short } from './cells.js';
import { type ReadingColumn, UnreadableRow } from './columns.js';

type Inspection = Extract<ReadingBody, { kind: 'inspection' }>;
type Common = Pick<Inspection, 'time' | 'place' | 'line' | 'by' | 'caption'>;

/**
 * An inspection certificate, or one of its defects: rows of one lot and certificate are read together later. The lot
 * stands in `lot` or `value`; the defects in `defects`, or one in `defect`, `percent`, `serious` and `nature`, or decay
 * alone in `decay`.
 * @param timeIn reads the time of another column
 */
export function readInspection(
  common: Common,
  cells: Cells,
  timeIn: (column: ReadingColumn) => EventTime | undefined,
): ReadingBody {
  const text = (column: ReadingColumn, most: number) => {
    const said = cells.get(column);
    return said === undefined ? undefined : short(said, column, most);
  };
  const body = {
    kind: 'inspection' as const,
    ...common,
    lot: text('lot', 80) ?? text('value', 80) ?? missing('lot', 'the lot of the certificate'),
    defects: defectsIn(cells),
    documents: [],
    ...omitUndefined({
      count: quantityIn(cells, 'count'),
      samples: cells.has('samples') ? numberIn(cells, 'samples') : undefined,
      total: totalIn(cells),
      pulps: pulpsIn(cells),
      certificate: text('certificate', 60),
      where: text('where', 200),
      ended: timeIn('ended'),
      requestedBy: text('requested-by', 200),
      requestedAt: timeIn('requested-at'),
      dumped: quantityIn(cells, 'dumped'),
      marks: text('marks', 200),
    }),
  };
  const read = inspection.safeParse(
    JSON.parse(JSON.stringify({ ...body, evidence: 'e1', source: { is: 'typed' } })),
  );
  if (read.success) return body;
  const [issue] = read.error.issues;
  const path = issue?.path.map(String) ?? [];
  throw new UnreadableRow(issue?.message ?? 'it is not an inspection', columnOf(path), 'look at the number');
}

/** The column of a field of the schema. */
function columnOf(path: readonly string[]): ReadingColumn {
  const last = path.at(-1);
  if (last === 'percent' || last === 'serious') return path.at(0) === 'total' ? 'total' : last;
  if (last === 'samples' || last === 'ended') return last;
  return last === 'requestedAt' ? 'requested-at' : 'defects';
}

function defectsIn(cells: Cells): InspectedDefect[] {
  const listed = splitDefects(cells.get('defects') ?? '').map(
    (text) =>
      parseDefect(text) ??
      unreadable(text, 'defects', 'write each like tipburn 8% serious 3%, with semicolons between them'),
  );
  const name = cells.get('defect');
  if (name === undefined && (cells.has('percent') || cells.has('serious')))
    missing('defect', 'the name of the defect');
  const own =
    name === undefined
      ? []
      : [
          {
            name: short(name, 'defect', 120),
            percent: shareIn(cells, 'percent') ?? missing('percent', 'how much of the lot it is'),
            ...omitUndefined({
              serious: shareIn(cells, 'serious'),
              nature: chosen(cells, 'nature', { options: ['condition', 'permanent'] as const }),
            }),
          },
        ];
  const decay = shareIn(cells, 'decay');
  return [...listed, ...own, ...(decay === undefined ? [] : [{ name: 'decay', percent: decay }])];
}

function shareIn(cells: Cells, column: ReadingColumn): number | undefined {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  return parseShares(text)?.percent ?? unreadable(text, column, 'write a number, such as 8 or 8%');
}

function totalIn(cells: Cells) {
  const text = cells.get('total');
  if (text === undefined) return undefined;
  return parseShares(text) ?? unreadable(text, 'total', 'write it like 15% serious 9%');
}

function pulpsIn(cells: Cells) {
  const text = cells.get('pulps');
  if (text === undefined) return undefined;
  const unit = cells.get('unit') ?? '';
  return (
    parseTemperatureRange(text) ??
    parseTemperatureRange(`${text}${unit}`) ??
    unreadable(text, 'pulps', 'write the lowest and the highest with their unit, such as 41F to 44F')
  );
}

function quantityIn(cells: Cells, column: 'count' | 'dumped') {
  const text = cells.get(column);
  if (text === undefined) return undefined;
  return (
    parseTradeQuantity(/[a-z]/i.test(text) ? text : `${text} ${cells.get('unit') ?? ''}`) ??
    unreadable(text, column, `write a number and one of ${tradeUnit.options.join(', ')}`)
  );
}

function numberIn(cells: Cells, column: ReadingColumn): number {
  const text = cells.get(column) ?? '';
  return /^\d{1,6}$/.test(text) ? Number(text) : unreadable(text, column, 'write a whole number');
}

function unreadable(text: string, column: ReadingColumn, fix: string): never {
  throw new UnreadableRow(`"${text.slice(0, 60)}" is not understood`, column, fix);
}
