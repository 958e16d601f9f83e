import type { EvidenceItem } from '../../model/state.js';
import type { Block, Cell, Column } from '../blocks.js';
import { plain } from '../blocks.js';
import { cell, exhibitLinks, placeOf, type View } from './context.js';
import { saying, titleOf } from './summary.js';

export const column = (view: View, name: string, width: number, align?: Column['align']): Column => ({
  title: view.labels(`column.${name}`),
  width,
  ...(align === undefined ? {} : { align }),
});

/** A heading with a table below, or a sentence that says why there is none. */
export function tableOr(
  view: View,
  none: string,
  columns: Column[],
  rows: Cell[][],
  title?: string,
): Block[] {
  const heading: Block[] = title === undefined ? [] : [{ is: 'heading', level: 2, text: title }];
  return rows.length === 0
    ? [...heading, { is: 'none', of: plain(view.labels(`none.${none}`)) }]
    : [...heading, { is: 'table', columns, rows }];
}

/** Evidence as a list: when, what it is, what it says, where, which exhibit. */
export function evidenceTable(
  view: View,
  items: readonly EvidenceItem[],
  none: string,
  title?: string,
): Block[] {
  return tableOr(
    view,
    none,
    [
      column(view, 'time', 2.8),
      column(view, 'what', 1.8),
      column(view, 'remark', 3.2),
      column(view, 'place', 1.8),
      column(view, 'by', 1.2),
      column(view, 'exhibit', 0.8),
    ],
    items.map((item) => [
      cell(view.format.eventTime(item.time)),
      cell(titleOf(view, item)),
      cell(saying(view, item)),
      cell(placeOf(view, item)),
      cell(item.by),
      exhibitLinks(view, [item.evidence]),
    ]),
    title,
  );
}
