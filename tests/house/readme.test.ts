import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const read = (file: string) => readFileSync(join(ROOT, file), 'utf8');
const scripts = Object.keys(
  (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts,
);
const program = read('src/cli/program.ts');

/** Paths in a page: targets of links and pictures, and what looks like a file or folder of this tree. */
function paths(page: string): string[] {
  const linked = [...page.matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(([, path = '']) => path);
  const named = [
    ...page.matchAll(/(?<![\w./-])(?:src|tests|templates|docs|fixtures|\.ci)\/[\w./-]*(?![\w./<-])/g),
  ]
    .map(([path]) => path.replace(/[.,]$/, ''))
    .filter((path) => !path.endsWith('/findings/'));
  return [...new Set([...linked, ...named])];
}

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const page = read(name);

  it('names only files and folders that there are', () => {
    const found = paths(page);
    expect(found.length).toBeGreaterThan(5);
    expect(found.filter((path) => !existsSync(join(dirname(join(ROOT, name)), path)))).toEqual([]);
  });

  it('names only scripts that there are', () => {
    const named = [...page.matchAll(/npm run ([\w:-]+)/g)].map(([, script = '']) => script);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => !scripts.includes(script))).toEqual([]);
  });
});

describe('the tour in README.md', () => {
  it('names only commands that there are', () => {
    const typed = [...read('README.md').matchAll(/(?:^ {4}|`)dossier ([a-z]+)/gm)].map(([, one = '']) => one);
    expect(typed.length).toBeGreaterThan(10);
    expect(typed.filter((one) => !program.includes(`'./commands/${one}.js'`))).toEqual([]);
  });

  it('asks for the version of Node that the package asks for', () => {
    const { engines } = JSON.parse(read('package.json')) as { engines: { node: string } };
    expect(read('README.md')).toContain(`Node ${engines.node.replace('>=', '')} or later`);
    expect(read('DEVELOPERS.md')).toContain(`Node ${engines.node.replace('>=', '')} or later`);
  });
});
