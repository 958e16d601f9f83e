import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';

/** The texts of one language. */
export interface LoadedTemplates {
  templates: Map<string, string>;
  labels: string;
  /** Where each template lies, for error messages. */
  files: Map<string, string>;
  /** A carrier's own labels, which may be a few of them. */
  ownLabels?: { text: string; file: string };
  /** How sentences of the record are said; a language in which the record is written needs none. */
  remarks?: { text: string; file: string };
}

/** The shipped texts of a language with a carrier's own over them, file by file. */
export async function loadOver(shipped: string, own: string): Promise<LoadedTemplates> {
  const base = await loadTemplates(shipped);
  const over = await loadTemplates(own, false);
  return {
    templates: new Map([...base.templates, ...over.templates]),
    files: new Map([...base.files, ...over.files]),
    labels: base.labels,
    ...omitUndefined({ remarks: base.remarks }),
    ...omitUndefined({
      remarks: over.remarks,
      ownLabels: over.labels === '' ? undefined : { text: over.labels, file: join(own, 'labels.yaml') },
    }),
  };
}

/** Reads every template below a language's folder, and its labels; these may be missing where `whole` is false. */
export async function loadTemplates(folder: string, whole = true): Promise<LoadedTemplates> {
  try {
    const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.md')).sort();
    const read = await Promise.all(
      names.map(async (name) => {
        const key = name.split(sep).join('/').replace(/\.md$/, '');
        return [key, await readFile(join(folder, name), 'utf8')] as const;
      }),
    );
    const labels = join(folder, 'labels.yaml');
    const remarks = join(folder, 'remarks.yaml');
    const said = await readFile(remarks, 'utf8').catch(() => undefined);
    return {
      ...omitUndefined({ remarks: said === undefined ? undefined : { text: said, file: remarks } }),
      templates: new Map(read),
      files: new Map(read.map(([key]) => [key, join(folder, `${key}.md`)])),
      labels: await readFile(labels, 'utf8').catch((cause: unknown) => {
        if (whole) throw cause;
        return '';
      }),
    };
  } catch (cause) {
    throw new DossierError('bad-template', `the words in ${folder} can't be read`, {
      where: { file: folder },
      fix: 'Give a folder laid out like the shipped templates, or leave the option out.',
      cause,
    });
  }
}
