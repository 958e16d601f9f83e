import Handlebars from 'handlebars';
import { DossierError } from '../model/error.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Block, Inline } from './blocks.js';
import { escapeMarkdown } from './escape.js';
import { type FactNames, type Facts, ShownFact, type ShownFacts, showFacts } from './facts.js';
import type { Format } from './format.js';
import type { Labels } from './labels.js';
import { readMarkdown } from './tree.js';

/** The sentences of one language, filled with facts. */
export interface Words {
  has(name: string): boolean;
  /** A template's blocks. `exhibits` are the numbers that `{{exhibits}}` refers to. */
  blocks(name: string, facts?: Facts, exhibits?: readonly number[]): Block[];
  /** The inline content of a template of one paragraph. */
  line(name: string, facts?: Facts, exhibits?: readonly number[]): Inline[];
  /** The filled template itself, to stand in another one. */
  markdown(name: string, facts?: Facts, exhibits?: readonly number[]): string;
}

export interface WordsOptions {
  /** Text of each template by its name without `.md`, such as `findings/refused`. */
  templates: ReadonlyMap<string, string>;
  labels: Labels;
  format: Format;
  names: FactNames;
  /** Folder of the templates, and where each lies, for error messages. */
  folder: string;
  files?: ReadonlyMap<string, string>;
  /** The words for a place that a person fills in by hand; asked once for each such place that is printed. */
  blank?: (id: string) => string;
  /** So many exhibits of a sentence are named, the others counted; four if not given. */
  mostExhibits?: number;
}

/** The template engine's own words, but for the commonest slip. */
function whatIsWrong(cause: unknown): string {
  const said = (cause instanceof Error ? cause.message : String(cause)).replace(/\s*\n\s*/g, ' ');
  const unknown = /^"([^"]+)" not defined in /.exec(said);
  return unknown === null ? said : `there is no fact "${unknown[1]}" here`;
}

/** The row that the template engine names, in its message or beside it. */
function rowOf(cause: unknown): number | undefined {
  if (!(cause instanceof Error)) return undefined;
  const said = /Parse error on line (\d+)|- (\d+):\d+$/.exec(cause.message);
  const row = Number(said?.[1] ?? said?.[2]);
  return Number.isInteger(row) && row > 0 ? row : undefined;
}

/**
 * Templates see facts only as printed words: values are escaped before Handlebars sees them and are never
 * compiled, so what a person wrote can't become Handlebars or Markdown.
 */
export function wordsFrom(options: WordsOptions): Words {
  const { templates, format, names, folder } = options;
  const handlebars = environment(options);
  const compiled = new Map<string, Handlebars.TemplateDelegate>();

  const template = (name: string) => {
    const known = compiled.get(name);
    if (known !== undefined) return known;
    const source = templates.get(name);
    if (source === undefined)
      throw new DossierError('bad-template', `there is no template ${name}.md`, {
        where: { file: folder },
        fix: 'Copy the shipped file of that name into the folder.',
      });
    const made = handlebars.compile(source, {
      noEscape: true,
      strict: true,
      knownHelpersOnly: true,
      knownHelpers: {
        exhibits: true,
        word: true,
        words: true,
        counted: true,
        plural: true,
        some: true,
        several: true,
        moved: true,
        blank: true,
      },
    });
    compiled.set(name, made);
    return made;
  };

  const markdown = (name: string, facts: Facts = {}, exhibits: readonly number[] = []): string => {
    const shown: ShownFacts = showFacts(facts, format, names);
    try {
      return template(name)(shown, {
        data: { exhibits },
        allowProtoMethodsByDefault: false,
        allowProtoPropertiesByDefault: false,
      });
    } catch (cause) {
      if (cause instanceof DossierError) throw cause;
      const row = rowOf(cause);
      throw new DossierError('bad-template', `${name}.md: ${whatIsWrong(cause)}`, {
        where: {
          file: options.files?.get(name) ?? `${folder}/${name}.md`,
          ...omitUndefined({ row }),
        },
        fix: 'Templates may use the facts listed for them, and the helpers exhibits, word, words, counted, plural, some, several, moved, blank.',
        cause,
      });
    }
  };
  const blocks: Words['blocks'] = (...asked) => readMarkdown(markdown(...asked));

  return {
    has: (name) => templates.has(name),
    markdown,
    blocks,
    line: (name, facts, exhibits) =>
      blocks(name, facts, exhibits).flatMap((block) => (block.is === 'paragraph' ? block.of : [])),
  };
}

function environment({ labels, blank, mostExhibits = 4 }: WordsOptions) {
  const own = Handlebars.create();
  const raw = (value: unknown) => (value instanceof ShownFact ? value.raw : String(value ?? ''));
  const word = (value: unknown) => {
    const name = raw(value);
    return escapeMarkdown(labels.find(`word.${name}`) ?? name);
  };
  own.registerHelper('exhibits', (options: Handlebars.HelperOptions) => {
    const numbers: unknown = options.data?.exhibits;
    if (!Array.isArray(numbers) || numbers.length === 0) return '';
    const shown = numbers.slice(0, mostExhibits).map((n) => `[${n}](exhibit:${n})`);
    const rest = numbers.length - shown.length;
    return ` (${shown.join(', ')}${rest > 0 ? `, ${escapeMarkdown(labels('exhibit.more').replace('N', String(rest)))}` : ''})`;
  });
  own.registerHelper('word', word);
  own.registerHelper('words', (value: unknown) =>
    raw(value)
      .split(/\s*,\s*/)
      .map(word)
      .join(', '),
  );
  own.registerHelper('plural', (count: unknown, one: unknown, many: unknown) => (count === 1 ? one : many));
  own.registerHelper(
    'counted',
    (count: unknown, one: unknown, many: unknown) =>
      `${escapeMarkdown(String(count))} ${String(count === 1 ? one : many)}`,
  );
  own.registerHelper('some', (value: unknown) => (value instanceof ShownFact ? value.some : Boolean(value)));
  own.registerHelper('moved', (value: unknown, up: unknown, down: unknown, none: unknown) => {
    const moved = value instanceof ShownFact ? value.moved : undefined;
    if (moved === undefined) return '';
    const verb = { up, down, none }[moved.way];
    return moved.way === 'none' ? String(verb) : `${String(verb)} ${escapeMarkdown(moved.by)}`;
  });
  own.registerHelper('blank', (id: unknown) => {
    if (blank === undefined) throw new Error('only letters have places to fill in');
    return `**${escapeMarkdown(`[________ ${blank(raw(id))}]`)}**`;
  });
  own.registerHelper('several', (count: unknown) => typeof count === 'number' && count > 1);
  return own;
}
