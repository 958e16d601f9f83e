import { access, readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { z } from 'zod';
import { DossierError } from '../core/model/error.js';
import { readTemplateYaml } from '../core/words/template-yaml.js';
import { SHIPPED } from './shipped.js';

export { SHIPPED } from './shipped.js';

/** The shipped templates with a carrier's own files over them. */
export interface CarrierTemplates {
  /** Folder of the carrier's own files. */
  own?: string;
  /** The carrier's own file at that path, or the shipped one. */
  fileOf(path: string): string;
  /** Paths of the carrier's own files, with forward slashes. */
  changed: ReadonlySet<string>;
}

/**
 * Lists a folder of templates, which holds only changed files: the rest is as shipped. Throws DossierError
 * `bad-template` when it can't be read or holds no template.
 */
export async function carrierTemplates(own?: string): Promise<CarrierTemplates> {
  if (own === undefined) return { fileOf: (path) => join(SHIPPED, path), changed: new Set() };
  const refuse = (message: string, cause?: unknown) =>
    new DossierError('bad-template', message, {
      where: { file: own },
      fix: 'Give a folder with words/, dossier/, letters/, letter/, sections.yaml, copies.yaml, claim-deadlines.yaml or a letterhead: only what you change.',
      cause,
    });
  let names: string[];
  try {
    await access(own);
    names = (await readdir(own, { recursive: true })).map((name) => name.replaceAll('\\', '/'));
  } catch (cause) {
    throw refuse('the folder of templates can\u2019t be read', cause);
  }
  const changed = new Set(names.filter((name) => extname(name) !== ''));
  const former = [...changed].find((name) => newNameOf(name) !== undefined);
  if (former !== undefined)
    throw new DossierError('bad-template', `templates named ${former} are no longer read`, {
      where: { file: join(own, former) },
      fix: `Rename it to ${newNameOf(former)}.`,
    });
  const known = [...changed].some(
    (name) =>
      /^(words|dossier|letters|letter)\//.test(name) ||
      /^(sections\.yaml|copies\.yaml|claim-deadlines\.yaml|letterhead\.\w+)$/.test(name),
  );
  if (!known) throw refuse('the folder holds no templates');
  return { own, changed, fileOf: (path) => join(changed.has(path) ? own : SHIPPED, path) };
}

/** The name that a template of version 0.1 has now; undefined for every other. */
const newNameOf = (name: string): string | undefined =>
  FORMER.flatMap(([pattern, now]) => (pattern.test(name) ? [name.replace(pattern, now)] : []))[0];
const FORMER: readonly (readonly [RegExp, string])[] = [
  [/^claim-clocks\.yaml$/, 'claim-deadlines.yaml'],
  [/^(words\/\w+)\/sheet\.yaml$/, '$1/checklist.yaml'],
  [/^sheet\//, 'checklist/'],
];

const LETTERHEADS = ['letterhead.svg', 'letterhead.png', 'letterhead.jpg', 'letterhead.jpeg'];

/** The carrier's letterhead, if the folder has one. */
export function letterheadOf({ own, changed }: CarrierTemplates): string | undefined {
  const name = LETTERHEADS.find((one) => changed.has(one));
  return own === undefined || name === undefined ? undefined : join(own, name);
}

/**
 * Sections in the order of sections.yaml, a list of names; sections it does not name follow in the shipped order.
 * Throws DossierError `bad-template` with the row of an unknown name.
 */
export async function sectionOrder(
  templates: CarrierTemplates,
  shipped: readonly string[],
): Promise<readonly string[]> {
  if (!templates.changed.has('sections.yaml')) return shipped;
  const file = templates.fileOf('sections.yaml');
  const text = await readFile(file, 'utf8');
  const fix = `Write a list of section names: ${shipped.join(', ')}.`;
  const { read, rowOf } = readTemplateYaml(
    z.array(z.string()),
    { text, file },
    {
      what: 'the order of sections is not a list of names',
      fix,
    },
  );
  const refuse = (message: string, index: number) =>
    new DossierError('bad-template', message, {
      where: { file, row: rowOf([index]) },
      fix,
    });
  read.forEach((name, i) => {
    if (!shipped.includes(name)) throw refuse(`there is no section "${name}"`, i);
    if (read.indexOf(name) !== i) throw refuse(`the section "${name}" stands twice`, i);
  });
  return [...read, ...shipped.filter((name) => !read.includes(name))];
}
