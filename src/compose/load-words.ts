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
  /** Where each template lies, for error messages. */
  files: Map<string, string>;
  /** A carrier's own labels, which may be a few of them. */
  ownLabels?: YamlFile;
  /** How sentences of the record are said; a language in which the record is written needs none. */
  remarks?: YamlFile;
}

const LABELS = 'labels.yaml';
const REMARKS = 'remarks.yaml';

/** The shipped texts of a language with a carrier's own over them, file by file. */
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

/** A YAML file, and what it says where the build has read it. Throws as the system does when it can't be read. */
export function yamlFile(file: string): YamlFile {
  const text = readFileSync(file, 'utf8');
  return { text, file, ...omitUndefined({ value: prepared('yaml', text) }) };
}

/** At once: for so many small files, going through the thread pool takes ten times as long. */
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
