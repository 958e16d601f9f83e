import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DossierError } from '../../src/core/model/error.js';
import { readRemarks } from '../../src/core/words/remarks.js';

const ROOT = join(import.meta.dirname, '../..');
const file = join(ROOT, 'templates/words/es/remarks.yaml');
const remark = readRemarks({ text: readFileSync(file, 'utf8'), file });

/** Texts that a string or template in the source can give, with a word that is in no sentence for each value. */
function textsOf(literal: string): string[] {
  const whole = literal.slice(1, -1).replaceAll("\\'", "'");
  const choice = /\$\{[^}]*\? '([\w ]+)' : '([\w ]+)'\}/.exec(whole);
  const chosen =
    choice === null ? [whole] : [choice[1], choice[2]].map((word) => whole.replace(choice[0], word ?? ''));
  return chosen.map((text) => text.replaceAll(/\$\{[^}]*\}/g, 'x7'));
}
const STRING = String.raw`('(?:[^'\\\n]|\\.)*'|\`[^\`]*\`)`;
const sourcesIn = (folder: string) =>
  readdirSync(join(ROOT, folder), { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => [name, readFileSync(join(ROOT, folder, name), 'utf8')] as const);
const found = (folder: string, pattern: RegExp, not = /^$/) =>
  sourcesIn(folder)
    .filter(([name]) => !not.test(name))
    .flatMap(([name, text]) =>
      [...text.matchAll(pattern)].map(([, literal = '']) => [name, literal] as const),
    );

describe('what the tool writes beside evidence has Spanish words', () => {
  // Rows that are left out of a log are told on the terminal and in a table, not on the pages.
  const flags = [
    ...found('src/intake', new RegExp(`detail:\\s*${STRING}`, 'g'), /rows|cells/),
    ...found('src/intake', new RegExp(`const detail =\\s*${STRING}`, 'g')),
    ...found('src/intake/photo', new RegExp(`const why =\\s*${STRING}`, 'g')),
    ...found('src/intake/photo', new RegExp(`traces\\.push\\(${STRING}`, 'g')),
    ...found('src/intake/document', new RegExp(`\\? ${STRING}\\n`, 'g'), /words|text/),
    ...found('src/core/assess', new RegExp(`words = ${STRING}`, 'g')).filter(([, text]) =>
      text.includes('looks'),
    ),
  ];
  it('in flags', () => {
    expect(flags.length).toBeGreaterThan(20);
    for (const [name, literal] of flags)
      for (const text of textsOf(literal))
        expect([name, remark('flag', text) !== text]).toEqual([name, true]);
  });

  const reasons = [
    ...found('src/intake', new RegExp(`is: 'none', why: ${STRING}`, 'g')),
    ...found('src/jobs', new RegExp(`is: 'none', why: ${STRING}`, 'g')),
    ...found('src/intake', new RegExp(`const why =\\s*${STRING}`, 'g')),
  ];
  it('in reasons for a missing time', () => {
    expect(reasons.length).toBeGreaterThan(10);
    for (const [name, literal] of reasons)
      for (const text of textsOf(literal))
        expect([name, remark('no-time', text) !== text]).toEqual([name, true]);
  });
});

describe('a sentence of the record', () => {
  const remarks = readRemarks({
    file: 'remarks.yaml',
    text: `flag:
  '{count} of {all} lost': 'de {all} faltan {count}'
  'it ends early: a part is gone; keep it': 'termina antes: falta una parte; guárdelo'
  'it carries {what}': lleva {what}
  embedded files: archivos incrustados
  a form (x+y): un formulario
other:
  lost: perdido
`,
  });
  it.each([
    ['7 of 9 lost', 'de 9 faltan 7'],
    [
      'it carries embedded files, a form (x+y), scripts',
      'lleva archivos incrustados, un formulario, scripts',
    ],
    ['7 of 9 lost; it carries scripts', 'de 9 faltan 7; lleva scripts'],
    [
      'it ends early: a part is gone; keep it; 1 of 2 lost',
      'termina antes: falta una parte; guárdelo; de 2 faltan 1',
    ],
    ['{all} of $& lost', 'de $& faltan {all}'],
    ['1 of 2 lost; 3 of 4 lost', 'de 2 faltan 1; de 4 faltan 3'],
    ['a form (xxy)', 'a form (xxy)'],
    ['lost', 'lost'],
    ['two\nlines', 'two\nlines'],
  ])('%j is said as %j', (written, words) => {
    expect(remarks('flag', written)).toBe(words);
  });

  it('is known only in its own group, so that what a person wrote stays as it is', () => {
    expect(remarks('caption', '7 of 9 lost')).toBe('7 of 9 lost');
    expect(remarks('other', 'lost')).toBe('perdido');
  });

  it.each([
    ['a place that is gone', "flag:\n  a: b\n  '{n} left': quedan\n", 3],
    ['a place too many', "flag:\n  '{n} left': quedan {n} de {m}\n", 2],
    ['a list', 'flag:\n  - a\n', 1],
    ['words twice', 'flag:\n  a: b\n  a: c\n', 3],
  ])('that is wrongly said is refused with file and line: %s', (_, yaml, row) => {
    let error: unknown;
    try {
      readRemarks({ text: yaml, file: 'es/remarks.yaml' });
    } catch (thrown) {
      error = thrown;
    }
    if (!(error instanceof DossierError)) throw new Error('it was accepted');
    expect([error.code, error.where]).toEqual(['bad-template', { file: 'es/remarks.yaml', row }]);
  });
});
