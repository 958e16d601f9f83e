import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ONLY_IN_NODE } from '../outside/browser/only-in-node.js';

const SRC = resolve(import.meta.dirname, '../../src');
/** Rooms of the core that run anywhere. The compiler holds the same ones to it: `src/core/tsconfig.json`. */
const ANYWHERE = [
  ...['model', 'reference', 'ports', 'ledger', 'assess', 'words', 'charts', 'pictures', 'verify'].map(
    (room) => `core/${room}`,
  ),
  'platform/browser',
  'in-page',
];
/** Parts of the library that are the same in Node and in a page. */
const PARTS_ANYWHERE = ['assess.ts', 'reference.ts', 'types.ts'];
/** Pieces of the platform, each with a file for Node and one for browsers, which package.json chooses from. */
const PIECES = ['hash', 'inflate', 'signature'];
const USE_PIECES = ['core/ledger', 'core/verify'];
/** Libraries that run in Node, in a page and in its workers. */
const LIBRARIES = [
  '@handlebars/parser',
  '@noble/hashes/legacy',
  '@noble/hashes/sha2',
  'canonicalize',
  'd3-scale',
  'd3-shape',
  'luxon',
  'mdast',
  'mdast-util-from-markdown',
  'uqr',
  'yaml',
  'zod',
];
const IMPORT = /(?:\bfrom\s+|\bimport\s*\(\s*|^import\s+|\bdeclare module\s+)'([^']+)'/gm;
const OF_NODE =
  /\b(?:Buffer|NodeJS|__dirname|__filename)\b|\b(?:process|global|import\.meta)\.\w|\brequire\(/g;

/** Functions that each engine computes in its own way, to another last digit; `model/exponential.ts` has the needed ones. */
const APPROXIMATE =
  /Math\.(?:a?(?:sin|cos|tan)h?|atan2|cbrt|exp|expm1|hypot|log|log10|log1p|log2|pow)\b|[\w)\]] \*\* [\w(]/g;

const files = [
  ...ANYWHERE.flatMap((room) =>
    readdirSync(join(SRC, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.[jt]s$/.test(name))
      .map((name) => join(room, name)),
  ),
  ...PARTS_ANYWHERE,
].map((name) => ({ name, text: readFileSync(join(SRC, name), 'utf8') }));

describe('the core runs anywhere:', () => {
  it('its files are looked at', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(files.flatMap(({ text }) => [...text.matchAll(IMPORT)]).length).toBeGreaterThan(300);
  });

  it('it imports itself, and libraries that run anywhere', () => {
    const isOwn = (file: string) =>
      ANYWHERE.some((room) => file.startsWith(`${room}/`)) ||
      PARTS_ANYWHERE.includes(file.replace(/\.js$/, '.ts'));
    const isFine = (name: string, to: string) =>
      LIBRARIES.includes(to) ||
      (to.startsWith('.') && isOwn(join(name, '..', to))) ||
      (USE_PIECES.some((room) => name.startsWith(`${room}/`)) &&
        PIECES.some((one) => to === `#platform/${one}`));
    const wrong = files.flatMap(({ name, text }) =>
      [...text.matchAll(IMPORT)]
        .filter(([, to = '']) => !isFine(name, to))
        .map(([, to]) => `${name} imports ${to}`),
    );
    expect(wrong).toEqual([]);
  });

  it('it names nothing that only Node has', () => {
    const wrong = files.flatMap(({ name, text }) =>
      [...text.matchAll(OF_NODE)].map(([word]) => `${name} names ${word}`),
    );
    expect(wrong).toEqual([]);
  });

  it('it computes to the last digit alike in every engine', () => {
    const wrong = files.flatMap(({ name, text }) =>
      [...text.replace(/'[^'\n]*'/g, '').matchAll(APPROXIMATE)].map(([word]) => `${name} uses ${word}`),
    );
    expect(wrong).toEqual([]);
  });

  it('each piece of the platform is there on both sides', () => {
    for (const piece of PIECES)
      for (const side of ['node', 'browser'])
        expect([side, piece, existsSync(join(SRC, 'platform', side, `${piece}.ts`))]).toEqual([
          side,
          piece,
          true,
        ]);
  });
});

describe('the tests of the core run in a browser too,', () => {
  const TESTS = resolve(import.meta.dirname, '..');
  const tests = readdirSync(join(TESTS, 'core'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join('tests/core', name));

  it('but for those that are named, with why', () => {
    const wrong = tests
      .filter((name) => !Object.keys(ONLY_IN_NODE).some((folder) => name.startsWith(`${folder}/`)))
      .flatMap((name) => {
        const text = readFileSync(join(TESTS, '..', name), 'utf8');
        const modules = [...text.matchAll(IMPORT)]
          .map(([, to = '']) => to)
          .filter((to) => /^node:|^(?:sharp|yazl|yauzl)$/.test(to) || /src\/(?:jobs|cli|signing)\//.test(to));
        const names = [...text.matchAll(OF_NODE)]
          .map(([word]) => word)
          .filter((word) => !word.startsWith('import'));
        return [...modules, ...names].map((what) => `${name} needs ${what}`);
      });
    expect(wrong).toEqual([]);
  });

  it('and each of those is there', () => {
    const missing = Object.keys(ONLY_IN_NODE).filter(
      (folder) => !tests.some((name) => name.startsWith(`${folder}/`)),
    );
    expect(missing).toEqual([]);
  });
});
