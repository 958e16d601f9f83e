import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { EvidenceItem } from '../../core/model/state.js';
import type { Block, Cell, Column } from '../../core/words/blocks.js';
import { plain } from '../../core/words/blocks.js';
import { cell, exhibitLinks, placeText, type View } from './context.js';
import { firstRows } from './long-tables.js';
import { evidenceSummary, titleOf } from './summary.js';

export const column = (view: View, name: string, width: number, align?: Column['align']): Column => ({
  title: view.labels(`column.${name}`),
  width,
  ...omitUndefined({ align }),
});

/** A column with what stands in it for each thing told, so that no cell comes under another heading. */
export type ColumnOf<T> = readonly [
  name: string,
  width: number,
  of: (one: T) => Cell | string | undefined,
  align?: Column['align'],
];

export type Table = Extract<Block, { is: 'table' }>;

/** A table with a row for each thing told. */
export function tableOf<T>(view: View, all: readonly T[], columns: readonly ColumnOf<T>[]): Table {
  return {
    is: 'table',
    columns: columns.map(([name, width, , align]) => column(view, name, width, align)),
    rows: all.map((one) =>
      columns.map(([, , of]) => {
        const said = of(one);
        return said === undefined || typeof said === 'string' ? cell(said) : said;
      }),
    ),
  };
}

/**
 * A heading with a table of the first rows below, or a sentence that says why there is none.
 * @param file the attachment that has all of them, where there are more than a table shows
 */
export function listOrNone<T>(
  view: View,
  none: string,
  all: readonly T[],
  columns: readonly ColumnOf<T>[],
  title?: string,
  file = 'exhibits.csv',
): Block[] {
  const heading: Block[] = title === undefined ? [] : [{ is: 'heading', level: 2, text: title }];
  if (all.length === 0) return [...heading, { is: 'none', of: plain(view.labels(`none.${none}`)) }];
  const { shown, note } = firstRows(view, all, file);
  return [...heading, ...note, tableOf(view, shown, columns)];
}

/** A heading with a table below, or a sentence that says why there is none. */
export function tableOrNone(
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

/**
 * Evidence as a list: when, what it is, what it says, where, which exhibit. Photographs and documents are named by their
 * numbers alone, since they stand in full among the exhibits.
 */
export function evidenceTable(
  view: View,
  items: readonly EvidenceItem[],
  none: string,
  title?: string,
): Block[] {
  const pictured = items.filter(({ kind }) => kind === 'photo' || kind === 'document');
  const told = items.filter((item) => !pictured.includes(item));
  const heading: Block[] = title === undefined ? [] : [{ is: 'heading', level: 2, text: title }];
  return [
    ...(told.length === 0 && pictured.length > 0 ? heading : readingTable(view, told, none, title)),
    ...pictureGroups(view, pictured),
  ];
}

/** Numbers of photographs and documents by what they show. */
function pictureGroups(view: View, items: readonly EvidenceItem[]): Block[] {
  const titles = [...new Set(items.map((item) => titleOf(view, item)))];
  if (titles.length === 0) return [];
  return [
    {
      is: 'facts',
      facts: titles.map((label) => ({
        label,
        value: exhibitLinks(
          view,
          items.filter((item) => titleOf(view, item) === label).map(({ evidence }) => evidence),
          40,
        ),
      })),
    },
  ];
}

function readingTable(view: View, items: readonly EvidenceItem[], none: string, title?: string): Block[] {
  return listOrNone(
    view,
    none,
    items,
    [
      ['time', 2.8, (item) => view.format.eventTime(item.time)],
      ['what', 1.8, (item) => titleOf(view, item)],
      ['remark', 3.2, (item) => evidenceSummary(view, item)],
      ['place', 1.8, (item) => placeText(view, item)],
      ['by', 1.2, (item) => item.by],
      ['exhibit', 0.8, (item) => exhibitLinks(view, [item.evidence])],
    ],
    title,
  );
}
