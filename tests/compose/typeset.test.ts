import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { type Attachment, type TypesetJob, typeset } from '../../src/compose/typeset.js';
import { squeezed, textOf } from './pages.js';
import { sampleInput } from './sample.js';

let job: TypesetJob;
let folder: string;
beforeAll(async () => {
  job = (await prepareDossier(await sampleInput({ change: () => [] }))).job;
  folder = mkdtempSync(join(tmpdir(), 'pages-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Page templates of our own, for what the shipped ones must not do. */
const pages = (name: string, source: string) => {
  const made = join(folder, name);
  cpSync(job.pages, made, { recursive: true });
  writeFileSync(join(made, 'main.typ'), source);
  return made;
};
const attachment = (name: string, text: string): Attachment => ({
  name,
  bytes: new TextEncoder().encode(text),
  type: 'text/plain',
  description: 'a test',
  relationship: 'supplement',
});
const typesetting = (message: RegExp) =>
  expect.objectContaining({
    name: 'DossierError',
    code: 'typesetting',
    message: expect.stringMatching(message),
  });

describe('typesetting', () => {
  it('of one document leaves nothing of it in the next', async () => {
    const named = (delivery: string) => ({
      ...job,
      document: { ...job.document, cover: { ...job.document.cover, delivery } },
    });
    const first = await typeset(named('FIRST-4471-OAK'));
    const second = await typeset(named('SECOND-4471'));
    expect(await textOf(first.pdf)).toContain('FIRST-4471-OAK');
    expect(await textOf(second.pdf)).toContain('SECOND-4471');
    expect(squeezed(await textOf(second.pdf))).not.toMatch(/FIRST|OAK/);
  });

  it.each([
    [
      'an empty attachment, which would abort the process',
      [attachment('empty.csv', '')],
      /"empty\.csv" is empty/,
    ],
    [
      'a name that stands twice',
      [attachment('a.txt', 'x'), attachment('A.txt', 'y')],
      /"A\.txt" is attached twice/,
    ],
    ['a name with a folder', [attachment('../a.txt', 'x')], /is no name for an attachment/],
    ['a name beyond ASCII', [attachment('año.txt', 'x')], /is no name for an attachment/],
  ])('refuses %s', async (_, attachments, message) => {
    await expect(typeset({ ...job, attachments })).rejects.toThrow(typesetting(message));
  });

  it.each([
    ['a font that is not there', '#set text(font: "No Such Family", fallback: false)\nx', /no such family/i],
    ['a template with an error', '#let x = unknown-name', /unknown variable.*main\.typ:1/],
    [
      'a template that aborts the process',
      '#pdf.attach("a.txt", bytes(()), mime-type: "text/plain", description: "x", relationship: "data")\nx',
      /the typesetter stopped/,
    ],
    [
      'a document without a date or language for the archive format',
      '#image("assets/none.svg")',
      /can't be set/,
    ],
  ])('says what is wrong with %s', async (name, source, message) => {
    await expect(typeset({ ...job, pages: pages(name.replace(/\W/g, '-'), source) })).rejects.toThrow(
      typesetting(message),
    );
  });

  it('is stopped when it takes too long, and the next one works', async () => {
    await expect(typeset({ ...job, timeoutSeconds: 0.005 })).rejects.toThrow(typesetting(/longer than/));
    expect((await typeset(job)).pages).toBeGreaterThan(1);
  });
});
