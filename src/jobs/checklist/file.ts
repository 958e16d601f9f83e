import { parse, YAMLParseError } from 'yaml';
import { DossierError } from '../../core/model/error.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';

/** Answers by box number; empty boxes are absent. */
export type ChecklistAnswers = ReadonlyMap<number, string>;

/**
 * Reads a typed checklist: YAML `number: answer`, lines `12: 34.2` or `12. 34.2`, or without numbers one answer a
 * line in the order of the boxes, an empty line for an empty box.
 * Throws DossierError `bad-value` for a number that the form does not have or that stands twice, and for YAML that
 * can't be read.
 */
export function readAnswers(text: string, count: number, file: string): ChecklistAnswers {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const answers = new Map<number, string>();
  const put = (number: number, answer: string, row?: number) => {
    const where = { file, ...omitUndefined({ row }) };
    if (!(number >= 1 && number <= count))
      throw new DossierError('bad-value', `this form has no box ${number}; its boxes are 1 to ${count}`, {
        where,
        fix: 'Print the form again with dossier checklist, and compare the numbers.',
      });
    if (answers.has(number))
      throw new DossierError('bad-value', `box ${number} is answered twice`, { where });
    if (answer.trim() !== '') answers.set(number, answer.trim());
  };
  if (/\.ya?ml$/i.test(file)) {
    for (const [key, value] of Object.entries(yamlMap(text, file)))
      if (value !== null) put(Number(key), answerOf(value, key, file));
    return answers;
  }
  const numbered = lines.filter((line) => line.trim() !== '').every((line) => NUMBERED.test(line));
  while (lines.at(-1)?.trim() === '') lines.pop();
  lines.forEach((line, i) => {
    const [, number, answer = ''] = NUMBERED.exec(line) ?? [];
    if (numbered && number !== undefined) put(Number(number), answer, i + 1);
    else if (!numbered) put(i + 1, line, i + 1);
  });
  return answers;
}

/** A time such as 4:10 is no box number: a blank or the end of the line must follow the mark. */
const NUMBERED = /^\s*(\d{1,3})[:.)](?:\s+(.*))?$/;

function answerOf(value: unknown, box: string, file: string): string {
  if (typeof value === 'string') return value;
  throw notAChecklist(`the answer in box ${box} is a list, not words: put it in quotes`, file);
}

function yamlMap(text: string, file: string): object {
  const read = yamlValue(text, file);
  if (read !== null && typeof read === 'object' && !Array.isArray(read)) return read;
  throw notAChecklist('the checklist is not a list of number: answer', file);
}

function yamlValue(text: string, file: string): unknown {
  try {
    // A schema of strings only, so that 4:10 stays a time of day and 0644 a seal number. No answer needs an alias,
    // and aliases of aliases could fill the memory.
    return parse(text, { schema: 'failsafe', stringKeys: true, prettyErrors: false, maxAliasCount: 0 });
  } catch (cause) {
    const row = cause instanceof YAMLParseError ? text.slice(0, cause.pos[0]).split('\n').length : undefined;
    throw notAChecklist(cause instanceof Error ? cause.message : 'not YAML', file, row);
  }
}

const notAChecklist = (message: string, file: string, row?: number) =>
  new DossierError('bad-value', message, {
    where: { file, ...omitUndefined({ row }) },
    fix: 'Write one line for each box that was filled in, such as 12: 34.2',
  });
