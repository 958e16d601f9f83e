import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { composeDossier } from '../../src/compose/compose.js';
import { hasPoppler } from '../outside/poppler.js';
import { sampleInput } from './sample.js';

const folder = mkdtempSync(join(tmpdir(), 'signature-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The words inside a rectangle of a page, as Poppler finds them; its origin is the upper left corner. */
function wordsIn(
  pdf: Uint8Array,
  page: number,
  height: number,
  [left, bottom, right, top]: readonly [number, number, number, number],
): string {
  const file = join(folder, 'x.pdf');
  writeFileSync(file, pdf);
  const at = [left, height - top, right - left, top - bottom].map((n) => String(Math.round(n)));
  const [x = '', y = '', w = '', h = ''] = at;
  const pages = ['-f', String(page), '-l', String(page)];
  const box = ['-x', x, '-y', y, '-W', w, '-H', h];
  const out = execFileSync('pdftotext', [...pages, ...box, '-layout', file, '-']);
  return out.toString('utf8').replace(/\s+/g, ' ').trim();
}

describe('the frame for the signature', () => {
  it.skipIf(!hasPoppler).each([
    [
      'Letter',
      'en',
      792,
      /^Signature over the whole file Signer .* Certificate SHA-256 [0-9a-f]{16} … .* UTC\).* no changes allowed.* told you by another way\.$/,
    ],
    [
      'A4',
      'es',
      842,
      /^Firma sobre todo el archivo Firmante .* SHA-256 del certificado [0-9a-f]{16} … .* UTC\).* ningún cambio.* comunicó por otra vía\.$/,
    ],
  ] as const)(
    'on %s in %s stands on the last page, exactly where it is said',
    async (paper, language, height, words) => {
      const input = await sampleInput({ change: () => [] });
      const { delivery } = input.state;
      const state = {
        ...input.state,
        delivery: { ...delivery, show: { ...delivery.show, paper, language } },
      };
      const made = await composeDossier({ ...input, state });
      expect(made.signature?.page).toBe(made.pages);
      const rectangle = made.signature?.rectangle ?? [0, 0, 0, 0];
      expect(wordsIn(made.pdf, made.pages, height, rectangle)).toMatch(words);
      expect(made.signature?.alt).toContain(input.signer.name.replace(/^CN=/, ''));
      const [left, bottom, right, top] = rectangle;
      // Nothing of the page stands in its lower half: what was asked for is the frame and no more.
      const half = wordsIn(made.pdf, made.pages, height, [left, bottom, right, (bottom + top) / 2]);
      expect(half).not.toMatch(/^(Signature|Firma) /);
    },
  );
});
