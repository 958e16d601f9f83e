import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ComposeInput } from '../../src/compose/input.js';
import { goodsTable } from '../../src/core/reference/goods.js';
import { loadQuotations } from '../../src/core/reference/quotations.js';
import { sources } from '../../src/core/reference/sources.js';

/** Code between backticks: commands and names of files, the same in every language. */
export const codeOf = (template: string) =>
  [...template.matchAll(/```[\s\S]*?```|`[^`\n]+`/g)].map(([code]) => code);

/** English words that a Spanish page of ours never has. */
export const ENGLISH =
  /(?<!\p{L})(the|of|was|were|with|and|or|from|to|at|by|not|is|are|has|had|this|that|which|it|its|for|without|within|between|after|before|until|no one|nothing|none|time|record|reading|unit|load|loading|seal|bill|above|below|when|what|who|air|product|page|Mon|Tue|Wed|Thu|Fri|Sat|Sun|Jan|Apr|Aug|Dec|July|AM|PM)(?!\p{L})/gu;

/** Each of them with what stands around it. */
export const englishIn = (text: string): string[] =>
  [...text.matchAll(ENGLISH)].map(({ index }) => text.slice(Math.max(0, index - 50), index + 50));

/** What publications say, in their own words. */
const quotations = await loadQuotations();

/** Every text below a value. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return [];
  return Object.values(value).flatMap(textsIn);
}

/**
 * The text of a Spanish dossier without what people, rules and published tables wrote, which stands in it as it was
 * written.
 */
export function ownWords(text: string, input: ComposeInput): string {
  const written = [
    ...textsIn(input.state),
    ...textsIn(input.assessment),
    ...textsIn(input.attachments.map((one) => [one.name, one.description])),
    ...textsIn(goodsTable),
    ...textsIn([...sources.values()]),
    ...quotations.values(),
    ...codeOf(
      readFileSync(join(import.meta.dirname, '../../templates/words/es/sections/verify.md'), 'utf8'),
    ).flatMap((code) => code.split('\n')),
    'Signature is Valid.',
    'Total document signed',
    'common practice',
    `${input.tool.name} ${input.tool.version}`,
  ].filter((one) => /\s|\.\w/.test(one.trim()) && /[a-z]{2}/i.test(one));
  const squeezed = (one: string) => one.replace(/[`\s]+/g, ' ').trim();
  return [...new Set(written.map(squeezed))]
    .sort((a, b) => b.length - a.length)
    .reduce(
      (rest, one) => (one.length < 4 ? rest : rest.replaceAll(one, '·')),
      squeezed(text).replaceAll('load-dossier', '·'),
    );
}
