import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

export const SRC = resolve(import.meta.dirname, '../../src');
/** Modules that are imported, for their types too, and scripts of workers that are named by their URL. */
const IMPORT =
  /(?:from\s+|import\s*\(\s*|import\s+|new URL\(\s*)['"](\.{1,2}\/[^'"]+\.js|#platform\/[^'"]+)['"]/g;

export const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.[jt]s$/.test(name))
  .map((name) => join(SRC, name));
const known = new Set(files);
const fileOf = (module: string) => (known.has(module) ? module : module.replace(/\.js$/, '.ts'));
/** A piece of the platform is one file on each side, with the same imports: Node's stands for both. */
const moduleOf = (from: string, target: string) =>
  target.startsWith('#platform/')
    ? join(SRC, target.replace('#platform/', 'platform/node/').concat('.js'))
    : resolve(dirname(from), target);

/** Which file of `src` imports which. */
export const imports = files.flatMap((from) =>
  [...readFileSync(from, 'utf8').matchAll(IMPORT)].map(([, target = '']) => ({
    from,
    to: fileOf(moduleOf(from, target)),
  })),
);
