import { citedPassages } from '../../core/assess/cited-passages.js';
import { passageOf } from '../../core/reference/published-values.js';
import type { Source } from '../../core/reference/sources.js';
import type { Block } from '../../core/words/blocks.js';
import type { View } from './context.js';
import { tableOf } from './tables.js';

/** The numbers under which the pages cite passages of publications, in the order in which the results name them. */
export function passageNumbers(view: View): ReadonlyMap<string, number> {
  return new Map(citedPassages(view.input.assessment).map((passage, i) => [passage, i + 1]));
}

/**
 * Every passage that a published value of this dossier stands in, numbered: its source in full and its own words, so that
 * a reader can follow a value to the sentence it stands in without this tool.
 */
export function sourceNoteBlocks(view: View): Block[] {
  const notes = citedPassages(view.input.assessment).flatMap((passage, i) => {
    const found = passageOf(passage);
    return found === undefined ? [] : [{ number: i + 1, passage, ...found }];
  });
  if (notes.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: view.labels('sub.source-notes') },
    ...view.words.blocks('sections/source-notes'),
    tableOf(view, notes, [
      ['number', 0.5, ({ number }) => String(number)],
      ['source', 4.2, ({ source, section }) => sourceInFull(view, source, section)],
      ['quotation', 4.6, ({ passage }) => view.input.quotations?.get(passage)],
    ]),
  ];
}

function sourceInFull(view: View, source: Source, section: string): string {
  const { name, title, by, edition, address, status, read } = source;
  return [
    `${name}: ${title}`,
    by,
    edition,
    section,
    address,
    `${view.labels('source.read-on')} ${read}`,
    ...(status === 'secondary' ? [view.labels('source.secondary')] : []),
  ].join('; ');
}
