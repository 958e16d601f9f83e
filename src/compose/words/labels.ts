import { parseDocument } from 'yaml';
import { z } from 'zod';
import { DossierError } from '../../model/error.js';

const groups = z.record(z.string(), z.record(z.string(), z.string()));

/** The short words of one language: headings, kinds, outcomes. */
export interface Labels {
  /** The word, by `group.name`; a missing one is an error of the templates. */
  (key: string): string;
  /** The word if there is one. */
  find(key: string): string | undefined;
}

/** Reads labels.yaml: groups of names, each with its words; a carrier's own lines take the place of the shipped. */
export function readLabels(yaml: string, file: string, own?: { text: string; file: string }): Labels {
  const words = new Map([...wordsIn(yaml, file), ...(own === undefined ? [] : wordsIn(own.text, own.file))]);
  const find = (key: string) => words.get(key);
  return Object.assign(
    (key: string): string => {
      const found = find(key);
      if (found === undefined)
        throw new DossierError('bad-template', `there are no words for "${key}"`, {
          where: { file, field: key },
          fix: 'Add the line; the shipped templates/words/en/labels.yaml has it.',
        });
      return found;
    },
    { find },
  );
}

/**
 * Labels of a copy that leaves evidence out: where group `in-copy` has words for a label, such as `none-contacts` for
 * `none.contacts`, they stand in its place. What a copy does not hold may be in the record.
 */
export function labelsOfCopy(labels: Labels): Labels {
  const find = (key: string) => labels.find(`in-copy.${key.replace('.', '-')}`) ?? labels.find(key);
  return Object.assign((key: string): string => find(key) ?? labels(key), { find });
}

function wordsIn(yaml: string, file: string): (readonly [string, string])[] {
  const document = parseDocument(yaml);
  const [error] = document.errors;
  if (error !== undefined)
    throw new DossierError('bad-template', error.message.split('\n')[0] ?? 'not YAML', {
      where: { file, ...(error.linePos === undefined ? {} : { row: error.linePos[0].line }) },
      fix: 'Compare the file with the shipped templates/words/en/labels.yaml.',
    });
  const read = groups.safeParse(document.toJS());
  if (!read.success)
    throw new DossierError(
      'bad-template',
      `labels are not groups of name: words (${read.error.issues[0]?.path.join('.') ?? ''})`,
      {
        where: { file },
        fix: 'Compare the file with the shipped templates/words/en/labels.yaml.',
      },
    );
  return Object.entries(read.data).flatMap(([group, names]) =>
    Object.entries(names).map(([name, value]) => [`${group}.${name}`, value] as const),
  );
}
