import { readFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { SHIPPED } from '../compose/shipped.js';
import { sha256Of } from '../core/ledger/tree.js';
import type { Language } from '../core/model/delivery.js';
import { DossierError, type Where } from '../core/model/error.js';
import type { Sha256 } from '../core/model/evidence.js';
import type { RuleSet, RuleSetOrigin } from '../core/model/rule-set.js';
import type { RuleSetWords } from '../core/model/rule-words.js';
import { type ResolvedRuleSet, resolveRuleSet } from '../intake/rule-set/resolve.js';
import { readRuleWords, resolveRuleWords } from '../intake/rule-set/words.js';
import { type ParsedRuleSetFile, readRuleSetFile } from '../intake/rule-set-file.js';
import { prepared } from '../platform/node/prepared.js';

const RULE_SETS = join(SHIPPED, 'rule-sets');
/** The name under which the build stores a resolved chain of files. */
export const RESOLVED = 'rule-set';
/** A longer chain of extending sets is a mistake. */
const MOST_FILES = 10;

/** A rule set with all that it extends worked in. */
export interface LoadedRuleSet {
  ruleSet: RuleSet;
  /** SHA-256 of `text`. */
  sha256: Sha256;
  /**
   * The rule set applied: the file itself or, where it extends others, all files as YAML documents one after the
   * other, the extended one first.
   */
  text: string;
  origin: RuleSetOrigin;
  /** The files that took part, the one extended first. */
  files: readonly { path: string; file: ParsedRuleSetFile }[];
}

/** A file to be read, and where it was named. */
interface Named {
  path: string;
  name: string;
  by: () => Where;
}

/**
 * The rule set that a delivery names: a shipped one by its name, else a path relative to the delivery. Extended
 * sets are found in the same way from their own folder. Throws DossierError `bad-rule-set` when one is missing or
 * invalid, or when sets extend one another in a circle.
 */
export async function loadRuleSet(named: string, folder: string): Promise<LoadedRuleSet> {
  const kept = shipped.get(named);
  if (kept !== undefined) return kept;
  const files = await readChain(named, folder);
  const chain = files.map(({ file }) => file);
  const text = together(chain);
  const allShipped = files.every(({ path }) => dirname(path) === RULE_SETS);
  // The names of files are part of the result, and a copy of a shipped file can have another name.
  const resolved = allShipped ? prepared<ResolvedRuleSet>(RESOLVED, text) : undefined;
  const loaded = {
    ...(resolved ?? resolveRuleSet(chain)),
    text,
    sha256: sha256Of(Buffer.from(text, 'utf8')),
    files,
  };
  if (isShipped(named)) shipped.set(named, loaded);
  return loaded;
}

/** Shipped sets by name: they never change, and reading one takes longer than evaluating it. */
const shipped = new Map<string, LoadedRuleSet>();
const isShipped = (named: string) => /^[a-z0-9-]+$/.test(named);

/**
 * The words of the rules in a language, for the pages: beside each rule file, a file of the same name in a folder
 * named by the language. Without one, rules stay as they were written. Throws DossierError `bad-rule-set` with file
 * and line.
 */
export async function loadRuleWords(
  { files }: Pick<LoadedRuleSet, 'files'>,
  language: Language,
): Promise<RuleSetWords> {
  return resolveRuleWords(
    await Promise.all(
      files.map(async ({ path, file }) => {
        const name = `${language}/${basename(path)}`;
        const text = await wordsBeside(join(dirname(path), name), name);
        return { file, words: text === undefined ? undefined : readRuleWords(text, name, file) };
      }),
    ),
  );
}

async function wordsBeside(path: string, name: string): Promise<string | undefined> {
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && (cause.code === 'ENOENT' || cause.code === 'ENOTDIR'))
      return undefined;
    throw new DossierError('bad-rule-set', 'the words of the rules cannot be read', {
      where: { file: name },
      cause,
    });
  }
}

/** The named file and those that it extends, the extended one first. */
async function readChain(named: string, folder: string): Promise<LoadedRuleSet['files'][number][]> {
  const chain: LoadedRuleSet['files'][number][] = [];
  const seen = new Map<string, string>();
  let next: Named | undefined = locate(named, folder, folder, () => ({
    file: 'delivery.yaml',
    field: 'rules',
  }));
  while (next !== undefined) {
    const here: Named = next;
    if (seen.has(here.path) || chain.length >= MOST_FILES)
      throw new DossierError(
        'bad-rule-set',
        `${here.name} extends itself, by way of ${[...seen.values()].join(', ')}`,
        {
          where: here.by(),
          fix: 'Let one of them stand on its own, without extends.',
        },
      );
    seen.set(here.path, here.name);
    const file = readRuleSetFile(await textOf(here), here.name);
    chain.unshift({ path: here.path, file });
    next =
      file.file.extends === undefined
        ? undefined
        : locate(file.file.extends, dirname(here.path), folder, () => ({
            file: here.name,
            row: file.rowOf(['extends']),
            field: 'extends',
          }));
  }
  return chain;
}

function locate(named: string, from: string, folder: string, by: () => Where): Named {
  const isName = isShipped(named);
  const path = isName ? join(RULE_SETS, `${named}.yaml`) : isAbsolute(named) ? named : resolve(from, named);
  const short = relative(folder, path).split('\\').join('/');
  return { path, by, name: isName ? `${named}.yaml` : short.startsWith('..') ? basename(path) : short };
}

async function textOf({ path, name, by }: Named): Promise<string> {
  return readFile(path, 'utf8').catch((cause: unknown) => {
    throw new DossierError('bad-rule-set', `there is no rule set "${name}"`, {
      where: by(),
      fix: 'Use the name of a shipped set (produce, drop-trailer, frozen), or a path to a YAML file.',
      cause,
    });
  });
}

function together(chain: readonly ParsedRuleSetFile[]): string {
  const [only] = chain;
  if (chain.length === 1 && only !== undefined) return only.text;
  return chain
    .map(({ name, sha256: hash, text }) => `--- # ${name}, SHA-256 ${hash}\n${text.replace(/\n*$/, '\n')}`)
    .join('');
}
