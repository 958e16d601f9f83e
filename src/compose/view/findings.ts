import { catalogue } from '../../core/assess/findings/catalogue.js';
import type { Finding } from '../../core/model/results.js';
import { type Block, type Cell, type Inline, plain, type Section } from '../../core/words/blocks.js';
import type { Facts } from '../../core/words/facts.js';
import type { TranslateRemark } from '../../core/words/remarks.js';
import { findingPlace } from './compartment-words.js';
import { cell, type View } from './context.js';
import { column, tableOrNone } from './tables.js';

/** The sentence of one finding, with its exhibits. */
export function findingLine(view: View, finding: Finding): Inline[] {
  const numbers = finding.evidence
    .map(view.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b);
  return [
    ...plain(findingPlace(view.labels, finding)),
    ...view.words.line(`findings/${finding.id}`, localizedFacts(view.remark, finding), numbers),
  ];
}

/** Facts that are words of the reference tables, and the remarks group that translates them. */
const TABLE_WORDS: Readonly<Record<string, string>> = { goods: 'goods', source: 'source', basis: 'source' };

/** The facts of a finding for its sentence: table words in the reader's language, missing ones as absent. */
export function localizedFacts(remark: TranslateRemark, { id, facts }: Finding): Facts {
  const inLanguage = Object.entries(facts).map(([name, value]) => {
    const group = TABLE_WORDS[name];
    return [name, typeof value === 'string' && group !== undefined ? remark(group, value) : value] as const;
  });
  return { ...absentFacts(id), ...Object.fromEntries(inLanguage) };
}

/** Templates are strict: a fact that may be absent must be passed as absent. */
function absentFacts(id: string): Record<string, undefined> {
  const known: Record<string, { facts: Record<string, string> }> = catalogue;
  return Object.fromEntries(Object.keys(known[id]?.facts ?? {}).map((name) => [name, undefined]));
}

export function findingsSection(view: View): Section {
  const { labels } = view;
  const rows = [...view.input.assessment.findings]
    .sort((a, b) => b.weight - a.weight)
    .map((finding): Cell[] => [
      finding.weighs === 'hurts'
        ? { is: 'alert', of: plain(labels('cover.hurts')) }
        : cell(labels(`cover.${finding.weighs}`)),
      findingLine(view, finding),
      cell(labels(`element.${finding.element}`)),
    ]);
  const blocks: Block[] = [
    ...view.words.blocks('sections/findings'),
    ...tableOrNone(
      view,
      'findings',
      [column(view, 'weight', 0.9), column(view, 'finding', 6.6), column(view, 'proves', 2)],
      rows,
    ),
  ];
  return { id: 'findings', title: labels('section.findings'), blocks };
}
