import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { milestoneText, substituteText } from '../../src/compose/view/gap-words.js';
import { type Rule, stage } from '../../src/core/model/rule-set.js';
import { gapWording } from '../../src/jobs/gap-wording.js';
import { type LoadedRuleSet, loadRuleSet, shippedSets } from '../../src/jobs/rule-set.js';
import { facts } from '../core/assess/made.js';

const wording = await gapWording(facts());
const sets = await Promise.all((await shippedSets()).map((name) => loadRuleSet(name, '.')));

function ruleLines(rule: Rule): string[] {
  const { labels } = wording;
  const until =
    rule.closes === undefined
      ? 'can be got later too'
      : `until ${milestoneText(wording, rule.closes.moment, rule.closes.seconds).replaceAll('\u00a0', ' ')}`;
  const instead = rule.substitutes.map((what) => substituteText(wording, what)).join(', ');
  return [
    `### ${rule.title}`,
    '',
    `\`${rule.id}\`, ${labels(`rule-weight.${rule.weight}`)}; ${until}`,
    '',
    `${rule.why}`,
    '',
    ...(rule.weightWhy === undefined ? [] : [`- Why it weighs so: ${rule.weightWhy}`]),
    `- How: ${rule.how}`,
    ...(instead === '' ? [] : [`- Stands in for it: ${instead}`]),
    `- Helps to show: ${rule.proves.map((one) => labels(`element.${one}`)).join(', ')}`,
    `- Basis: ${rule.basis}`,
    '',
  ];
}

function setLines({ ruleSet, origin }: LoadedRuleSet, known: ReadonlySet<string>): string[] {
  const added = ruleSet.rules.filter((rule) => !known.has(rule.id));
  const changed = ruleSet.rules.filter((rule) => origin.changed.some((one) => one.rule === rule.id));
  return [
    `# ${ruleSet.title}`,
    '',
    `Set \`${ruleSet.ruleSet}\`, version ${ruleSet.version}, ${ruleSet.rules.length} rules${
      origin.files.length > 1 ? `, extends \`${origin.files[0]?.ruleSet}\`` : ''
    }.`,
    '',
    ...(origin.off.length === 0
      ? []
      : [
          '## Not asked for',
          '',
          '| rule | reason |',
          '| --- | --- |',
          ...byReason(origin.off).map(([why, titles]) => `| ${titles.join('; ')} | ${why} |`),
          '',
        ]),
    ...stage.options.flatMap((name) => {
      const here = [...added, ...changed.filter((rule) => !added.includes(rule))].filter(
        (rule) => rule.stage === name,
      );
      if (here.length === 0) return [];
      return [`## ${wording.labels(`stage.${name}`)}`, '', ...here.flatMap(ruleLines)];
    }),
  ];
}

function byReason(off: LoadedRuleSet['origin']['off']): [why: string, titles: string[]][] {
  const found = new Map<string, string[]>();
  for (const { title, why } of off) found.set(why, [...(found.get(why) ?? []), title]);
  return [...found];
}

/** Link of a heading, as GitHub makes it. */
const anchor = (title: string) =>
  title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');

/** `npx vitest run tests/jobs/rules-page.test.ts -u` writes it anew. */
describe('docs/rules.md', () => {
  it('is made from the shipped sets', async () => {
    const [produce] = sets;
    const base = new Set(produce?.ruleSet.rules.map((rule) => rule.id));
    const page = [
      'The evidence that the shipped rule sets ask for. This page is made from `templates/rule-sets/` by a test; change',
      'the sets, not the page. How to write a set of your own stands in [Rule sets and templates](formats/rule-sets-and-templates.md#rule-sets).',
      '',
      'A basis “common practice” means that the trade does so and no published source is cited. Law is named where it can',
      'apply; whether it does is for the contract and for counsel to say.',
      '',
      'Several can be named together, such as `rules: [frozen, drop-trailer, europe]`. The sets for places and papers extend none and',
      'stand beside one for the goods. Local codes, the contract of carriage and licensed practice rule.',
      '',
      '| set | for | rules |',
      '| --- | --- | --- |',
      ...sets.map(
        ({ ruleSet }) =>
          `| \`${ruleSet.ruleSet}\` | [${ruleSet.title}](#${anchor(ruleSet.title)}) | ${ruleSet.rules.length} |`,
      ),
      '',
      ...sets.flatMap((set, index) => setLines(set, index === 0 ? new Set() : base)),
    ];
    await expect(`${page.join('\n').trimEnd()}\n`).toMatchFileSnapshot(
      join(import.meta.dirname, '../../docs/rules.md'),
    );
  });
});
