import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const FOLDER = join(resolve(import.meta.dirname, '../..'), 'docs/decisions');
const read = (name: string) => readFileSync(join(FOLDER, name), 'utf8');
const files = readdirSync(FOLDER)
  .filter((name) => name !== 'README.md')
  .sort();

describe('docs/decisions', () => {
  it('numbers its pages without gap or double', () => {
    expect(files.map((name) => Number(name.slice(0, 4)))).toEqual(files.map((_, i) => i + 1));
  });

  it('lists each page under its number and title', () => {
    const listed = [...read('README.md').matchAll(/^(\d+)\. \[(.*)\]\((.*)\)$/gm)];
    const pages = files.map((name, i) => [
      String(i + 1),
      read(name)
        .split('\n')[0]
        ?.replace(/^# (?:\d+[.:]? )?/, ''),
      name,
    ]);
    expect(listed.map(([, number, title, name]) => [number, title, name])).toEqual(pages);
  });
});
