import { readdir, readFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { SHIPPED } from '../compose/shipped.js';
import { sha256Of } from '../core/ledger/tree.js';
import type { Language } from '../core/model/delivery.js';
import { DossierError, type Where } from '../core/model/error.js';
import type { Sha256 } from '../core/model/evidence.js';
import type { RuleSet, RuleSetOrigin } from '../core/model/rule-set.js';
import type { RuleSetWords } from '../core/model/rule-words.js';
import type { RuleSetLayer } from '../intake/rule-set/plan.js';
import { type ResolvedRuleSet, resolveRuleSet } from '../intake/rule-set/resolve.js';
import { readRuleWords, resolveRuleWords } from '../intake/rule-set/words.js';
import { type ParsedRuleSetFile, readRuleSetFile } from '../intake/rule-set-file.js';
import { nearestWord } from '../intake/settings/did-you-mean.js';
import { prepared } from '../platform/node/prepared.js';

const RULE_SETS = join(SHIPPED, 'rule-sets');
/** The name under which the build stores a resolved chain of files. */
export const RESOLVED = 'rule-set';
/** A longer chain of extending sets is a mistake. */
const MOST_FILES = 10;

/** A rule set with all that it extends worked in; or several that are named together. */
export interface LoadedRuleSet {
  ruleSet: RuleSet;
  /** SHA-256 of `text`. */
  sha256: Sha256;
  /**
   * The rule set applied: the file itself or, where several take part, all files as YAML documents one after the
   * other, the extended ones first.
   */
  text: string;
  origin: RuleSetOrigin;
  /** The files that took part, the extended ones first. */
  files: readonly { path: string; file: ParsedRuleSetFile; over: readonly ParsedRuleSetFile[] }[];
  /** Those of them that the delivery names, in its order. */
  named: readonly ParsedRuleSetFile[];
}

type RuleSetFileRead = RuleSetLayer & { path: string };

/** A file to be read, and where it was named. */
interface Named {
  path: string;
  name: string;
  by: () => Where;
}

/**
 * The rule set that a delivery names, or the several that hold together: each a shipped one by its name, else a path
 * relative to the delivery. Extended sets are found in the same way from their own folder. Throws DossierError
 * `bad-rule-set` when one is missing or invalid, when sets extend one another in a circle, or when one is named twice.
 */
export async function loadRuleSet(given: string | readonly string[], folder: string): Promise<LoadedRuleSet> {
  const sets = typeof given === 'string' ? [given] : given;
  const key = JSON.stringify(sets);
  const kept = shipped.get(key);
  if (kept !== undefined) return kept;
  const { files, named } = await readSets(sets, folder);
  const text = together(files.map(({ file }) => file));
  const isPrepared = sets.length === 1 && files.every(({ path }) => dirname(path) === RULE_SETS);
  // The names of files are part of the result, and a copy of a shipped file can have another name.
  const resolved = isPrepared ? prepared<ResolvedRuleSet>(RESOLVED, text) : undefined;
  const loaded = {
    ...(resolved ?? resolveRuleSet(files, named)),
    text,
    sha256: sha256Of(Buffer.from(text, 'utf8')),
    files,
    named,
  };
  if (sets.every(isShipped)) shipped.set(key, loaded);
  return loaded;
}

/** The files of all named sets, each once, every one after those that it extends. */
async function readSets(
  sets: readonly string[],
  folder: string,
): Promise<{ files: RuleSetFileRead[]; named: ParsedRuleSetFile[] }> {
  const files: RuleSetFileRead[] = [];
  const named: ParsedRuleSetFile[] = [];
  for (const set of sets) {
    const chain = await readChain(set, folder);
    const held = chain.map((read, index) => {
      const before = files.find(({ path }) => path === read.path);
      if (before !== undefined) return before;
      const over = chain
        .slice(0, index)
        .map(({ path, file }) => files.find((one) => one.path === path)?.file ?? file);
      const layer = { ...read, over };
      files.push(layer);
      return layer;
    });
    const last = held.at(-1)?.file;
    if (last === undefined) continue;
    if (named.includes(last))
      throw new DossierError('bad-rule-set', `${set} is named twice`, {
        where: { file: 'delivery.yaml', field: 'rules' },
        fix: 'Name each set once; of two that differ the later counts.',
      });
    named.push(last);
  }
  return { files, named };
}

/**
 * Refuses the name of a shipped set that there is not. Paths are looked for when they are needed: their files may come
 * after the delivery.
 */
export async function requireShipped(given: string | readonly string[]): Promise<void> {
  for (const name of [given].flat()) if (isShipped(name)) await loadRuleSet(name, RULE_SETS);
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
  { files, named }: Pick<LoadedRuleSet, 'files' | 'named'>,
  language: Language,
): Promise<RuleSetWords> {
  return resolveRuleWords(
    await Promise.all(
      files.map(async ({ path, file, over }) => {
        const name = `${language}/${basename(path)}`;
        const text = await wordsBeside(join(dirname(path), name), name);
        return { file, over, words: text === undefined ? undefined : readRuleWords(text, name, file) };
      }),
    ),
    named,
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

async function didYouMean(name: string): Promise<string> {
  const close = nearestWord(basename(name, '.yaml'), await shippedSets());
  return close === undefined ? '' : `Did you mean ${close}? `;
}

/** Names of the shipped sets, the general one first. */
export async function shippedSets(): Promise<string[]> {
  const names = (await readdir(RULE_SETS))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => basename(name, '.yaml'))
    .toSorted();
  return ['produce', ...names.filter((name) => name !== 'produce')];
}

/** The named file and those that it extends, the extended one first. */
async function readChain(
  named: string,
  folder: string,
): Promise<{ path: string; file: ParsedRuleSetFile }[]> {
  const chain: { path: string; file: ParsedRuleSetFile }[] = [];
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
  return readFile(path, 'utf8').catch(async (cause: unknown) => {
    throw new DossierError('bad-rule-set', `there is no rule set "${name}"`, {
      where: by(),
      fix: `${await didYouMean(name)}Use the name of a shipped set (${(await shippedSets()).join(', ')}), or a path to a YAML file.`,
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
