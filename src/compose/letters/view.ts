import { join } from 'node:path';
import type { Day } from '../../core/model/claim.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import type { Money } from '../../core/model/money.js';
import type { Finding } from '../../core/model/results.js';
import { type Inline, plain } from '../../core/words/blocks.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { type FactNames, type Facts, MarkdownText } from '../../core/words/facts.js';
import { type Format, formatFor } from '../../core/words/format.js';
import { type Labels, readLabels } from '../../core/words/labels.js';
import { type Words, wordsFrom } from '../../core/words/words.js';
import { exhibitNumbers } from '../exhibits.js';
import { loadLanguageWords } from '../language.js';
import { type LoadedTemplates, loadOver, loadTemplates } from '../load-words.js';
import { SHIPPED } from '../templates.js';
import { findingPlace } from '../view/compartment-words.js';
import { localizedFacts } from '../view/findings.js';
import { factNames } from '../view/names.js';
import type { CorrespondenceInput } from './input.js';

/** Everything needed to write one letter. */
export interface LetterView<I extends CorrespondenceInput = CorrespondenceInput> {
  input: I;
  format: Format;
  names: FactNames;
  words: Words;
  labels: Labels;
  number: (id: EvidenceId) => number | undefined;
  money: (amount: Money) => string;
  day: (day: Day) => string;
  /**
   * ` (12, 14)` as links, or ` (entry 31 of the record)` where the copy has no such exhibit; every stated fact has
   * one.
   */
  source: (evidence: readonly EvidenceId[], seq?: number) => MarkdownText;
  /** The sentence of a finding with its exhibits; empty when the copy has no exhibit for it. */
  sentence: (finding: Finding) => MarkdownText | undefined;
  /** Facts for a finding's sentence. */
  facts: (finding: Finding) => Facts;
  /** A place to fill in outside of templates. */
  blank: (id: string) => Inline[];
  /** Places to fill in, in the order of printing. */
  blanks: () => string[];
}

/** Reads the words of the language and builds the view. Throws DossierError `bad-template`. */
export async function letterView<I extends CorrespondenceInput>(input: I): Promise<LetterView<I>> {
  const { language, templates, state } = input;
  const dossier = await loadLanguageWords(language, templates);
  const letters = lettersIn(input);
  const labels = layered(readLabels(letters.labels, letters.ownLabels), dossier.labels);
  const format = formatFor(
    { ...state.delivery.show, language },
    { zoneUnknown: labels('time.zone-unknown'), notKnown: labels('time.not-known') },
  );
  const names = factNames(state.delivery, dossier.remarks);
  const blanks: string[] = [];
  const toFillIn = (id: string) => {
    const name = labels(`blank.${id}`);
    blanks.push(name);
    return name;
  };
  const words = wordsFrom({
    templates: new Map([...dossier.templates, ...prefixed(letters.templates)]),
    files: new Map([...dossier.files, ...prefixed(letters.files)]),
    labels,
    format,
    names,
    folder: join(templates.own ?? SHIPPED, 'letters', language),
    blank: toFillIn,
    // A letter stands alone: its reader can't look up the other exhibits.
    mostExhibits: Number.POSITIVE_INFINITY,
  });
  const number = exhibitNumbers(input.exhibits);
  const numbers = (ids: readonly EvidenceId[]) =>
    [...new Set(ids.map(number))].filter((n): n is number => n !== undefined).sort((a, b) => a - b);
  const source: LetterView['source'] = (evidence, seq) => {
    const found = numbers(evidence).map((n) => `[${n}](exhibit:${n})`);
    if (found.length > 0) return new MarkdownText(` (${found.join(', ')})`);
    if (seq === undefined) return new MarkdownText('');
    return new MarkdownText(` (${escapeMarkdown(labels('letter.entry').replace('N', String(seq)))})`);
  };
  return {
    input,
    format,
    names,
    words,
    labels,
    number,
    money: format.statedMoney,
    day: format.letterDay,
    source,
    facts: (finding) => localizedFacts(dossier.remarks, finding),
    sentence: (finding) => {
      const found = numbers(finding.evidence);
      if (found.length === 0) return undefined;
      const facts = localizedFacts(dossier.remarks, finding);
      const place = escapeMarkdown(findingPlace(labels, finding));
      const said = place + words.markdown(`findings/${finding.id}`, facts, found).trim();
      // Some sentences name no exhibits in the dossier, where they are printed beside them.
      return new MarkdownText(
        said.includes('](exhibit:') ? said : `${said.replace(/\.$/, '')}${source(finding.evidence)}.`,
      );
    },
    blank: (id) => [{ is: 'strong', of: plain(`[________ ${toFillIn(id)}]`) }],
    blanks: () => [...blanks],
  };
}

/** Shipped letters of a language, overridden by the carrier's own. */
function lettersIn({ language, templates }: CorrespondenceInput): LoadedTemplates {
  const shipped = join(SHIPPED, 'letters', language);
  const { own, changed } = templates;
  return own !== undefined && [...changed].some((name) => name.startsWith(`letters/${language}/`))
    ? loadOver(shipped, join(own, 'letters', language))
    : loadTemplates(shipped);
}

const prefixed = (texts: ReadonlyMap<string, string>) =>
  [...texts].map(([name, text]) => [`letters/${name}`, text] as const);

/** The first labels, and the second where the first lack a word. */
function layered(first: Labels, second: Labels): Labels {
  const find = (key: string) => first.find(key) ?? second.find(key);
  return Object.assign((key: string) => find(key) ?? first(key), { find });
}
