import { z } from 'zod';
import { DossierError } from '../model/error.js';
import { readTemplateYaml, type YamlFile } from './template-yaml.js';

const groups = z.record(z.string(), z.record(z.string(), z.string()));

/** The labels of one language: headings, kinds, outcomes. */
export interface Labels {
  /** The label by `group.name`; a missing one is an error of the templates. */
  (key: string): string;
  /** The label, if there is one. */
  find(key: string): string | undefined;
}

/** Parses labels.yaml: groups of names, each with its words; a carrier's own lines replace the shipped ones. */
export function readLabels(yaml: YamlFile, own?: YamlFile): Labels {
  const shipped = wordsIn(yaml);
  const words = new Map([...shipped.words, ...(own === undefined ? [] : ownWordsIn(own, shipped).words)]);
  const find = (key: string) => words.get(key);
  return Object.assign(
    (key: string): string => {
      const found = find(key);
      if (found === undefined)
        throw new DossierError('bad-template', `there are no words for "${key}"`, {
          where: { file: yaml.file, field: key },
          fix: 'Add the line; the shipped templates/words/en/labels.yaml has it.',
        });
      return found;
    },
    { find },
  );
}

/**
 * Labels of a redacted copy: words of the group `in-copy`, such as `none-contacts` for `none.contacts`, replace the
 * label. What a copy does not hold may be in the record.
 */
export function redactedCopyLabels(labels: Labels): Labels {
  const find = (key: string) => labels.find(`in-copy.${key.replace('.', '-')}`) ?? labels.find(key);
  return Object.assign((key: string): string => find(key) ?? labels(key), { find });
}

interface ReadWords {
  words: ReadonlyMap<string, string>;
  rowOf: (key: string) => number;
}

function wordsIn(yaml: YamlFile): ReadWords {
  const { read, rowOf } = readTemplateYaml(groups, yaml, {
    what: 'labels are not groups of name: words',
    fix: 'Compare the file with the shipped templates/words/en/labels.yaml.',
  });
  return {
    words: new Map(
      Object.entries(read).flatMap(([group, names]) =>
        Object.entries(names).map(([name, value]) => [`${group}.${name}`, value] as const),
      ),
    ),
    rowOf: (key) => rowOf(key.split('.')),
  };
}

/** A name that the shipped labels lack is a typing error: its words would never be printed. */
function ownWordsIn(yaml: YamlFile, shipped: ReadWords): ReadWords {
  const own = wordsIn(yaml);
  for (const key of own.words.keys())
    if (!shipped.words.has(key))
      throw new DossierError('bad-template', `there is no label "${key}"`, {
        where: { file: yaml.file, row: own.rowOf(key), field: key },
        fix: 'Leave the line out, or write the name as it stands in the shipped templates/words/en/labels.yaml.',
      });
  return own;
}
