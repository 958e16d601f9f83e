import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether Poppler's programs are here to read a PDF with other eyes than ours. */
export const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;

const inFolder = <T>(pdf: Uint8Array, use: (file: string, folder: string) => T): T => {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  try {
    const file = join(folder, 'x.pdf');
    writeFileSync(file, pdf);
    return use(file, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** All text of a PDF without white space, since lines break where the page wants them to. */
export const squeezed = (text: string): string => text.replace(/\s+/g, '');
export const textOf = (pdf: Uint8Array): string =>
  inFolder(pdf, (file) => execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }));

export const attachmentOf = (pdf: Uint8Array, name: string): Uint8Array =>
  inFolder(pdf, (file, folder) => {
    execFileSync('pdfdetach', ['-savefile', name, '-o', join(folder, 'out'), file]);
    return readFileSync(join(folder, 'out'));
  });

/** Names of fonts and whether each is embedded. */
export const fontsOf = (pdf: Uint8Array): { name: string; embedded: boolean }[] =>
  inFolder(pdf, (file) =>
    execFileSync('pdffonts', [file], { encoding: 'utf8' })
      .split('\n')
      .slice(2)
      .filter((line) => line.trim() !== '')
      .map((line) => ({
        name: line
          .slice(0, 36)
          .trim()
          .replace(/^[A-Z]{6}\+/, ''),
        embedded: /\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line)?.[1] === 'yes',
      })),
  );

/** Words that reach over the right edge of the text, by page. */
export const wordsBeyond = (pdf: Uint8Array, margin: number): string[] =>
  inFolder(pdf, (file) => {
    const boxes = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
    const width = Number(/<page width="([\d.]+)"/.exec(boxes)?.[1] ?? 0);
    return [...boxes.matchAll(/xMax="([\d.]+)"[^>]*>([^<]*)</g)]
      .filter(([, right]) => Number(right) > width - margin)
      .map(([, , word]) => word ?? '');
  });
