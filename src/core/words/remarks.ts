import { z } from 'zod';
import { DossierError } from '../model/error.js';
import { readTemplateYaml, type YamlFile } from './template-yaml.js';

const groups = z.record(z.string(), z.record(z.string(), z.string().min(1)));

/**
 * Translates a sentence that the tool wrote into the record in English. An unknown sentence is returned as written:
 * a person may have written it.
 * @param group what the sentence was written for, so that a person's caption is never taken for a reason
 */
export type TranslateRemark = (group: string, text: string) => string;

export const untranslated: TranslateRemark = (_, text) => text;

interface Pattern {
  written: RegExp;
  places: string[];
  said: string;
}

const FIX = 'Compare the file with the shipped templates/words/es/remarks.yaml.';
const PLACE = /\{(\w+)\}/g;

/**
 * Parses remarks.yaml: by group, the sentence as it is kept, with `{places}` for what varies, and its translation.
 * Throws DossierError `bad-template` with file and line, also for a translation that misses a place or adds one.
 */
export function readRemarks(yaml: YamlFile): TranslateRemark {
  const { read, rowOf } = readTemplateYaml(groups, yaml, {
    what: 'remarks are not groups of sentence: words',
    fix: FIX,
  });
  const patterns = new Map(
    Object.entries(read).map(([group, sentences]) => [
      group,
      Object.entries(sentences).map(([written, said]): Pattern => {
        const places = placesIn(written);
        if (places.join() !== placesIn(said).join())
          throw new DossierError('bad-template', `"${written}" and its words do not have the same places`, {
            where: { file: yaml.file, row: rowOf([group, written]) },
            fix: FIX,
          });
        return { written: patternOf(written), places: placesAsWritten(written), said };
      }),
    ]),
  );
  return (group, text) => inParts(patterns.get(group) ?? [], text, '; ');
}

const placesAsWritten = (sentence: string) => [...sentence.matchAll(PLACE)].map(([, name = '']) => name);
const placesIn = (sentence: string) => placesAsWritten(sentence).sort();

function patternOf(sentence: string): RegExp {
  const parts = sentence.split(/\{\w+\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.join('(.+?)')}$`, 'su');
}

/** A text can hold several sentences separated by semicolons, and in what varies by commas. */
function inParts(patterns: readonly Pattern[], text: string, mark: string): string {
  const parts = text.split(mark);
  const from = (start: number): string[] => {
    if (start === parts.length) return [];
    // The shortest known beginning is tried first, because a sentence may contain the separator.
    for (let end = start + 1; end <= parts.length; end++) {
      const said = sentence(patterns, parts.slice(start, end).join(mark));
      if (said !== undefined) return [said, ...from(end)];
    }
    return [parts[start] ?? '', ...from(start + 1)];
  };
  return from(0).join(mark);
}

function sentence(patterns: readonly Pattern[], text: string): string | undefined {
  for (const { written, places, said } of patterns) {
    const values = written.exec(text)?.slice(1);
    if (values === undefined) continue;
    const shown = new Map(
      places.map((name, i) => {
        const value = values[i] ?? '';
        return [name, inParts(patterns, value, value.includes('; ') ? '; ' : ', ')];
      }),
    );
    return said.replaceAll(PLACE, (_, name: string) => shown.get(name) ?? '');
  }
  return undefined;
}
