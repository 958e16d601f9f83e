import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { composeDossier, prepareDossier } from '../../src/compose/compose.js';
import type { ComposeInput } from '../../src/compose/input.js';
import { SECTIONS, standsIn } from '../../src/compose/sections.js';
import { carrierTemplates } from '../../src/compose/templates.js';
import type { Volume } from '../../src/core/model/manifest.js';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { sampleInput } from './sample.js';

let input: ComposeInput;
const root = mkdtempSync(join(tmpdir(), 'templates-'));
beforeAll(async () => {
  input = await sampleInput({ change: (all) => all.slice(0, 6) });
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** A file of a few lines whose aliases stand for a thousand million words. */
const ALIASES_OF_ALIASES = `cover:\n  a0: &a0 [x]\n${Array.from(
  { length: 9 },
  (_, i) => `  a${i + 1}: &a${i + 1} [${Array(10).fill(`*a${i}`).join()}]\n`,
).join('')}`;

let count = 0;
/** A folder of a carrier's own with these files. */
function own(files: Record<string, string>): string {
  count += 1;
  const folder = join(root, String(count));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}
const prepared = async (files: Record<string, string>, volume: Volume = 'dossier') =>
  prepareDossier({ ...input, volume, templates: await carrierTemplates(own(files)) });

describe('templates of one’s own', () => {
  it('change the words and sections they hold, and leave the rest as shipped', async () => {
    const { document } = (
      await prepared(
        {
          'words/en/cautions.md': 'Our own caution.\n',
          'words/en/labels.yaml': 'cover:\n  lines: What we can show\n',
          'sections.yaml': '- missing\n- temperatures\n- findings\n',
        },
        'assessment',
      )
    ).job;
    expect(JSON.stringify(document.cover.cautions)).toContain('Our own caution.');
    expect(document.cover.weighing?.linesTitle).toBe('What we can show');
    expect(document.cover.weighing?.missingTitle).toBe('What is missing');
    expect(document.sections.map(({ id }) => id)).toEqual([
      'missing',
      'findings',
      'next',
      'differences',
      'method',
      'verify',
    ]);
  });

  it('order the sections of a dossier, which has none of the assessment', async () => {
    const { document } = (await prepared({ 'sections.yaml': '- missing\n- pulps\n' })).job;
    const shipped = (await prepared({ 'words/en/cautions.md': 'Our own.' })).job.document.sections;
    const others = shipped.map(({ id }) => id).filter((id) => id !== 'pulps');
    expect(others.every((id) => SECTIONS.some((name) => name === id && standsIn(name, 'dossier')))).toBe(
      true,
    );
    expect(document.sections.map(({ id }) => id)).toEqual(['pulps', ...others]);
  });

  it('put a letterhead on the first page, as an opaque picture', async () => {
    const drawing =
      '<svg xmlns="http://www.w3.org/2000/svg" width="30" height="9"><rect width="30" height="9"/></svg>';
    const { job } = await prepared({ 'letterhead.svg': drawing });
    expect(job.document.cover.letterhead).toEqual({
      asset: 'letterhead.png',
      alt: 'Letterhead of the carrier',
    });
    const { channels, width } = await sharp(job.assets.get('letterhead.png')).metadata();
    expect({ channels, wide: width > 200 }).toEqual({ channels: 3, wide: true });
  });

  it.each([
    ['words/en/cautions.md', 'One.\nTwo {{nothing}}.\n', 2],
    ['words/en/labels.yaml', 'cover:\n  lines: "open\n', undefined],
    ['words/en/labels.yaml', 'cover:\n  open: Open\n  lins: What we can show\n', 3],
    ['words/en/labels.yaml', 'cover:\n  lines:\n    - a list\n', 2],
    ['words/en/labels.yaml', 'cover:\n  lines: *nothing\n', undefined],
    ['words/en/labels.yaml', ALIASES_OF_ALIASES, undefined],
    ['words/en/remarks.yaml', 'flag:\n  a: b\n  "{n} left": some left\n', 3],
    ['words/en/findings/refused.md', 'One.\n\nTwo {{#if}}.{{/unless}}\n', 3],
    ['sections.yaml', '- glance\n- glanze\n', 2],
    ['sections.yaml', '- glance\n- pulps\n- glance\n', 3],
    ['sections.yaml', 'glance: first\n', 1],
    ['dossier/theme.typ', '#let ink = rgb("#000000")\n#let soft = unknown-colour\n', 2],
    ['letterhead.png', 'no picture', undefined],
  ])('with a fault in %s name the file and the row', async (name, text, row) => {
    const folder = own({ [name]: text });
    const volume = name.includes('/findings/') ? 'assessment' : 'dossier';
    const made = (async () =>
      composeDossier({ ...input, volume, templates: await carrierTemplates(folder) }))();
    await expect(made).rejects.toThrow(
      expect.objectContaining({
        code: 'bad-template',
        where: expect.objectContaining({ file: join(folder, name), ...omitUndefined({ row }) }),
      }),
    );
  });

  it('say of a fact that there is not that there is none', async () => {
    const made = prepared({ 'words/en/sections/glance.md': 'One {{nothing}}.\n' });
    await expect(made).rejects.toThrow('sections/glance.md: there is no fact "nothing" here');
  });

  it.each([
    ['that is not there', join(root, 'nowhere')],
    ['that holds no templates', own({ 'notes.txt': 'x' })],
  ])('in a folder %s are refused', async (_, folder) => {
    await expect(carrierTemplates(folder)).rejects.toThrow(
      expect.objectContaining({ code: 'bad-template', where: { file: folder } }),
    );
  });
});
