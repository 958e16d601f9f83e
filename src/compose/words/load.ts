import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { DossierError } from '../../model/error.js';

/** Reads every template below a language's folder, and its labels. */
export async function loadTemplates(
  folder: string,
): Promise<{ templates: Map<string, string>; labels: string }> {
  try {
    const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.md')).sort();
    const read = await Promise.all(
      names.map(async (name) => {
        const key = name.split(sep).join('/').replace(/\.md$/, '');
        return [key, await readFile(join(folder, name), 'utf8')] as const;
      }),
    );
    return { templates: new Map(read), labels: await readFile(join(folder, 'labels.yaml'), 'utf8') };
  } catch (cause) {
    throw new DossierError('bad-template', `the words in ${folder} can't be read`, {
      where: { file: folder },
      fix: 'Give a folder laid out like the shipped templates, or leave the option out.',
      cause,
    });
  }
}
