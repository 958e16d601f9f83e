import { catalogue } from '../../assess/findings/catalogue.js';
import type { Finding } from '../../model/results.js';
import { type Block, type Cell, type Inline, plain, type Section } from '../blocks.js';
import { cell, type View } from './context.js';
import { column, tableOr } from './tables.js';

/** The sentence of one finding, with its exhibits. */
export function findingLine(view: View, finding: Finding): Inline[] {
  const numbers = finding.evidence
    .map(view.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b);
  return view.words.line(
    `findings/${finding.id}`,
    { ...absentFacts(finding.id), ...inLanguage(view, finding.facts) },
    numbers,
  );
}

/** Facts that are words of the reference tables, and the group of remarks that says them. */
const TABLE_WORDS: Readonly<Record<string, string>> = { goods: 'goods', source: 'source', basis: 'source' };

function inLanguage(view: View, facts: Finding['facts']): Finding['facts'] {
  return Object.fromEntries(
    Object.entries(facts).map(([name, value]) => [
      name,
      typeof value === 'string' && TABLE_WORDS[name] !== undefined
        ? view.said(TABLE_WORDS[name], value)
        : value,
    ]),
  );
}

/** Templates are strict: a fact that may be absent must be there as absent. */
export function absentFacts(id: string): Record<string, undefined> {
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
    ...tableOr(
      view,
      'findings',
      [column(view, 'weight', 0.9), column(view, 'finding', 6.6), column(view, 'proves', 2)],
      rows,
    ),
  ];
  return { id: 'findings', title: labels('section.findings'), blocks };
}
