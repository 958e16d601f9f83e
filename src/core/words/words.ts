import { DossierError } from '../model/error.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Block, Inline } from './blocks.js';
import { type FactNames, type Facts, showFacts } from './facts.js';
import type { Format } from './format.js';
import { helpersFor } from './helpers.js';
import type { Labels } from './labels.js';
import { readTemplate, type Template, TemplateFault } from './template.js';
import { readMarkdown } from './tree.js';

/** The sentences of one language, filled with facts. */
export interface Words {
  has(name: string): boolean;
  /** A template's blocks. `exhibits` are the numbers for `{{exhibits}}`. */
  blocks(name: string, facts?: Facts, exhibits?: readonly number[]): Block[];
  /** The inline content of a template of one paragraph. */
  line(name: string, facts?: Facts, exhibits?: readonly number[]): Inline[];
  /** The filled template as Markdown, to be part of another one. */
  markdown(name: string, facts?: Facts, exhibits?: readonly number[]): string;
}

export interface WordsOptions {
  /** Text of each template by its name without `.md`, such as `findings/refused`. */
  templates: ReadonlyMap<string, string>;
  labels: Labels;
  format: Format;
  names: FactNames;
  /** Folder of the templates, and the place of each, for error messages. */
  folder: string;
  files?: ReadonlyMap<string, string>;
  /** The words of a place to fill in by hand; called once for each such place that is printed. */
  blank?: (id: string) => string;
  /** Exhibits named in a sentence, the others counted; four by default. */
  mostExhibits?: number;
}

/**
 * Templates see facts only as printed words: values are escaped before a template sees them and are never read as one,
 * so what a person wrote can't become Handlebars or Markdown.
 */
export function wordsFrom(options: WordsOptions): Words {
  const { templates, format, names, labels, folder } = options;
  const helpers = helpersFor(options);
  const read = new Map<string, Template>();

  const template = (name: string): Template => {
    const known = read.get(name);
    if (known !== undefined) return known;
    const source = templates.get(name);
    if (source === undefined)
      throw new DossierError('bad-template', `there is no template ${name}.md`, {
        where: { file: folder },
        fix: 'Copy the shipped file of that name into the folder.',
      });
    const made = readTemplate(source, helpers);
    read.set(name, made);
    return made;
  };

  const markdown = (name: string, facts: Facts = {}, exhibits: readonly number[] = []): string => {
    const shown = showFacts(facts, format, names, labels);
    try {
      return template(name)(shown, { exhibits });
    } catch (cause) {
      if (!(cause instanceof TemplateFault)) throw cause;
      throw new DossierError('bad-template', `${name}.md: ${cause.message}`, {
        where: {
          file: options.files?.get(name) ?? `${folder}/${name}.md`,
          ...omitUndefined({ row: cause.row }),
        },
        fix: `Templates may use the facts listed for them, #if, #unless and #each, and the helpers ${[...helpers.keys()].join(', ')}.`,
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
