import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { YamlFile } from '../core/words/template-yaml.js';
import { prepared } from '../platform/node/prepared.js';

/** The texts of one language. */
export interface LoadedTemplates {
  templates: Map<string, string>;
  labels: YamlFile;
  /** Path of each template, for error messages. */
  files: Map<string, string>;
  /** The carrier's own labels, which may be only some. */
  ownLabels?: YamlFile;
  /** Translations of recorded sentences; absent for the language of the record. */
  remarks?: YamlFile;
}

const LABELS = 'labels.yaml';
const REMARKS = 'remarks.yaml';

/** The shipped texts of a language, overridden file by file by the carrier's own. */
export function loadOver(shipped: string, own: string): LoadedTemplates {
  const base = loadTemplates(shipped);
  const over = reading(own, () => sentencesIn(own));
  const ownFile = (name: string) => (existsSync(join(own, name)) ? yamlFile(join(own, name)) : undefined);
  return {
    templates: new Map([...base.templates, ...over.templates]),
    files: new Map([...base.files, ...over.files]),
    labels: base.labels,
    ...omitUndefined({ remarks: ownFile(REMARKS) ?? base.remarks, ownLabels: ownFile(LABELS) }),
  };
}

/** Reads every template below a language's folder, and its labels. Throws DossierError `bad-template`. */
export function loadTemplates(folder: string): LoadedTemplates {
  return reading(folder, () => ({
    ...sentencesIn(folder),
    labels: yamlFile(join(folder, LABELS)),
    ...omitUndefined({
      remarks: existsSync(join(folder, REMARKS)) ? yamlFile(join(folder, REMARKS)) : undefined,
    }),
  }));
}

/**
 * A YAML file, with its parsed value where the build has stored it. Throws as the system does when it can't be
 * read.
 */
export function yamlFile(file: string): YamlFile {
  const text = readFileSync(file, 'utf8');
  return { text, file, ...omitUndefined({ value: prepared('yaml', text) }) };
}

/** Synchronous: for many small files the thread pool takes ten times as long. */
function sentencesIn(folder: string): Pick<LoadedTemplates, 'templates' | 'files'> {
  const files = new Map<string, string>();
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort())
    if (name.endsWith('.md')) files.set(name.split(sep).join('/').replace(/\.md$/, ''), join(folder, name));
  const templates = new Map([...files].map(([key, file]) => [key, readFileSync(file, 'utf8')]));
  return { templates, files };
}

function reading<T>(folder: string, work: () => T): T {
  try {
    return work();
  } catch (cause) {
    throw new DossierError('bad-template', `the words in ${folder} can't be read`, {
      where: { file: folder },
      fix: 'Give a folder laid out like the shipped templates, or leave the option out.',
      cause,
    });
  }
}
